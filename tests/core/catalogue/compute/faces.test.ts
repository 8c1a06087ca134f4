import { describe, expect, it } from 'vitest';
import { BENCH_TABLES } from '#core/catalogue/compute/bench-tables.ts';
import {
  FACES,
  faceQuantities,
  facesOf,
  GRID_POINTS,
  gridCode,
  LINE_POINTS,
  MOST_COLUMNS,
  MOST_ROWS,
} from '#core/catalogue/compute/faces.ts';
import { findQuantity } from '#core/catalogue/compute/quantities.ts';

describe('FACES', () => {
  it.each(FACES)('$code: all its quantities are in the catalogue, and its tables show its flatness', (face) => {
    for (const code of Object.values(faceQuantities(face))) expect(findQuantity(code)?.code).toBe(code);
    for (const kind of face.castingKinds) {
      const table = BENCH_TABLES.find((it) => it.code === face.tables[kind]);
      expect(table?.castingKind).toBe(kind);
      expect(table?.rows.map((row) => row.quantity)).toContain(faceQuantities(face).flatness);
    }
  });

  it('keeps grid points and lines in code, and counts steps on the dial only', () => {
    const of = faceQuantities({ code: 'deck' });

    expect(findQuantity(of.dial)).toMatchObject({
      pointsInCode: true,
      countsSteps: true,
      signed: true,
      entryRule: 'none',
    });
    expect(findQuantity(of.gap)).toMatchObject({ pointsInCode: true, countsSteps: false, signed: false });
    expect(findQuantity(of.dial)?.points).toHaveLength(MOST_COLUMNS * MOST_ROWS);
  });
});

describe('GRID_POINTS', () => {
  it('reaches 11 x 7 and more, each code once and short enough to be kept', () => {
    const codes = GRID_POINTS.map(([code]) => code);

    expect(codes).toContain(gridCode(11, 7));
    expect(new Set(codes).size).toBe(codes.length);
    expect(Math.max(...[...codes, ...LINE_POINTS.map(([code]) => code)].map((it) => it.length))).toBeLessThanOrEqual(
      20,
    );
  });
});

describe('facesOf', () => {
  it('gives a head its deck and manifold faces, and a block one deck or one for each bank', () => {
    expect(facesOf('head', false).map((it) => it.code)).toEqual(['deck', 'intake-face', 'exhaust-face']);
    expect(facesOf('block', false).map((it) => it.code)).toEqual(['deck']);
    expect(facesOf('block', true).map((it) => it.code)).toEqual(['left-deck', 'right-deck']);
    expect(facesOf('intake_manifold', false).map((it) => it.code)).toEqual(['intake-face']);
    expect(facesOf('rod_set', false)).toEqual([]);
  });
});
