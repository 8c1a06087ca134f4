import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Stage } from '#core/catalogue/compute/bench-table.ts';
import type { Spot } from '#core/readings/compute/model.ts';
import { limitOf } from '#tests/kit/bench-facts.ts';
import {
  BEFORE,
  figure,
  headBench,
  knownOf,
  marks,
  spotsOf,
  type Typed,
  V_EIGHT_SHEET,
} from '#tests/kit/cut-engine.ts';

const near = (found: number, expected: number, tolerance: number) =>
  expect(Math.abs(found - expected)).toBeLessThan(tolerance);
const cut = (inches: string): Typed => ['head-cut-planned', inches, 'in', BEFORE];
const CHAMBERS = spotsOf(
  'chamber',
  ...[1, 2, 3, 4].map((cylinder): Partial<Spot> => ({ label: String(cylinder), cylinder })),
);
const VALVES = spotsOf(
  'valve',
  ...[1, 2, 3, 4].flatMap((cylinder): Partial<Spot>[] => [
    { label: `${cylinder}E`, cylinder, side: 'E' },
    { label: `${cylinder}I`, cylinder, side: 'I' },
  ]),
);
const filled = (stage: Stage, ...volumes: readonly string[]): Typed[] =>
  volumes.map((volume, index): Typed => ['chamber-volume', volume, 'cc', { stage, spot: CHAMBERS[index]?.id ?? null }]);
/** All valves sunk alike, by their stem tips. */
const sunk = (inches: string, of: readonly Spot[] = VALVES): Typed[] =>
  of.map((spot): Typed => ['valve-sink', inches, 'in', { spot: spot.id }]);
const HEADS = [
  limitOf('valve-head-diameter', 'in', { target: '2.020', side: 'I' }),
  limitOf('valve-head-diameter', 'in', { target: '1.600', side: 'E' }),
];
const circle = (diameter: number, depth: number) => (Math.PI / 4) * diameter ** 2 * depth * 16.387064;

describe('CHAMBER_FORMULAS: burette', () => {
  it('mean, spread, smallest and largest by name (exact arithmetic)', () => {
    const bench = headBench({ spots: CHAMBERS, readings: filled('after', '61.4', '62.1', '62.6', '61.9') });

    expect(figure(bench, 'chamber-mean', 'cc')).toBe(62);
    expect(figure(bench, 'chamber-spread', 'cc')).toBeCloseTo(1.2, 6);
    expect(marks(bench, 'chamber-spread')).toContain('smallest 1, largest 3');
    expect(figure(bench, 'chamber-to-largest', 'cc', 'after', CHAMBERS[0])).toBeCloseTo(1.2, 6);
    expect(figure(bench, 'chamber-to-largest', 'cc', 'after', CHAMBERS[2])).toBe(0);
  });

  it.each([
    ['62.0', '63.0', '1.0', 'pass'],
    ['62.0', '63.1', '1.0', 'fail'],
    ['62.0', '62.5', '0.5', 'pass'],
    ['62.0', '62.6', '0.5', 'fail'],
  ])('%s and %s cc with a limit of %s: %s (common practice: 1 cc stock, 0.5 cc performance)', (a, b, high, verdict) => {
    const bench = headBench({
      spots: CHAMBERS,
      limits: [limitOf('chamber-spread', 'cc', { high })],
      readings: filled('after', a, b),
    });

    expect(bench.verdict('chamber-spread', 'after', null, knownOf(bench, 'chamber-spread')).name).toBe(verdict);
  });

  it('says when not every chamber was filled, and has no spread of one', () => {
    const bench = headBench({ spots: CHAMBERS, readings: filled('after', '62.0') });

    expect(marks(bench, 'chamber-mean')).toContain('1 of 4 chambers read');
    expect(knownOf(bench, 'chamber-spread')).toBeNull();
  });

  it('filled before and after, the change is what was measured and not what was reckoned', () => {
    const bench = headBench({
      spots: [...CHAMBERS, ...VALVES],
      readings: [cut('0.010'), ...filled('before', '62.0', '62.4'), ...filled('after', '60.6', '61.2')],
    });

    expect(figure(bench, 'chamber-change', 'cc')).toBeCloseTo(-1.3, 6);
    expect(marks(bench, 'chamber-change')).toContain('measured');
    expect(figure(bench, 'chamber-changed', 'cc', 'after', CHAMBERS[0])).toBeCloseTo(-1.4, 6);
  });

  it('reversing the chambers changes neither mean nor spread (property)', () => {
    const volume = fc.integer({ min: 550, max: 700 }).map((tenths) => (tenths / 10).toFixed(1));

    fc.assert(
      fc.property(fc.array(volume, { minLength: 4, maxLength: 4 }), (volumes) => {
        const of = (list: readonly string[]) => {
          const bench = headBench({ spots: CHAMBERS, readings: filled('after', ...list) });
          return ['chamber-mean', 'chamber-spread'].map((quantity) => knownOf(bench, quantity)?.value);
        };

        expect(of(volumes.toReversed())).toEqual(of(volumes));
      }),
      { numRuns: 25 },
    );
  });
});

