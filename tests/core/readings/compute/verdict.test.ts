import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decimal, measureOf, toBaseExactly, type UnitCode } from '#core/kernel/measure-units.ts';
import {
  combineUncertainty,
  countVerdicts,
  isWeakGauge,
  judge,
  NOT_MEASURED,
  summaryOf,
  verdictWord,
  worry,
} from '#core/readings/compute/verdict.ts';
import reference from '#tests/reference/decision-rule.json' with { type: 'json' };
import manuals from '#tests/reference/technical-manual-limits.json' with { type: 'json' };

const inch = (text: string | null) => (text === null ? null : measureOf(text, 'in'));

describe('judge', () => {
  it.each(reference.verdict_cases)(
    'rule of ISO 14253-1 as summarised publicly: $reading in $low to $high, U $U, guard $guard: $expected',
    ({ reading, low, high, U, guard, expected }) => {
      const verdict = judge({ value: inch(reading), low: inch(low), high: inch(high), uncertainty: inch(U), guard });

      expect(verdict.name).toBe(expected);
    },
  );

  it.each([
    ['TM 9-2815-255-24', 'guide clearance', '0.0055', null, '0.006', 'pass'],
    ['TM 9-2815-255-24', 'guide clearance', '0.0065', null, '0.006', 'fail'],
    ['TM 5-1940-322-24, Table 2', 'margin', '0.030', '0.031', null, 'fail'],
    ['TM 9-2320-302-34', 'seat runout', '0.0025', null, '0.002', 'fail'],
    ['TM 9-6115-604-34', 'seat width', '0.075', '0.060', '0.100', 'pass'],
    ['TM 10-4320-310-14', 'valve recession', '0.037', '0.018', '0.036', 'fail'],
    ['TM 5-4320-300-14', 'block top across', '0.0025', null, '0.003', 'pass'],
    ['TM 5-4320-300-14', 'block top along', '0.0055', null, '0.006', 'pass'],
    ['TM 5-3825-226-24', 'head within 6 in', '0.0035', null, '0.003', 'fail'],
    ['TM 5-6115-593-34', 'head, whole face', '0.0056', null, '0.004', 'fail'],
    ['common practice, no source', 'coil bind clearance', '0.131', '0.060', null, 'pass'],
    ['common practice, no source', 'coil bind clearance', '0.055', '0.060', null, 'fail'],
  ])('%s: %s %s in %s to %s: %s', (_, __, reading, low, high, expected) => {
    const verdict = judge({
      value: inch(reading),
      low: inch(low),
      high: inch(high),
      uncertainty: null,
      guard: false,
    });

    expect(verdict.name).toBe(expected);
  });

  it('says which way it fails, and which limit it lies at', () => {
    const at = (value: string, guard = false) =>
      judge({ value: inch(value), low: inch('1.690'), high: inch('1.710'), uncertainty: inch('0.002'), guard });

    expect(at('1.711')).toMatchObject({ name: 'fail', direction: 'over' });
    expect(at('1.689')).toMatchObject({ name: 'fail', direction: 'under' });
    expect(at('1.709', true)).toMatchObject({ name: 'too close to call', direction: 'over' });
    expect(at('1.691', true)).toMatchObject({ name: 'too close to call', direction: 'under' });
  });

  it('says when the gauge cannot prove the tolerance: limits closer than twice its uncertainty (exact arithmetic)', () => {
    const at = (uncertainty: string) =>
      judge({
        value: inch('0.0025'),
        low: inch('0.0020'),
        high: inch('0.0030'),
        uncertainty: inch(uncertainty),
        guard: true,
      });

    expect(at('0.0005')).toMatchObject({ name: 'pass', cannotProve: false });
    expect(at('0.0006')).toMatchObject({ name: 'too close to call', cannotProve: true });
  });

  it('keeps no guard when no tool is named', () => {
    const verdict = judge({ value: inch('0.0040'), low: null, high: inch('0.0040'), uncertainty: null, guard: true });

    expect(verdict.name).toBe('pass');
  });

  describe('for the limit tables of 47 army manuals', () => {
    type Row = (typeof manuals.cases)[number] & { low?: string; high?: string; flags?: unknown };
    const UNITS: Readonly<Record<string, UnitCode>> = { in: 'in', mm: 'mm', lb: 'lbf', lbf: 'lbf', psi: 'psi', N: 'N' };
    const rows = (manuals.cases as Row[]).flatMap((row) => {
      const unit = UNITS[row.unit];
      return unit && !row.flags && (row.low ?? row.high) !== undefined ? [{ ...row, unit }] : [];
    });
    const step = (text: string, unit: UnitCode) => {
      const places = text.split('.')[1]?.length ?? 0;
      const { over, under } = toBaseExactly({ over: 1n, under: 10n ** BigInt(places) }, unit);
      return Number(over / under) + 1;
    };
    const asFigure = (text: string, unit: UnitCode) => {
      const { over, under } = toBaseExactly(decimal(text), unit);
      return Number(over / under);
    };

    it('has more than 300 rows to judge', () => {
      expect(rows.length).toBeGreaterThan(300);
    });

    it.each(rows)('$manual, $place ($id $part, $quantity): at the limit passes, one step beyond fails', (row) => {
      const asLimit = (text: string | undefined) => (text === undefined ? null : asFigure(text, row.unit));
      const limits = { low: asLimit(row.low), high: asLimit(row.high), uncertainty: null, guard: false };
      const at = (value: number | null) => judge({ value, ...limits }).name;
      const ends = [
        { at: limits.low, beyond: -step(row.low ?? '0', row.unit), far: -1_000_000_000 },
        { at: limits.high, beyond: step(row.high ?? '0', row.unit), far: 1_000_000_000_000 },
      ];

      for (const end of ends) {
        expect(at(end.at ?? end.far)).toBe('pass');
        expect(end.at === null ? 'fail' : at(end.at + end.beyond)).toBe('fail');
      }
      expect(at(null)).toBe('not measured');
    });
  });

  describe('for any figure', () => {
    const number = fc.integer({ min: -1_000_000, max: 1_000_000 });
    const limit = fc.option(number);

    it('a missing reading is never a pass', () => {
      fc.assert(
        fc.property(limit, limit, fc.option(fc.nat(1000)), fc.boolean(), (low, high, uncertainty, guard) => {
          expect(judge({ value: null, low, high, uncertainty, guard })).toEqual(NOT_MEASURED);
        }),
      );
    });

    it('without limits nothing passes', () => {
      fc.assert(
        fc.property(number, fc.boolean(), (value, guard) => {
          expect(judge({ value, low: null, high: null, uncertainty: 5, guard }).name).toBe('no limit known');
        }),
      );
    });

    it('the guard takes passes away and fails away, and never turns one into the other', () => {
      fc.assert(
        fc.property(number, limit, limit, fc.nat(5000), (value, low, high, uncertainty) => {
          const without = judge({ value, low, high, uncertainty, guard: false }).name;
          const guarded = judge({ value, low, high, uncertainty, guard: true }).name;

          expect([without, 'too close to call']).toContain(guarded);
        }),
      );
    });
  });
});

