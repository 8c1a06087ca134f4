import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { layScale } from '#renderer/kit/bench-scale.ts';

const MM = 1_000_000;
const INCH = 25_400_000;

describe('layScale', () => {
  it('stands limits and target where a ruler would: 34.75 and 35.25 around 35.00 mm', () => {
    const scale = layScale({ low: 34_750_000, high: 35_250_000, target: 35 * MM, value: 35_100_000, perUnit: MM });
    if (!scale) throw new Error('no scale');
    const width = scale.to - scale.from;
    for (const value of [34_750_000, 35 * MM, 35_250_000, 35_100_000]) {
      expect(scale.place(value)).toBeCloseTo((value - scale.from) / width, 9);
    }
    expect(scale.from).toBeLessThan(34_750_000);
    expect(scale.to).toBeGreaterThan(35_250_000);
    const labels = scale.ticks.filter((tick) => tick.size === 'label').map((tick) => tick.value);
    expect(labels).toContain(35 * MM);
  });

  it('graduates inches in whole parts of an inch', () => {
    const scale = layScale({ low: 1.69 * INCH, high: 1.71 * INCH, target: 1.7 * INCH, value: null, perUnit: INCH });
    const steps = new Set(scale?.ticks.slice(1).map((tick, n) => tick.value - (scale.ticks[n]?.value ?? 0)));
    for (const step of steps) expect(step % 254).toBe(0);
  });

  it('holds a value that is absurdly far at the end instead of squeezing the limits together', () => {
    const scale = layScale({ low: 34_750_000, high: 35_250_000, target: null, value: 350 * MM, perUnit: MM });
    expect(scale?.place(350 * MM)).toBe(1);
    expect((scale?.place(35_250_000) ?? 0) - (scale?.place(34_750_000) ?? 0)).toBeGreaterThan(0.3);
  });

  it('reads what may be at most a little from nought', () => {
    const scale = layScale({ low: null, high: 60_000, target: null, value: 20_000, perUnit: MM });
    expect(scale?.from).toBe(0);
    expect(scale?.place(60_000)).toBeGreaterThan(0.5);
  });

  it('has nothing to show without a limit and without a target', () => {
    expect(layScale({ low: null, high: null, target: null, value: 5, perUnit: MM })).toBeNull();
  });

  it('always shows every limit between its ends and never more graduations than can be told apart', () => {
    const size = fc.integer({ min: 1, max: 500_000_000 });
    fc.assert(
      fc.property(size, size, fc.option(size), fc.constantFrom(MM, INCH, 1_000), (a, b, value, perUnit) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        const scale = layScale({ low, high, target: null, value, perUnit });
        if (!scale) throw new Error('no scale');
        expect(scale.from).toBeLessThanOrEqual(low);
        expect(scale.to).toBeGreaterThanOrEqual(high);
        expect(scale.ticks.length).toBeLessThanOrEqual(90);
      }),
    );
  });
});
