import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { basisPoints, cents } from '#core/kernel/units.ts';
import { type BillLine, NOTHING_EARLIER, priceBill, roleOf } from '#core/lines/compute/bill.ts';
import { isDerivedRow, printedFigures } from '#core/lines/compute/printed-bill.ts';
import { billTerms, line, taxOn } from './builders.ts';

describe('printedFigures', () => {
  it('adds the rows of any issued bill up to the figures it was issued with', () => {
    const kinds = fc.constantFrom<BillLine['kind']>('operation', 'package', 'part', 'fee', 'sublet', 'core', 'freight');
    const lines = fc.array(
      fc.tuple(kinds, fc.nat({ max: 200_000 })).map(([kind, amount]) => line(kind, amount)),
      { maxLength: 12 },
    );
    const terms = billTerms({
      labourDiscount: basisPoints(750),
      partsDiscount: basisPoints(500),
      rush: basisPoints(2500),
      taxes: [taxOn('part')],
    });
    fc.assert(
      fc.property(lines, fc.nat({ max: 3 }), (typed, washed) => {
        const bill = priceBill({ lines: typed, washed, earlier: NOTHING_EARLIER, last: true, terms });
        const rows = [
          ...typed.map((l) => ({ role: roleOf(l), taxClass: l.taxClass, amount: l.amount, derived: false })),
          ...bill.derived.map((d) => ({ role: d.role, taxClass: d.taxClass, amount: d.amount, derived: true })),
        ];
        expect(printedFigures(rows, bill.figures.tax)).toEqual(bill.figures);
      }),
    );
  });

  it('is nothing for no rows', () => {
    expect(printedFigures([], cents(0)).total).toBe(0);
  });
});

describe('isDerivedRow', () => {
  it('tells a typed fee from the washing fee', () => {
    expect(isDerivedRow('fee', true)).toBe(false);
    expect(isDerivedRow('fee', false)).toBe(true);
    expect(isDerivedRow('labour', false)).toBe(false);
  });
});