describe('isWeakGauge', () => {
  it.each(reference.simple_acceptance_cases)(
    'ASME B89.7.3.1, 4:1 simple acceptance (from memory; ratio exact): $low to $high with U $U is $ratio to 1',
    ({ low, high, U, four_to_one_met }) => {
      const limits = { low: inch(low), high: inch(high), uncertainty: inch(U) };

      expect(isWeakGauge(limits)).toBe(!four_to_one_met);
    },
  );

  it('says nothing where a limit or the doubt is not known', () => {
    expect(isWeakGauge({ low: null, high: 4, uncertainty: 4 })).toBe(false);
    expect(isWeakGauge({ low: 0, high: 4, uncertainty: null })).toBe(false);
  });
});

describe('combineUncertainty', () => {
  it('0.0002 and 0.0001 in make 0.000224 in (exact arithmetic)', () => {
    const combined = combineUncertainty([inch('0.0002'), inch('0.0001')]) ?? 0;

    expect(Math.abs(combined - 5680)).toBeLessThanOrEqual(26);
  });

  it('JCGM 100:2008 H.1.3.2: 5.8, 3.9 and 6.7 nm make 9.7 nm', () => {
    const [found] = reference.cases.filter((it) => it.id === 'gum-h1-comparator');
    const parts = (found?.inputs.components ?? []).map((part) => Math.round(part * 1000));

    expect((combineUncertainty(parts) ?? 0) / 1000).toBeCloseTo(found?.expected ?? 0, 1);
  });

  it('is not known when one part is not, and 0 for none', () => {
    expect(combineUncertainty([100, null])).toBeNull();
    expect(combineUncertainty([])).toBe(0);
  });

  it('is never below the true root, and never a whole unit above it (property)', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(10_000_000), { minLength: 1, maxLength: 6 }), (parts) => {
        const sum = parts.reduce((all, part) => all + BigInt(part) ** 2n, 0n);
        const root = BigInt(combineUncertainty(parts) ?? -1);

        expect(root * root >= sum).toBe(true);
        expect(root === 0n || (root - 1n) * (root - 1n) < sum).toBe(true);
      }),
    );
  });
});

describe('verdictWord', () => {
  const height = { over: 'too tall', under: 'too short' };

  it.each([
    [{ name: 'fail', direction: 'over' }, 'too tall'],
    [{ name: 'fail', direction: 'under' }, 'too short'],
    [{ name: 'too close to call', direction: 'under' }, 'too close'],
    [{ name: 'pass', direction: null }, 'pass'],
    [{ name: 'not measured', direction: null }, 'not measured'],
  ] as const)('says %o as %s', (verdict, expected) => {
    expect(verdictWord({ ...verdict, cannotProve: false }, height)).toBe(expected);
  });
});

describe('summaryOf', () => {
  it('counts in words, worst known first in the order of worry', () => {
    const counts = countVerdicts(['pass', 'pass', 'fail', 'not measured', 'too close to call']);

    expect(summaryOf(counts)).toBe('2 pass, 1 fail, 1 too close, 1 not measured');
    expect(summaryOf(countVerdicts([]))).toBe('nothing to judge');
    expect(worry('fail')).toBeLessThan(worry('not measured'));
    expect(worry('not measured')).toBeLessThan(worry('pass'));
  });
});
