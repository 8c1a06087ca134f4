import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clearanceFor, pistonDown, ratioOf } from '#core/readings/compute/geometry/compression.ts';
import { asNumber, base } from '#tests/kit/engine-figures.ts';
import reference from '#tests/reference/engine-arithmetic.json' with { type: 'json' };

const cc = (figure: number | string) => base(figure, 'cc');
const ratio = (swept: number, clearance: number) => asNumber(ratioOf(cc(swept), cc(clearance))?.ratio, 'ratio');
const caseOf = (id: string) => {
  const found = reference.cases.find((it) => it.id === id);
  if (!found) throw new Error(`no case ${id}`);
  return { ...found, inputs: found.inputs as unknown as Record<string, number>, expected: found.expected as number };
};

describe('ratioOf', () => {
  it('reference case web-ratio-9237 (a public page on engine mathematics, weak): 9.237', () => {
    const { inputs, expected, tolerance } = caseOf('web-ratio-9237');

    expect(Math.abs(ratio(inputs.swept_cc ?? 0, inputs.chamber_cc ?? 0) - expected)).toBeLessThanOrEqual(tolerance);
  });

  it('reference case web-ratio-795 (a parts dealer’s formula page, weak): 7.95', () => {
    const { inputs, expected, tolerance } = caseOf('web-ratio-795');
    const above = (inputs.chamber_cc ?? 0) + (inputs.deck_cc ?? 0);

    expect(Math.abs(ratio(inputs.swept_cc ?? 0, above) - expected)).toBeLessThanOrEqual(tolerance);
  });

  it('reference case web-dome-20 (the same page, weak): the piston volume still needed is 20 cc', () => {
    const { inputs, expected, tolerance } = caseOf('web-dome-20');
    const all = clearanceFor(cc(inputs.swept_cc ?? 0), base(inputs.ratio ?? 0, 'ratio')) ?? 0;
    const rest = all - cc((inputs.chamber_cc ?? 0) + (inputs.gasket_cc ?? 0) + (inputs.deck_cc ?? 0));

    expect(Math.abs(asNumber(rest, 'cc') - expected)).toBeLessThanOrEqual(tolerance);
  });

  it.each([
    [4, 0],
    [18, 1],
  ])('reference case octane-test-engine-volumes: ratio %s (range of ASTM D2699/D2700 engines)', (wanted, index) => {
    const { inputs, expected: both } = caseOf('octane-test-engine-volumes');
    const swept = inputs.swept_cm3 ?? 0;
    const expected = (both as unknown as number[])[index] ?? Number.NaN;

    expect(Math.abs(asNumber(clearanceFor(cc(swept), base(wanted, 'ratio')), 'cc') - expected)).toBeLessThanOrEqual(
      0.01,
    );
  });

  it('nothing left above the piston has no ratio, and none makes a ratio of one', () => {
    expect(ratioOf(cc(500), 0)).toBeNull();
    expect(ratioOf(cc(500), -1)).toBeNull();
    expect(clearanceFor(cc(500), base('1', 'ratio'))).toBeNull();
  });

  it('a ratio and its volume come back to each other (property)', () => {
    fc.assert(
      fc.property(fc.integer({ min: 100, max: 3000 }), fc.integer({ min: 50_000, max: 250_000 }), (swept, wanted) => {
        const clearance = clearanceFor(cc(swept), wanted) ?? 0;

        expect(ratioOf(cc(swept), clearance)?.ratio).toBe(wanted);
      }),
    );
  });

  it('its slopes are what a small step does (property)', () => {
    fc.assert(
      fc.property(fc.integer({ min: 200, max: 2000 }), fc.integer({ min: 40, max: 120 }), (swept, clearance) => {
        const found = ratioOf(cc(swept), cc(clearance));
        const more = ratioOf(cc(swept), cc(clearance) + 1_000_000);
        const step = ((more?.ratio ?? 0) - (found?.ratio ?? 0)) / 1_000_000;

        expect(Math.abs(step / (found?.perClearance ?? 1) - 1)).toBeLessThan(0.05);
      }),
    );
  });
});

describe('pistonDown', () => {
  it.each(reference.crank_slider_cases)(
    'reference case crank $crank_deg degrees: $piston_down in below top dead centre (exact mathematics)',
    ({ crank_deg, stroke, rod, piston_down }) => {
      const found = pistonDown(base(stroke, 'in'), base(rod, 'in'), base(crank_deg, 'deg'));

      expect(Math.abs(asNumber(found, 'in') - piston_down)).toBeLessThan(0.000001);
    },
  );

  it('a quarter turn is more than half the stroke (exact mathematics: r + l less the root of l2 - r2)', () => {
    expect(asNumber(pistonDown(base('3.4', 'in'), base('5.9', 'in'), base('90', 'deg')), 'in')).toBeGreaterThan(1.7);
  });

  it('a rod shorter than the throw cannot turn', () => {
    expect(pistonDown(base('4', 'in'), base('2', 'in'), 0)).toBeNull();
  });
});
