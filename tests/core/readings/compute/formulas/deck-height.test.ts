import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Stage } from '#core/catalogue/compute/bench-table.ts';
import type { Spot } from '#core/readings/compute/model.ts';
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
import reference from '#tests/reference/engine-arithmetic.json' with { type: 'json' };

const CORNERS = spotsOf('deck_corner', 'FI', 'FE', 'RI', 'RE');
const BANKS = spotsOf(
  'deck_corner',
  ...(['left', 'right'] as const).flatMap((bank, row) =>
    ['FV', 'FO', 'RV', 'RO'].map(
      (label): Partial<Spot> => ({ label: `${bank === 'left' ? 'L' : 'R'}${label}`, bank, row: row + 1 }),
    ),
  ),
);
const heights = (stage: Stage, spots: readonly Spot[], ...inches: readonly string[]): Typed[] =>
  spots.flatMap((spot, index): Typed[] =>
    inches[index] === undefined ? [] : [['deck-height', inches[index], 'in', { stage, spot: spot.id }]],
  );
const STACK = [
  limitOf('rod-length', 'in', { target: '5.900' }),
  limitOf('compression-height', 'in', { target: '1.600' }),
  limitOf('gasket-thickness', 'in', { target: '0.040' }),
];
const FOUND = heights('before', CORNERS, '9.2210', '9.2200', '9.2230', '9.2215');
const wanted = (inches: string): Typed => ['clearance-wanted', inches, 'in', BEFORE];

describe('DECK_FORMULAS: stack and clearance', () => {
  it('1.700 + 5.900 + 1.600 is 9.200; block 9.220: 0.020 in down (exact arithmetic)', () => {
    const bench = blockBench({ spots: CORNERS, limits: STACK, readings: FOUND });

    expect(figure(bench, 'stack', 'in', 'before')).toBe(9.2);
    expect(figure(bench, 'deck-clearance', 'in', 'before')).toBe(0.02);
    expect(figure(bench, 'corner-clearance', 'in', 'before', CORNERS[2])).toBe(0.023);
    expect(marks(bench, 'deck-clearance', 'before')).toBe(
      'from the sheet: stroke of the engine, rod length, piston pin to crown',
    );
  });

  it('reference case web-compression-height (a public page, weak): 9.025 - 1.75 - 6.0 - 0.025 is 1.25', () => {
    const found = reference.cases.find((it) => it.id === 'web-compression-height');
    const {
      block = 0,
      stroke = 0,
      rod = 0,
      deck = 0,
    } = (found?.inputs ?? {}) as unknown as Partial<Record<string, number>>;
    const bench = blockBench({
      spots: CORNERS,
      engine: { ...V_EIGHT, stroke: stroke * 25_400_000 },
      limits: [
        limitOf('rod-length', 'in', { target: String(rod) }),
        limitOf('compression-height', 'in', { target: String(found?.expected) }),
      ],
      readings: heights('before', CORNERS, String(block)),
    });

    expect(Math.abs(figure(bench, 'deck-clearance', 'in', 'before') - deck)).toBeLessThan(1e-9);
  });

  it('names what the stack lacks', () => {
    const bench = blockBench({ spots: CORNERS, limits: [], engine: null, readings: FOUND });

    expect(marks(bench, 'stack', 'before')).toBe('not known: stroke; rod length; piston pin to crown');
    expect(knownOf(bench, 'deck-clearance', 'before')?.value).toBeNull();
  });

  it('of a head it is the sheet’s figure less what comes off the block (exact arithmetic)', () => {
    const bench = headBench({ readings: [['block-deck-cut', '0.025', 'in']] });

    expect(figure(bench, 'deck-clearance', 'in', 'before')).toBe(0.02);
    expect(figure(bench, 'deck-clearance', 'in')).toBe(-0.005);
    expect(marks(headBench(), 'deck-clearance')).toContain('no deck cut entered');
  });
});