describe('CHAMBER_FORMULAS: area at the deck', () => {
  const bare = V_EIGHT_SHEET.filter((limit) => limit.quantity !== 'chamber-circle');

  it.each([
    [
      'area traced on squared paper',
      [
        ['chamber-squares', '1018', 'count', BEFORE],
        ['chamber-square-side', '0.1', 'in', BEFORE],
      ],
    ],
    [
      'area from two fillings',
      [
        ['chamber-full', '62.000', 'cc', BEFORE],
        ['chamber-lowered', '60.332', 'cc', BEFORE],
        ['chamber-lowered-by', '0.010', 'in', BEFORE],
      ],
    ],
    ['area by string: too large for a long shape', [['chamber-string', '11.3097', 'in', BEFORE]]],
  ] as const)('%s: a circle of 3.600 in, and says so (exact mathematics)', (words, readings) => {
    const bench = headBench({ limits: bare, readings: readings as unknown as Typed[] });

    near(figure(bench, 'chamber-circle', 'in', 'before'), 3.6, 0.0005);
    expect(marks(bench, 'chamber-circle', 'before')).toContain(words);
    near(figure(bench, 'cut-per-cc', 'in', 'before'), 0.005995, 0.000003);
  });

  it('a typed circle stands, the sheet’s is said to be one, and without any the three ways are named', () => {
    const typed = headBench({ readings: [['chamber-circle', '3.50', 'in', BEFORE]] });

    expect(figure(typed, 'chamber-circle', 'in', 'before')).toBe(3.5);
    expect(marks(headBench(), 'chamber-circle', 'before')).toBe('area of the chamber from the sheet');
    expect(knownOf(headBench({ limits: bare }), 'chamber-circle', 'before')).toMatchObject({ value: null });
    expect(marks(headBench({ limits: bare }), 'chamber-circle', 'before')).toMatch(/trace.*fill it twice.*string/);
  });
});

