import { describe, expect, it } from 'vitest';
import { measureOf, type UnitCode } from '#core/kernel/measure-units.ts';
import { cutterPeak, cutterRa, cutterSlopes } from '#core/readings/compute/geometry/cutter-mark.ts';
import reference from '#tests/reference/surface-texture.json' with { type: 'json' };

/** Mean height from the mean line of one wave, in the unit of the profile: the definition of Ra. */
function meanHeight(profile: (at: number) => number, steps = 200_000): number {
  const heights = Array.from({ length: steps }, (_, i) => profile((i + 0.5) / steps));
  const mean = heights.reduce((sum, it) => sum + it, 0) / steps;
  return heights.reduce((sum, it) => sum + Math.abs(it - mean), 0) / steps;
}

const PROFILES: Readonly<Record<string, (at: number) => number>> = {
  sine: (at) => Math.sin(2 * Math.PI * at),
  triangle: (at) => 4 * Math.abs(at - 0.5) - 1,
  square: (at) => (at < 0.5 ? 1 : -1),
};
/** The arcs of a round nose, one feed apart. */
const arcs = (feed: number, radius: number) => (at: number) =>
  radius - Math.sqrt(radius ** 2 - (feed * (at - 0.5)) ** 2);

const length = (figure: number, unit: string) => measureOf(figure.toString(), unit as UnitCode);
const roughUnit = (unit: string): UnitCode => (unit === 'mm' ? 'um' : 'uin');
const inUnit = (picometres: number, unit: string) => picometres / measureOf('1', roughUnit(unit));

describe('the integration these tests use', () => {
  it.each(reference.profile_cases)('$profile wave of amplitude 1: Ra $Ra (exact mathematics)', ({ profile, Ra }) => {
    expect(meanHeight(PROFILES[profile] ?? (() => 0))).toBeCloseTo(Ra, 4);
  });
});

describe('cutterRa', () => {
  it.each(reference.cutter_mark_cases)('feed $feed, nose $nose_radius $unit: $parabola_Ra ($source)', (it) => {
    const ra = inUnit(cutterRa(length(it.feed, it.unit), length(it.nose_radius, it.unit)), it.unit);

    expect(Math.abs(ra - it.parabola_Ra)).toBeLessThanOrEqual(it.parabola_Ra * 1e-4);
    expect(Math.abs(ra - it.numeric_Ra)).toBeLessThanOrEqual(it.numeric_Ra * 0.006);
  });

  it.each(reference.cutter_mark_cases)(
    'feed $feed, nose $nose_radius $unit: within 0.6 % of the arcs integrated here, whose Ra is $numeric_Ra',
    (it) => {
      const scale = it.unit === 'mm' ? 1000 : 1e6;
      const arc = meanHeight(arcs(it.feed, it.nose_radius)) * scale;
      const ra = inUnit(cutterRa(length(it.feed, it.unit), length(it.nose_radius, it.unit)), it.unit);

      expect(arc).toBeCloseTo(it.numeric_Ra, 2);
      expect(Math.abs(ra - arc)).toBeLessThanOrEqual(arc * 0.006);
    },
  );

  it.each([
    ['0.006', '0.03125', 36.95],
    ['0.004', '0.03125', 16.42],
    ['0.010', '0.25', 12.83],
  ])('feed %s in, nose %s in: %f µin (exact mathematics)', (feed, radius, wanted) => {
    const ra = cutterRa(measureOf(feed, 'in'), measureOf(radius, 'in')) / measureOf('1', 'uin');

    expect(Math.abs(ra - wanted)).toBeLessThanOrEqual(0.05);
  });
});

describe('cutterPeak', () => {
  it.each(reference.cutter_mark_cases)('feed $feed, nose $nose_radius $unit: peak $numeric_Rt within 1 %', (it) => {
    const peak = inUnit(cutterPeak(length(it.feed, it.unit), length(it.nose_radius, it.unit)), it.unit);

    expect(Math.abs(peak - it.numeric_Rt)).toBeLessThanOrEqual(it.numeric_Rt * 0.01);
  });

  it('400 µin for feed 0.010 in and nose 1/32 in is peak to valley and not Ra (a trap of a public page)', () => {
    const [feed, radius] = [measureOf('0.010', 'in'), measureOf('0.03125', 'in')];

    expect(cutterPeak(feed, radius) / measureOf('1', 'uin')).toBeCloseTo(400, 6);
    expect(cutterRa(feed, radius) / measureOf('1', 'uin')).toBeCloseTo(102.64, 1);
  });
});

describe('cutterSlopes', () => {
  it('tell how much Ra changes with feed and nose (difference of two answers)', () => {
    const [feed, radius] = [152_400, 793_750];
    const slopes = cutterSlopes(feed, radius);
    const ra = cutterRa(feed, radius);

    expect((cutterRa(feed + 100, radius) - ra) / 100 / slopes.feed).toBeCloseTo(1, 2);
    expect((cutterRa(feed, radius + 1000) - ra) / 1000 / slopes.radius).toBeCloseTo(1, 2);
  });
});