describe('DECK_FORMULAS: corners and banks', () => {
  it.each([
    ['9.2240', '0.004', 'pass'],
    ['9.2241', '0.004', 'fail'],
    ['9.2220', '0.002', 'pass'],
    ['9.2221', '0.002', 'fail'],
  ])(
    'corners of 9.2200 to %s with a limit of %s: %s (common practice: 0.004 stock, 0.002 performance)',
    (most, high, verdict) => {
      const bench = blockBench({
        spots: CORNERS,
        limits: [limitOf('deck-spread', 'in', { high, stage: 'before' })],
        readings: heights('before', CORNERS, '9.2200', most, '9.2210', '9.2205'),
      });

      expect(bench.verdict('deck-spread', 'before', null, knownOf(bench, 'deck-spread', 'before')).name).toBe(verdict);
    },
  );

  it('each bank by itself and against the other: the worst counts, both are named (exact arithmetic)', () => {
    const bench = blockBench({
      spots: BANKS,
      limits: STACK,
      readings: heights('before', BANKS, '9.220', '9.221', '9.220', '9.222', '9.225', '9.224', '9.2245', '9.2275'),
    });

    expect(figure(bench, 'deck-spread', 'in', 'before')).toBe(0.0035);
    expect(marks(bench, 'deck-spread', 'before')).toContain('left bank .0020 in, right bank .0035 in');
    expect(figure(bench, 'bank-difference', 'in', 'before')).toBe(0.004);
    expect(marks(bench, 'deck-lowest', 'before')).toContain('corner LFV');
    expect(marks(bench, 'deck-clearance', 'before')).toContain('left bank .0200 in, right bank .0240 in');
    expect(figure(bench, 'corner-over-lowest', 'in', 'before', BANKS[7])).toBe(0.0035);
  });

  it('one bank has no other one to differ from', () => {
    expect(marks(blockBench({ spots: CORNERS, readings: FOUND }), 'bank-difference', 'before')).toBe('one bank');
  });

  it('what came off is told corner by corner (exact arithmetic)', () => {
    const bench = blockBench({
      spots: CORNERS,
      readings: [...FOUND, ...heights('after', CORNERS, '9.2150', '9.2150')],
    });

    expect(figure(bench, 'deck-removed', 'in', 'after', CORNERS[0])).toBe(0.006);
    expect(knownOf(bench, 'deck-removed', 'after', CORNERS[3])).toBeNull();
  });

  it('raising a whole block changes no spread, reversing its corners changes nothing (property)', () => {
    const height = fc.integer({ min: 92_000, max: 92_300 });
    const text = (tenths: number) => (tenths / 10_000).toFixed(4);

    fc.assert(
      fc.property(fc.array(height, { minLength: 4, maxLength: 4 }), fc.integer({ min: 0, max: 500 }), (list, up) => {
        const spread = (of: readonly number[]) =>
          knownOf(
            blockBench({ spots: CORNERS, readings: heights('before', CORNERS, ...of.map(text)) }),
            'deck-spread',
            'before',
          )?.value;

        expect(spread(list.map((it) => it + up))).toBe(spread(list));
        expect(spread(list.toReversed())).toBe(spread(list));
      }),
      { numRuns: 25 },
    );
  });
});

