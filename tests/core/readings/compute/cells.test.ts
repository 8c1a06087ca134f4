import { describe, expect, it } from 'vitest';
import { id } from '#core/kernel/ids.ts';
import { measureOf } from '#core/kernel/measure-units.ts';
import { openBench } from '#core/readings/compute/bench.ts';
import { cellAt, DASH } from '#core/readings/compute/cells.ts';
import type { Facts } from '#core/readings/compute/model.ts';
import { placeAt } from '#core/readings/compute/place.ts';
import { factsOf, limitOf, readingOf, valves } from '#tests/kit/bench-facts.ts';

const spot = id<'spot'>(1);

function cell(quantity: string, words: Partial<Facts>) {
  const bench = openBench(factsOf({ spots: valves('1E'), ...words }));
  const place = placeAt(bench, { quantity, spot, point: null, stage: 'after' });
  if (!place) throw new Error('no place');
  return cellAt(bench, place);
}

describe('cellAt', () => {
  const limits = [limitOf('margin', 'in', { low: '0.047' })];

  it('shows a figure as typed and judges it', () => {
    expect(cell('margin', { limits, readings: [readingOf('margin', '0.0470', 'in', { spot })] })).toMatchObject({
      state: 'read',
      text: '0.0470',
      word: 'pass',
    });
  });

  it('shows not measured, no limit known and a dash for what they are, none of them a pass', () => {
    const dash = { ...readingOf('margin', 'not applicable', null, { spot }), kind: 'not_applicable' as const };

    expect(cell('margin', { limits })).toMatchObject({ state: 'not measured', word: 'not measured', text: '' });
    expect(cell('margin', { readings: [readingOf('margin', '0.050', 'in', { spot })] }).word).toBe('no limit known');
    expect(cell('margin', { limits, readings: [dash] })).toMatchObject({ text: DASH, verdict: null, word: '' });
  });

  it('does not judge a figure that only has a target, nor words', () => {
    const target = [limitOf('tip-height', 'in', { target: '2.000' })];

    expect(
      cell('tip-height', { limits: target, readings: [readingOf('tip-height', '2.1', 'in', { spot })] }).verdict,
    ).toBeNull();
    expect(cell('shims-fitted', { readings: [readingOf('shims-fitted', 'none', null, { spot })] }).verdict).toBeNull();
  });

  it('prints how the figure came about', () => {
    const compared = readingOf('margin', '0.050', 'in', { spot, mark: 'compared', note: 'by eye' });

    expect(cell('margin', { limits, readings: [compared] }).marks).toEqual(['compared with a card', 'by eye']);
  });

  it('sets a lead’s decision beside the figure it was made for, and beside no other', () => {
    const decision = (value: number) => ({
      quantity: 'margin',
      spot,
      point: null,
      stage: 'after' as const,
      value,
      accepted: true,
      words: 'old engine',
      by: 'BL',
    });
    const readings = [readingOf('margin', '0.040', 'in', { spot })];

    expect(cell('margin', { limits, readings, decisions: [decision(measureOf('0.040', 'in'))] })).toMatchObject({
      word: 'too thin',
      decision: { accepted: true, by: 'BL' },
    });
    expect(cell('margin', { limits, readings, decisions: [decision(5)] }).decision).toBeNull();
  });
});