describe('CHAMBER_FORMULAS: cut and sink', () => {
  it('3.60 in circle, 0.006 in: one cc less (common practice: 1 cc for 0.006 in; exact mathematics)', () => {
    near(figure(headBench({ readings: [cut('0.006')] }), 'chamber-by-cut', 'cc'), -1.0008, 0.001);
  });

  it('0.010 in: 1.668 cc less (exact mathematics)', () => {
    near(figure(headBench({ readings: [cut('0.010')] }), 'chamber-by-cut', 'cc'), -1.668, 0.001);
  });

  it('the thickness before and after counts before any plan', () => {
    const bench = headBench({
      readings: [cut('0.010'), ['thickness', '3.9600', 'in', BEFORE], ['thickness', '3.9540', 'in']],
    });

    expect(figure(bench, 'head-cut', 'in')).toBe(0.006);
    expect(knownOf(bench, 'head-cut')?.planned).toBe(false);
    expect(marks(headBench({ readings: [cut('0.010')] }), 'head-cut')).toBe('as planned, not cut yet');
  });

  it('without known sink it says "surfacing only; chamber not measured"', () => {
    const bench = headBench({ spots: [...CHAMBERS, ...VALVES], readings: [cut('0.010')] });

    near(figure(bench, 'chamber-change', 'cc'), -1.668, 0.001);
    expect(marks(bench, 'chamber-change')).toContain('surfacing only; chamber not measured');
    expect(knownOf(bench, 'chamber-by-sink')?.value).toBeNull();
  });

  it('sunk valves give back what the cut takes: - area x cut + sum of valve areas x sink (exact mathematics)', () => {
    const bench = headBench({
      spots: [...CHAMBERS, ...VALVES],
      limits: [...V_EIGHT_SHEET, ...HEADS],
      readings: [cut('0.010'), ...sunk('0.015')],
    });
    const expected = circle(2.02, 0.015) + circle(1.6, 0.015);

    near(figure(bench, 'chamber-by-sink', 'cc'), expected, 0.00001);
    near(figure(bench, 'chamber-change', 'cc'), expected - circle(3.6, 0.01), 0.00001);
    expect(marks(bench, 'chamber-change')).toContain('cut and sunk valves');
  });

  it('one valve of which nothing is known, and the sum is not claimed', () => {
    const bench = headBench({
      spots: [...CHAMBERS, ...VALVES],
      limits: [...V_EIGHT_SHEET, ...HEADS],
      readings: [cut('0.010'), ...sunk('0.015', VALVES.slice(1))],
    });

    expect(knownOf(bench, 'chamber-by-sink')?.value).toBeNull();
    expect(marks(bench, 'chamber-change')).toContain('surfacing only');
  });

  it('each chamber is reckoned with its own valves, to be held against the burette (exact mathematics)', () => {
    const bench = headBench({
      spots: [...CHAMBERS, ...VALVES],
      limits: [...V_EIGHT_SHEET, ...HEADS],
      readings: [cut('0.010'), ...filled('before', '62.0', '62.4'), ...sunk('0.020', VALVES.slice(0, 2))],
    });
    const first = 62 - circle(3.6, 0.01) + circle(2.02, 0.02) + circle(1.6, 0.02);

    near(figure(bench, 'chamber-expected', 'cc', 'after', CHAMBERS[0]), first, 0.00001);
    near(figure(bench, 'chamber-expected', 'cc', 'after', CHAMBERS[1]), 62.4 - circle(3.6, 0.01), 0.00001);
    expect(marks(bench, 'chamber-expected', 'after', CHAMBERS[1])).toContain('sink of its valves not known');
  });

  it.each([
    [
      'what seat and face lost: 0.012 + 0.006 / cos 45 is 0.0205 (exact mathematics)',
      [
        ['seat-cut-depth', '0.012', 'in'],
        ['face-stock', '0.006', 'in'],
        ['seat-angle', '45', 'deg'],
      ],
      0.020485,
    ],
    [
      'recession, deck not cut: 0.045 - 0.030 (exact arithmetic)',
      [
        ['recession', '0.030', 'in', BEFORE],
        ['recession', '0.045', 'in'],
      ],
      0.015,
    ],
  ] as const)('a valve sinks by %s', (_, readings, expected) => {
    const [spot] = VALVES;
    const typed = (readings as unknown as Typed[]).map(
      ([quantity, text, unit, more]): Typed => [quantity, text, unit, { ...more, spot: spot?.id ?? null }],
    );

    near(figure(headBench({ spots: VALVES, readings: typed }), 'valve-sink', 'in', 'after', spot), expected, 0.000001);
  });

  it('recession 0.030 before, 0.008 off the deck, 0.022 read again: the valve did not sink (exact arithmetic)', () => {
    const [spot] = VALVES;
    const bench = headBench({
      spots: VALVES,
      readings: [
        ['recession', '0.030', 'in', { ...BEFORE, spot: spot?.id ?? null }],
        ['recession', '0.022', 'in', { spot: spot?.id ?? null }],
        ['thickness', '3.9600', 'in', BEFORE],
        ['thickness', '3.9520', 'in'],
      ],
    });

    expect(figure(bench, 'valve-sink', 'in', 'after', spot)).toBe(0);
    expect(marks(bench, 'valve-sink', 'after', spot)).toContain('surfaced deck');
  });

  it('planned cuts of all seats count as a plan before anything is cut', () => {
    const bench = headBench({
      spots: [...CHAMBERS, ...VALVES],
      limits: [...V_EIGHT_SHEET, ...HEADS],
      readings: [
        cut('0.010'),
        ...VALVES.flatMap((spot): Typed[] => [
          ['seat-cut-depth', '0.015', 'in', { ...BEFORE, spot: spot.id }],
          ['face-stock', '0', 'in', { ...BEFORE, spot: spot.id }],
        ]),
      ],
    });

    near(figure(bench, 'chamber-by-sink', 'cc'), circle(2.02, 0.015) + circle(1.6, 0.015), 0.00001);
    expect(marks(bench, 'chamber-by-sink')).toContain('sink as planned');
    expect(knownOf(bench, 'chamber-by-sink')?.planned).toBe(true);
  });

  it('more than 0.030 in off: measure again (common practice), and not before', () => {
    expect(marks(headBench({ readings: [cut('0.031')] }), 'chamber-by-cut')).toContain('measure the chamber again');
    expect(marks(headBench({ readings: [cut('0.030')] }), 'chamber-by-cut')).not.toContain('measure the chamber again');
  });

  it('speaks in millimetres of a metric head, whatever the shop works in', () => {
    const limits = [limitOf('thickness', 'mm', { low: '100' }), ...V_EIGHT_SHEET];

    expect(marks(headBench({ limits, readings: [cut('0.031')] }), 'chamber-by-cut')).toContain('0.762 mm');
  });
});
