import { describe, expect, it } from 'vitest';
import { drawCasting } from '#core/drawing/draw-casting.ts';
import { frontAbove, platesOf } from '#core/drawing/plates.ts';
import { PLATE_WIDTH } from '#core/drawing/shape.ts';

const cylinder = (n: number, bank: 'left' | 'right' | 'none') => ({
  kind: 'cylinder',
  label: String(n),
  benchOrder: n,
  row: 1,
  bank,
  cylinder: n,
  side: 'none' as const,
});

describe('platesOf', () => {
  it('finds the one deck of a head, in the middle of the picture', () => {
    const drawing = drawCasting({ kind: 'head', counts: { cylinders: 3 }, spots: [] });
    const [plate, ...rest] = platesOf(drawing);
    expect(rest).toEqual([]);
    expect((plate?.left ?? 0) * 2 + (plate?.width ?? 0)).toBeCloseTo(PLATE_WIDTH, -1);
    expect((plate?.top ?? 0) * 2 + (plate?.height ?? 0)).toBeCloseTo(drawing.height, -1);
  });

  it('finds both decks of a V block from the top down, none on a flywheel', () => {
    const spots = [cylinder(1, 'left'), cylinder(2, 'left'), cylinder(1, 'right'), cylinder(2, 'right')];
    const plates = platesOf(drawCasting({ kind: 'block', counts: { cylinders: 4 }, spots }));
    expect(plates).toHaveLength(2);
    expect(plates[0]?.top).toBeLessThan(plates[1]?.top ?? 0);
    expect(platesOf(drawCasting({ kind: 'flywheel', counts: {}, spots: [] }))).toEqual([]);
  });

  it('stays where it is when the casting is turned end for end', () => {
    const type = { kind: 'intake_manifold', counts: { cylinders: 4 }, spots: [] } as const;
    expect(platesOf(drawCasting(type, { turned: true }))).toEqual(platesOf(drawCasting(type)));
  });
});

describe('frontAbove', () => {
  const plate = { left: 1_000, top: 600, width: 8_000, height: 2_000 };

  it('points to the front end above the plate, and to the other end when it lies turned', () => {
    const [tip, words] = frontAbove(plate, false);
    expect(tip).toMatchObject({ kind: 'path', d: 'M1000 340L1240 230L1240 450Z' });
    expect(words).toMatchObject({ kind: 'text', x: 1_330, anchor: 'start', words: 'FRONT' });
    const [turnedTip, turnedWords] = frontAbove(plate, true);
    expect(turnedTip).toMatchObject({ d: 'M9000 340L8760 230L8760 450Z' });
    expect(turnedWords).toMatchObject({ x: 8_670, anchor: 'end' });
  });
});