describe('DECK_FORMULAS: how much to cut', () => {
  const CLEAN: Typed = ['block-clean-up', '0.004', 'in', BEFORE];

  it('stock is the lowest corner less stack less what is wanted, and every corner gets its own (exact arithmetic)', () => {
    const bench = blockBench({ spots: CORNERS, limits: STACK, readings: [...FOUND, CLEAN, wanted('0.010')] });

    expect(figure(bench, 'block-cut-wanted', 'in', 'before')).toBe(0.01);
    expect(figure(bench, 'block-cut', 'in', 'before')).toBe(0.01);
    expect(figure(bench, 'deck-finished', 'in', 'before')).toBe(9.21);
    expect(figure(bench, 'corner-cut', 'in', 'before', CORNERS[2])).toBe(0.013);
    expect(marks(bench, 'deck-finished', 'before')).toContain('.0100 in below the deck');
  });

  it('never below what cleans up: both are reported (exact arithmetic)', () => {
    const bench = blockBench({ spots: CORNERS, limits: STACK, readings: [...FOUND, CLEAN, wanted('0.018')] });

    expect(figure(bench, 'block-cut-wanted', 'in', 'before')).toBe(0.002);
    expect(figure(bench, 'block-clean-up', 'in', 'before')).toBe(0.004);
    expect(figure(bench, 'block-cut', 'in', 'before')).toBe(0.004);
    expect(marks(bench, 'block-cut', 'before')).toContain('cleaning up decides, the clearance asks for .0020 in');
    expect(figure(bench, 'deck-finished', 'in', 'before')).toBe(9.216);
  });

  it('a deck that is too low already is not cut for it', () => {
    const bench = blockBench({ spots: CORNERS, limits: STACK, readings: [...FOUND, CLEAN, wanted('0.030')] });

    expect(figure(bench, 'block-cut-wanted', 'in', 'before')).toBe(-0.01);
    expect(marks(bench, 'block-cut-wanted', 'before')).toContain('thicker gasket');
    expect(figure(bench, 'block-cut', 'in', 'before')).toBe(0.004);
  });

  it('two banks are finished at one height: each its own cut (exact arithmetic)', () => {
    const bench = blockBench({
      spots: BANKS,
      limits: STACK,
      readings: [
        ...heights('before', BANKS, '9.220', '9.221', '9.220', '9.222', '9.225', '9.224', '9.2245', '9.2275'),
        CLEAN,
        wanted('0.010'),
      ],
    });

    expect(figure(bench, 'deck-finished', 'in', 'before')).toBe(9.21);
    expect(marks(bench, 'block-cut', 'before')).toContain('left bank .0100 in, right bank .0140 in');
    expect(figure(bench, 'corner-cut', 'in', 'before', BANKS[4])).toBe(0.015);
  });

  it('what is reckoned from a deck does not repeat each of its banks', () => {
    const bench = blockBench({
      spots: BANKS,
      limits: STACK,
      readings: [
        ...heights('before', BANKS, '9.220', '9.221', '9.220', '9.222', '9.225', '9.224', '9.2245', '9.2275'),
        CLEAN,
        wanted('0.010'),
      ],
    });

    expect(marks(bench, 'piston-to-head', 'before')).not.toContain('bank');
    expect(marks(bench, 'head-drop')).not.toContain('bank');
  });

  it('a planned cut already tells clearance, drop and manifold; a measured one goes before it', () => {
    const readings = [...FOUND, CLEAN, wanted('0.010')];
    const plan = blockBench({ spots: CORNERS, limits: STACK, readings });

    expect(figure(plan, 'deck-clearance', 'in')).toBe(0.01);
    expect(knownOf(plan, 'head-drop')).toMatchObject({ planned: true });
    const done = blockBench({
      spots: CORNERS,
      limits: STACK,
      readings: [...readings, ...heights('after', CORNERS, '9.2120', '9.2120', '9.2120', '9.2120')],
    });

    expect(figure(done, 'head-drop', 'in')).toBeCloseTo(0.009375, 7);
    expect(figure(done, 'deck-clearance', 'in')).toBe(0.012);
    expect(marks(done, 'head-drop')).toContain('no cut of the heads entered');
  });
});

describe('DECK_FORMULAS: piston to head', () => {
  it('0.020 + 0.040 is 0.060 in and passes at least 0.035 (common practice with steel rods)', () => {
    const limits = [...STACK, limitOf('piston-to-head', 'in', { low: '0.035', stage: 'before' })];
    const bench = blockBench({ spots: CORNERS, limits, readings: FOUND });
    const found = knownOf(bench, 'piston-to-head', 'before');

    expect(figure(bench, 'piston-to-head', 'in', 'before')).toBe(0.06);
    expect(bench.verdict('piston-to-head', 'before', null, found).name).toBe('pass');
  });

  it('decked to nothing with a gasket of 0.030 it is 0.030 and fails', () => {
    const limits = [...STACK, limitOf('piston-to-head', 'in', { low: '0.035' })];
    const bench = blockBench({
      spots: CORNERS,
      limits,
      readings: [
        ...FOUND,
        ...heights('after', CORNERS, '9.200', '9.200', '9.200', '9.200'),
        ['gasket-thickness', '0.030', 'in'],
      ],
    });

    expect(figure(bench, 'piston-to-head', 'in')).toBe(0.03);
    expect(bench.verdict('piston-to-head', 'after', null, knownOf(bench, 'piston-to-head')).name).toBe('fail');
  });
});
