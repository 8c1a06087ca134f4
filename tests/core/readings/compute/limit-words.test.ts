import { describe, expect, it } from 'vitest';
import { measureOf, type UnitCode } from '#core/kernel/measure-units.ts';
import { limitText, showLimit, twinsAgree } from '#core/readings/compute/limit-words.ts';
import { limitOf } from '#tests/kit/bench-facts.ts';
import manuals from '#tests/reference/technical-manual-limits.json' with { type: 'json' };

describe('limitText', () => {
  it.each([
    ['both ends', { low: '1.690', high: '1.710' }, '1.690 – 1.710'],
    ['a lower one', { low: '0.050' }, 'at least 0.050'],
    ['an upper one', { high: '0.0040' }, 'at most 0.0040'],
    ['below zero, with a real minus', { low: '-0.20', high: '0.10' }, '\u22120.20 – 0.10'],
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
});

describe('twinsAgree', () => {
  type Row = {
    id: string;
    manual: string;
    unit: string;
    twin_unit?: string;
    low?: string;
    high?: string;
    twin_low?: string;
    twin_high?: string;
    flags?: readonly { kind?: string }[] | readonly string[];
  };
  const UNITS: Readonly<Record<string, UnitCode>> = {
    in: 'in',
    mm: 'mm',
    lb: 'lbf',
    lbf: 'lbf',
    N: 'N',
    psi: 'psi',
    kPa: 'kPa',
    'lb-ft': 'lbf.ft',
    'N.m': 'N.m',
  };
  const pairs = (manuals.cases as unknown as Row[]).flatMap((row) => {
    const [unit, twin] = [UNITS[row.unit], UNITS[row.twin_unit ?? '']];
    if (!unit || !twin) return [];
    const ends = [
      [row.low, row.twin_low],
      [row.high, row.twin_high],
    ].filter((pair): pair is [string, string] => pair[0] !== undefined && pair[1] !== undefined);
    return ends.length === 0 ? [] : [{ ...row, unit, twin, ends }];
  });
  const agrees = (row: (typeof pairs)[number]) =>
    row.ends.every(([first, second]) =>
      twinsAgree(
        { value: measureOf(first, row.unit), typed: first, unit: row.unit },
        { value: measureOf(second, row.twin), typed: second, unit: row.twin },
      ),
    );

  it('finds in 47 army manuals exactly the rows whose two units disagree (flagged in the data by another program)', () => {
    const found = pairs.filter((row) => !agrees(row)).map((row) => row.id);
    const flagged = pairs.filter((row) => JSON.stringify(row.flags ?? '').includes('disagree')).map((row) => row.id);

    expect(pairs.length).toBeGreaterThan(250);
    expect(found).toEqual(flagged);
    expect(found.length).toBeGreaterThan(20);
  });
});
