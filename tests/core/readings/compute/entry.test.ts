import { describe, expect, it } from 'vitest';
import { openBench } from '#core/readings/compute/bench.ts';
import { readEntry } from '#core/readings/compute/entry.ts';
import { placeAt } from '#core/readings/compute/place.ts';
import { factsOf, readingOf, valves } from '#tests/kit/bench-facts.ts';
import { practiceHead } from '#tests/kit/practice-head.ts';

function type(quantity: string, text: string, unit: 'in' | 'mm' | null = null) {
  const facts = practiceHead('LO-4');
  const bench = openBench(facts);
  const spot = facts.spots.find((it) => it.label === '1E')?.id ?? null;
  const point = quantity === 'guide-id' ? 'top' : null;
  const stage = quantity === 'installed-height' ? ('before' as const) : ('after' as const);
  const at = ['crack-result', 'crack-map', 'thickness'].includes(quantity) ? null : spot;
  const place = placeAt(bench, { quantity, spot: at, point, stage });
  if (!place) throw new Error(`no place for ${quantity}`);
  return readEntry(bench, place, text, unit);
}

describe('readEntry', () => {
  it('shows what the program put in before it is kept', () => {
    expect(type('installed-height', '518')).toMatchObject({ becomes: '= 1.518 in', keep: { typed: '1.518' } });
    expect(type('guide-id', '3150')).toMatchObject({ becomes: '= 0.3150 in', keep: { mark: 'implied' } });
    expect(type('installed-height', '1.518').becomes).toBe('');
    expect(type('installed-height', '38.1mm').becomes).toBe('= 38.1 mm');
  });

  it('takes the unit the sender says for a figure without a mark', () => {
    expect(type('margin', '1.20', 'mm').keep).toMatchObject({ unit: 'mm', value: 1_200_000 });
  });

  it('doubts a figure ten times off and still offers to keep it', () => {
    expect(type('installed-height', '15.18')).toMatchObject({ doubt: { meant: { typed: '1.518' } }, keep: {} });
  });

  it('doubts a size ten times that of its neighbours where no limit says what to expect, and never a gap', () => {
    const typed = (quantity: string, beside: string, text: string) => {
      const spots = valves('1E', '1I');
      const [here, other] = spots;
      const read = readingOf(quantity, beside, 'in', { spot: other?.id ?? null, stage: 'after' });
      const bench = openBench(factsOf({ spots, readings: [read], limits: [] }));
      const place = placeAt(bench, { quantity, spot: here?.id ?? null, point: null, stage: 'after' });
      if (!place) throw new Error(`no place for ${quantity}`);
      return readEntry(bench, place, text, 'in');
    };
    expect(typed('stem', '0.3412', '3.4120')).toMatchObject({ doubt: { meant: { typed: '0.34120' } }, keep: {} });
    expect(typed('stem', '0.3412', '0.3415').doubt).toBeNull();
    expect(typed('tip-removed', '0.002', '0.020').doubt).toBeNull();
  });

  it('keeps words as words', () => {
    expect(type('crack-map', 'seat 3E to water')).toMatchObject({ keep: { kind: 'text', value: null, unit: null } });
    expect(type('shims-fitted', 'none').keep).toMatchObject({ kind: 'choice', typed: 'none' });
  });

  it.each([
    ['seat-load', '5', 'readings/computed'],
    ['shims-fitted', '0.020', 'readings/no-such-shim'],
    ['crack-result', 'perhaps', 'readings/no-such-choice'],
    ['margin', '-0.05', 'measure/below-zero'],
  ])('refuses %s %s', (quantity, text, code) => {
    expect(type(quantity, text)).toMatchObject({ read: { kind: 'refused', code }, keep: null });
  });

  it('keeps nothing for nothing', () => {
    expect(type('crack-map', ' ')).toMatchObject({ read: { kind: 'empty' }, keep: null });
    expect(type('margin', '')).toMatchObject({ read: { kind: 'empty' }, keep: null });
  });
});

describe('readEntry of a method', () => {
  it('refuses what the metal does not allow, with what to do instead (common practice, no source)', () => {
    const typed = (material: string, text: string) => {
      const facts = factsOf({ casting: { ...factsOf().casting, material } });
      const bench = openBench(facts);
      const place = placeAt(bench, { quantity: 'magnet-method', spot: null, point: null, stage: 'after' });
      return place && readEntry(bench, place, text, null).read;
    };

    expect(typed('aluminium', 'dry powder')).toMatchObject({ kind: 'refused', code: 'readings/not-on-this-metal' });
    expect(typed('iron_grey', 'smoke')).toMatchObject({ kind: 'refused', code: 'readings/no-such-choice' });
    expect(typed('iron_grey', 'dry powder')?.kind).toBe('empty');
  });
});
