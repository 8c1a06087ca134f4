import { describe, expect, it } from 'vitest';

import { limitOf, toolOf } from '#tests/kit/bench-facts.ts';
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
  V_EIGHT_SHEET,
} from '#tests/kit/cut-engine.ts';

const near = (found: number, expected: number, tolerance: number) =>
  expect(Math.abs(found - expected)).toBeLessThan(tolerance);
const CUT: Typed = ['head-cut-planned', '0.010', 'in', BEFORE];
const without = (...quantities: readonly string[]) =>
  V_EIGHT_SHEET.filter((limit) => !quantities.includes(limit.quantity));

describe('COMPRESSION_FORMULAS', () => {
  it('the V eight as it is: 9.4812 (exact mathematics)', () => {
    const bench = headBench();

    near(figure(bench, 'swept-volume', 'cc', 'before'), 682.754, 0.01);
    near(figure(bench, 'gasket-volume', 'cc', 'before'), 8.486, 0.001);
    near(figure(bench, 'clearance-volume', 'cc', 'before'), 80.5022, 0.001);
    near(figure(bench, 'compression-ratio', 'ratio', 'before'), 9.4812, 0.001);
    near(figure(bench, 'displacement', 'in3', 'before'), 333.314, 0.01);
    expect(marks(bench, 'displacement', 'before')).toContain('8 cylinders, 333.3 in³');
  });

  it('0.010 in off the head: 9.6606 (exact mathematics)', () => {
    const bench = headBench({ readings: [CUT] });

    near(figure(bench, 'compression-ratio', 'ratio'), 9.6606, 0.001);
    near(figure(bench, 'ratio-change', 'ratio'), 9.6606 - 9.4812, 0.001);
    expect(knownOf(bench, 'compression-ratio')).toMatchObject({ planned: true });
    expect(marks(bench, 'compression-ratio')).toContain('surfacing only; chamber not measured');
  });

  it('0.010 in off the deck instead: 9.6982 (exact mathematics)', () => {
    near(
      figure(
        headBench({
          readings: [
            ['block-deck-cut', '0.010', 'in'],
            ['head-cut-planned', '0', 'in', BEFORE],
          ],
        }),
        'compression-ratio',
        'ratio',
      ),
      9.6982,
      0.001,
    );
  });

  it('bored 0.030 in over, gasket as it was: 9.6040 and 338.40 cubic inches (exact mathematics)', () => {
    const bench = headBench({
      readings: [
        ['cylinder-bore', '3.980', 'in'],
        ['head-cut-planned', '0', 'in', BEFORE],
      ],
    });

    near(figure(bench, 'swept-volume', 'cc'), 693.164, 0.01);
    near(figure(bench, 'displacement', 'in3'), 338.4, 0.01);
    near(figure(bench, 'compression-ratio', 'ratio'), 9.604, 0.001);
    near(figure(bench, 'compression-ratio', 'ratio', 'before'), 9.4812, 0.001);
  });

  it('for a ratio of 10.0: chamber 57.3593 cc, cut 0.0278 in (exact mathematics)', () => {
    const bench = headBench({ readings: [['ratio-wanted', '10.0', 'ratio', BEFORE]] });

    near(figure(bench, 'chamber-wanted', 'cc', 'before'), 57.3593, 0.001);
    near(figure(bench, 'cut-for-ratio', 'in', 'before'), 0.0278, 0.0001);
  });

  it('a cut for a ratio says when it leaves the head too thin or the chamber another area (common practice: 0.030 in)', () => {
    const thin = headBench({
      limits: [...V_EIGHT_SHEET, limitOf('thickness', 'in', { low: '3.950' })],
      readings: [
        ['ratio-wanted', '10.5', 'ratio', BEFORE],
        ['thickness', '3.960', 'in', BEFORE],
      ],
    });

    expect(figure(thin, 'cut-for-ratio', 'in', 'before')).toBeGreaterThan(0.03);
    expect(marks(thin, 'cut-for-ratio', 'before')).toMatch(/below its minimum.*fill the chamber again/);
    const high = headBench({ readings: [['ratio-wanted', '9.0', 'ratio', BEFORE]] });

    expect(figure(high, 'cut-for-ratio', 'in', 'before')).toBeLessThan(0);
    expect(marks(high, 'cut-for-ratio', 'before')).toContain('ratio is higher already');
  });

  it('head cut, deck cut, thicker gasket and bigger bore count together (exact mathematics)', () => {
    const bench = headBench({
      readings: [
        CUT,
        ['block-deck-cut', '0.005', 'in'],
        ['gasket-thickness', '0.051', 'in'],
        ['gasket-bore', '4.100', 'in'],
        ['cylinder-bore', '3.970', 'in'],
      ],
    });
    const circle = (d: number, h: number) => (Math.PI / 4) * d * d * h * 16.387064;
    const swept = circle(3.97, 3.4);
    const above = 62 - circle(3.6, 0.01) + circle(4.1, 0.051) + circle(3.97, 0.015) + 6;

    near(figure(bench, 'compression-ratio', 'ratio'), (swept + above) / above, 0.0002);
  });

  it('the maker’s cc stand instead of a ring, a dome takes away, the room round the land adds (exact mathematics)', () => {
    const bench = headBench({
      limits: without('piston-dish'),
      readings: [
        ['gasket-volume', '9.1', 'cc', BEFORE],
        ['piston-dome', '4.0', 'cc', BEFORE],
        ['land-diameter', '3.920', 'in', BEFORE],
        ['land-height', '0.250', 'in', BEFORE],
      ],
    });

    near(figure(bench, 'crevice-volume', 'cc', 'before'), 0.76, 0.001);
    near(figure(bench, 'clearance-volume', 'cc', 'before'), 62 + 9.1 + 4.0162 - 4 + 0.7601, 0.001);
    expect(marks(bench, 'compression-ratio', 'before')).not.toContain('left out');
  });

  it('names what is missing and gives no figure instead', () => {
    const bench = headBench({
      limits: without('piston-dish', 'gasket-bore', 'chamber-volume'),
      engine: { ...V_EIGHT, stroke: null },
    });

    expect(knownOf(bench, 'compression-ratio', 'before')?.value).toBeNull();
    expect(marks(bench, 'compression-ratio', 'before')).toBe(
      'not known: stroke; chamber volume; gasket bore and thickness, or its cc; piston dish or dome (0 for a flat piston)',
    );
    expect(knownOf(bench, 'ratio-change')?.value).toBeNull();
  });

  it('a missing piston crown is never read as a flat one: 0 is typed for it', () => {
    const bare = without('piston-dish');

    expect(knownOf(headBench({ limits: bare }), 'compression-ratio', 'before')?.value).toBeNull();
    near(
      figure(
        headBench({ limits: bare, readings: [['piston-dish', '0', 'cc', BEFORE]] }),
        'clearance-volume',
        'cc',
        'before',
      ),
      74.5022,
      0.001,
    );
  });

  it('says where each figure of the engine comes from', () => {
    expect(marks(headBench(), 'compression-ratio', 'before')).toBe(
      'room round the top land left out; from the sheet: bore of the engine, stroke of the engine, gasket bore, gasket thickness, chamber, piston below the deck, piston dish',
    );
  });

  it('a doubt of 0.2 cc in each of four chambers is 0.1 cc in their mean and 0.0106 in the ratio (exact mathematics)', () => {
    const spots = spotsOf('chamber', '1', '2', '3', '4');
    const tool = toolOf({ name: 'burette', unit: 'cc', uncertainty: 200_000 });
    const bench = headBench({
      spots,
      readings: spots.map(
        (spot): Typed => ['chamber-volume', '62.0', 'cc', { ...BEFORE, spot: spot.id, tool: tool.id }],
      ),
      tools: [tool],
    });

    expect(knownOf(bench, 'chamber-mean', 'before')?.uncertainty).toBe(100_000);
    near(knownOf(bench, 'compression-ratio', 'before')?.uncertainty ?? 0, 106, 2);
  });

  it('the ratio from intake closing: 60 degrees after bottom, 5.900 rod, and a late cam lowers it (exact mathematics of crank and rod)', () => {
    const closing: Typed[] = [
      ['intake-closes', '60', 'deg', BEFORE],
      ['rod-length', '5.900', 'in', BEFORE],
    ];
    const bench = headBench({ readings: closing });
    const above = 80.5022;

    near(figure(bench, 'closing-ratio', 'ratio', 'before'), (682.754 * (2.736638 / 3.4) + above) / above, 0.001);
    const late = headBench({
      casting: { camLayout: 'sohc' },
      readings: [
        ...closing,
        ['cam-sprocket', '4.00', 'in', BEFORE],
        ['head-cut-planned', '0.020', 'in', BEFORE],
        ['chamber-volume', '62.0', 'cc'],
      ],
    });

    expect(marks(late, 'closing-ratio')).toContain('cam late by the cut counted in');
    expect(figure(late, 'closing-ratio', 'ratio') / figure(late, 'compression-ratio', 'ratio')).toBeLessThan(
      figure(late, 'closing-ratio', 'ratio', 'before') / figure(late, 'compression-ratio', 'ratio', 'before'),
    );
  });

  it('of a block the ratio goes by its own corners and by the bores as finished', () => {
    const corners = spotsOf('deck_corner', 'FI', 'FE', 'RI', 'RE');
    const cylinder = spotsOf('cylinder', '1');
    const bench = blockBench({
      spots: [...corners, ...cylinder],
      limits: [
        ...without('deck-clearance'),
        limitOf('rod-length', 'in', { target: '5.900' }),
        limitOf('compression-height', 'in', { target: '1.600' }),
      ],
      readings: [
        ...corners.flatMap((spot): Typed[] => [
          ['deck-height', '9.220', 'in', { ...BEFORE, spot: spot.id }],
          ['deck-height', '9.210', 'in', { spot: spot.id }],
        ]),
      ],
    });

    near(figure(bench, 'compression-ratio', 'ratio', 'before'), 9.4812, 0.001);
    near(figure(bench, 'compression-ratio', 'ratio'), 9.6982, 0.001);
  });

  it('of a bored block the mean of the finished bores sweeps: 3.9800 in, 693.164 cc (exact mathematics)', () => {
    const cylinders = spotsOf('cylinder', '1', '2');
    const sizes = ['3.9801', '3.9799'];
    const bench = blockBench({
      spots: cylinders,
      readings: cylinders.map(
        (spot, index): Typed => ['bore', sizes[index] ?? '', 'in', { spot: spot.id, point: 'mid-x' }],
      ),
    });

    near(figure(bench, 'swept-volume', 'cc'), 693.164, 0.01);
    near(figure(bench, 'swept-volume', 'cc', 'before'), 682.754, 0.01);
  });
});
