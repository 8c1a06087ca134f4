import { describe, expect, it } from 'vitest';
import { limitText, showLimit } from '#core/readings/compute/limit-words.ts';
import { limitOf } from '#tests/kit/bench-facts.ts';

describe('limitText', () => {
  it.each([
    ['both ends', { low: '1.690', high: '1.710' }, '1.690 – 1.710'],
    ['a lower one', { low: '0.050' }, 'at least 0.050'],
    ['an upper one', { high: '0.0040' }, 'at most 0.0040'],
    ['below zero, with a real minus', { low: '-0.20', high: '0.10' }, '\u22120.20 – 0.10'],
    ['as far one way as the other', { low: '-0.010', high: '0.010' }, '± 0.010'],
    ['none allowed', { low: '0', high: '0' }, '0 – 0'],
    ['a target only', { target: '1.700' }, ''],
  ])('%s', (_, words, expected) => {
    expect(limitText(limitOf('x', 'in', words))).toBe(expected);
  });

  it('keeps the trailing zeros of the source, and shows computed ones with the decimals of their unit', () => {
    const limit = { ...limitOf('x', 'mm', { low: '35.25' }), typedLow: null };

    expect(limitText(limit)).toBe('at least 35.25');
  });
});

describe('showLimit', () => {
  it('says what was set aside, what a lead chose, and what nobody checked', () => {
    const limit = limitOf('installed-height', 'in', { low: '1.690', high: '1.710', checked: false });
    const customers = limitOf('installed-height', 'in', { target: '1.720', forWhat: 'customer_instruction' });

    const shown = showLimit({ limit, setAside: customers, chosen: null }, 'any');
    const chosen = showLimit(
      { limit: { ...customers, checked: true }, setAside: null, chosen: { reason: 'his cam', by: 'BL' } },
      'E',
    );

    expect(shown.notes).toEqual(['customer’s figure 1.720 set aside: casting type data used', 'not checked']);
    expect(chosen.notes).toEqual(['the customer’s instruction chosen by BL: his cam']);
    expect(shown.source).toBe('casting type sheet');
  });

  it('says that the two units of its source disagree, and which one counts (TM 9-2815-255-24: 0.006 in beside 0.015 mm)', () => {
    const limit = limitOf('guide-clearance', 'in', { high: '0.006', secondUnitText: '0.015' });

    const { notes } = showLimit({ limit, setAside: null, chosen: null }, 'any');

    expect(notes).toEqual(['0.006 in and 0.015 mm do not agree. 0.006 in is kept: look again.']);
  });
});
