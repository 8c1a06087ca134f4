import { describe, expect, it } from 'vitest';
import { measureOf, type UnitCode } from '#core/kernel/measure-units.ts';
import { readFigure, twinsAgree, twinWarnings } from '#core/readings/compute/limit-twins.ts';
import manuals from '#tests/reference/technical-manual-limits.json' with { type: 'json' };

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

  const flagged = (row: (typeof pairs)[number]) => JSON.stringify(row.flags ?? '').includes('disagree');

  it('has more than 250 rows with two units, and more than 20 of them slip', () => {
    expect(pairs.length).toBeGreaterThan(250);
    expect(pairs.filter(flagged).length).toBeGreaterThan(20);
  });

  it.each(pairs)('$manual, $id: $ends both units agree, unless flagged in the data by another program', (row) => {
    expect(agrees(row)).toBe(!flagged(row));
  });
});

describe('twinWarnings', () => {
  it('says nothing of a limit with one unit or of two that agree (TM 5-1940-322-24: 80.7 lb and 359 N)', () => {
    const typed = { low: '80.7', high: null, target: null, unit: 'lbf' as const };

    expect(twinWarnings({ ...typed, secondUnitText: null })).toEqual([]);
    expect(twinWarnings({ ...typed, secondUnitText: '359 N' })).toEqual([]);
    expect(twinWarnings({ ...typed, secondUnitText: '395 N' })).toHaveLength(1);
  });
});

describe('readFigure', () => {
  it('reads a figure in the unit of its limit, and says what is wrong with another', () => {
    expect(readFigure('1 1/16', 'in')).toBe(measureOf('1.0625', 'in'));
    expect(typeof readFigure('thick', 'in')).toBe('string');
  });
});
