import { describe, expect, it } from 'vitest';
import type { Engine, Facts, Spot } from '#core/readings/compute/model.ts';
import { limitOf } from '#tests/kit/bench-facts.ts';
import {
  BEFORE,
  blockBench,
  figure,
  headBench,
  knownOf,
  marks,
  spotsOf,
  type Typed,
  V_EIGHT,
} from '#tests/kit/cut-engine.ts';

const near = (found: number, expected: number, tolerance: number) =>
  expect(Math.abs(found - expected)).toBeLessThan(tolerance);
const cut = (inches: string): Typed => ['head-cut-planned', inches, 'in', BEFORE];
const FOUR: Engine = { ...V_EIGHT, layout: 'inline', cylinders: 4, bankLean: null, faceLean: null };

describe('MANIFOLD_FORMULAS: intake fit', () => {
  it('0.025 in, bank 45, face 10: 0.0308 off each face, 0.0429 off the bottom (exact mathematics)', () => {
    const bench = headBench({ readings: [cut('0.025')] });

    near(figure(bench, 'intake-face-cut', 'in'), 0.0308, 0.00005);
    near(figure(bench, 'intake-bottom-cut', 'in'), 0.0429, 0.00005);
    near(figure(bench, 'port-drop', 'in'), 0.025 * 0.98481, 0.00001);
    expect(marks(bench, 'intake-face-cut')).toContain('face lean of the engine from the sheet');
  });

  it('head, deck and gasket count together: t is 0.010 + 0.005 + 0.005 (exact arithmetic)', () => {
    const bench = headBench({
      readings: [cut('0.010'), ['block-deck-cut', '0.005', 'in'], ['gasket-thickness', '0.035', 'in']],
    });

    near(figure(bench, 'intake-face-cut', 'in'), 0.02 * 1.2328, 0.00001);
  });

  it('a lean that was measured goes before the sheet’s', () => {
    const bench = headBench({ readings: [cut('0.025'), ['face-lean', '0', 'deg', BEFORE]] });

    near(figure(bench, 'intake-face-cut', 'in'), 0.025, 0.000001);
  });

  it('faces that lie level: words and no figure (exact mathematics)', () => {
    const bench = headBench({ engine: { ...V_EIGHT, faceLean: 45_000_000 }, readings: [cut('0.025')] });

    expect(knownOf(bench, 'intake-face-cut')?.value).toBeNull();
    expect(marks(bench, 'intake-face-cut')).toContain('milling cannot bring the ports together again');
  });

  it('asks for a lean nobody knows, and says of an inline engine that it is no V', () => {
    const unknownLean = headBench({ engine: { ...V_EIGHT, faceLean: null }, readings: [cut('0.025')] });

    expect(marks(unknownLean, 'intake-face-cut')).toContain('lean of the intake face');
    expect(marks(headBench({ engine: FOUR, readings: [cut('0.025')] }), 'port-drop')).toBe('not a V engine');
  });

  it.each([
    ['0.005', 'pass'],
    ['0.006', 'fail'],
  ])(
    'ports that drop with a cut of %s: %s (a web page on intake milling: harmless under about 0.005 in)',
    (inches, verdict) => {
      const bench = headBench({ limits: [limitOf('port-drop', 'in', { high: '0.005' })], readings: [cut(inches)] });

      expect(bench.verdict('port-drop', 'after', null, knownOf(bench, 'port-drop')).name).toBe(verdict);
    },
  );

  it('once the faces are cut by the figure given, no drop is left (exact mathematics)', () => {
    const bench = headBench({ readings: [cut('0.025'), ['face-removed', '0.03082', 'in']] });

    near(figure(bench, 'port-drop', 'in'), 0, 0.00001);
    expect(marks(bench, 'port-drop')).toContain('off the intake faces');
  });
});

describe('MANIFOLD_FORMULAS: the banks of a block', () => {
  const corners = spotsOf(
    'deck_corner',
    ...(['left', 'right'] as const).map((bank): Partial<Spot> => ({ label: bank, bank })),
  );
  const decked = (left: string, right: string) =>
    blockBench({
      spots: corners,
      limits: [limitOf('port-drop', 'in', { high: '0.005' })],
      readings: corners.flatMap((spot, index): Typed[] => [
        ['deck-height', '9.2200', 'in', { ...BEFORE, spot: spot.id }],
        ['deck-height', index === 0 ? left : right, 'in', { spot: spot.id }],
      ]),
    });

  it('cut by 0.010 and 0.016 the manifold tips; by 0.010 and 0.015 it may pass (common practice: 0.005 in does no harm)', () => {
    expect(marks(decked('9.2100', '9.2040'), 'intake-face-cut')).toContain(
      'left bank lost .0100 in, right bank .0160 in: the manifold tips',
    );
    expect(marks(decked('9.2100', '9.2050'), 'intake-face-cut')).not.toContain('tips');
  });
});

describe('MANIFOLD_FORMULAS: the other head of the pair', () => {
  const other = (removed: number | null): Facts['pair'] => [{ tag: 30918, position: 'right', removed }];

  it('0.010 and 0.025: "cut both alike", and the manifold tips', () => {
    const limits = [limitOf('pair-difference', 'in', { high: '0.005' })];
    const bench = headBench({ limits, pair: other(254_000), readings: [cut('0.025')] });

    expect(figure(bench, 'pair-difference', 'in')).toBe(0.015);
    expect(marks(bench, 'pair-difference')).toBe(
      'the other head 30918 lost .0100 in, this one .0250 in: cut both alike',
    );
    expect(marks(bench, 'intake-face-cut')).toContain('the manifold tips');
    expect(bench.verdict('pair-difference', 'after', null, knownOf(bench, 'pair-difference')).name).toBe('fail');
  });

  it('cut alike there is nothing to warn of; a head not measured is named', () => {
    const limits = [limitOf('pair-difference', 'in', { high: '0.005' })];
    const alike = headBench({ limits, pair: other(254_000), readings: [cut('0.011')] });

    expect(marks(alike, 'pair-difference')).not.toContain('cut both alike');
    expect(marks(headBench({ pair: other(null), readings: [cut('0.010')] }), 'pair-difference')).toBe(
      'cut of the other head 30918 not known',
    );
    expect(marks(headBench({ readings: [cut('0.010')] }), 'pair-difference')).toBe('no other head on this ticket');
  });
});
