import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { basisPoints, type Cents, cents } from '#core/kernel/units.ts';
import {
  type BillInput,
  type BillLine,
  type Earlier,
  NOTHING_EARLIER,
  priceBill,
  roleOf,
} from '#core/lines/compute/bill.ts';
import { TAX_CLASSES } from '#core/rates/compute.ts';
import { billTerms, line, taxOn } from './builders.ts';

const labour = [5175, 8625, 5600, 10400, 14400, 8050, 4800, 8400, 2000].map((amount) => line('operation', amount));
const parts = [2960, 450].map((amount) => line('part', amount));
const example: BillInput = {
  lines: [...labour, ...parts],
  washed: 1,
  earlier: NOTHING_EARLIER,
  last: true,
  terms: billTerms({ taxes: [taxOn('part')] }),
};

describe('priceBill', () => {
  // Worked example of a shop's price sheet; invented prices, sums checked by hand.
  it('prices the worked example with tax on parts', () => {
    const { figures } = priceBill(example);
    expect(figures).toMatchObject({ labour: 67450, supplies: 2698, fee: 650, parts: 3410, beforeTax: 74208 });
    expect(figures).toMatchObject({ tax: 239, total: 74447, minimum: 0 });
  });

  it('prices the worked example with tax on everything', () => {
    const { figures } = priceBill({ ...example, terms: billTerms({ taxes: [taxOn(...TAX_CLASSES)] }) });
    expect(figures).toMatchObject({ beforeTax: 74208, tax: 5195, total: 79403 });
  });

  it('takes rush and discount from labour, supplies from neither', () => {
    const terms = billTerms({
      labourDiscount: basisPoints(1250),
      rush: basisPoints(2500),
      taxes: [taxOn(...TAX_CLASSES)],
    });
    const { figures } = priceBill({ ...example, terms });
    expect(figures).toMatchObject({ labourDiscount: -8431, rush: 16863, supplies: 2698 });
    expect(figures).toMatchObject({ beforeTax: 82640, tax: 5785, total: 88425 });
  });

  it('caps supplies per ticket over two invoices: 32.00, then 8.00', () => {
    const first: BillInput = { ...example, lines: [line('operation', 80000)], washed: 0, last: false };
    const one = priceBill(first);
    expect(one.figures.supplies).toBe(3200);
    const earlier: Earlier = { lines: first.lines, derived: one.derived };
    const two = priceBill({ ...first, lines: [line('operation', 40000)], earlier, last: true });
    expect(two.figures.supplies).toBe(800);
    expect(two.derived.find((d) => d.role === 'supplies')?.working).toBe(
      '4 % of labour 1200.00 = 48.00, at most 40.00 a ticket, less 32.00 on earlier invoices',
    );
  });

  it('asks the smallest labour charge after discount, and only when nothing stays unbilled', () => {
    const small: BillInput = {
      ...example,
      lines: [line('operation', 1500)],
      washed: 0,
      terms: billTerms({ labourDiscount: basisPoints(500) }),
    };
    expect(priceBill(small).figures).toMatchObject({ labour: 1500, labourDiscount: -75, minimum: 2075 });
    expect(priceBill({ ...small, last: false }).figures.minimum).toBe(0);
  });

  it('asks no smallest charge where there is no labour', () => {
    expect(priceBill({ ...example, lines: parts, washed: 0 }).figures.minimum).toBe(0);
  });

  it('leaves an agreed lot price outside the discount and inside supplies', () => {
    const lot = { ...line('package', 1_330_000), net: true };
    const terms = billTerms({ labourDiscount: basisPoints(1500) });
    const { figures } = priceBill({ ...example, lines: [lot, line('operation', 26000)], washed: 0, terms });
    expect(figures).toMatchObject({ labour: 1_356_000, labourDiscount: -3900, supplies: 4000 });
  });

  it('gives each tax class its share of a discount, every cent', () => {
    const lines = [line('operation', 33333), { ...line('hourly', 16667), taxClass: 'labour_fabrication' } as const];
    const terms = billTerms({ labourDiscount: basisPoints(1000), taxes: [taxOn('labour_fabrication')] });
    const bill = priceBill({ ...example, lines, washed: 0, terms });
    const discounts = bill.derived.filter((d) => d.role === 'discount');
    expect(discounts.map((d) => [d.taxClass, d.amount])).toEqual([
      ['labour_repair', -3333],
      ['labour_fabrication', -1667],
    ]);
    expect(bill.taxes[0]?.base).toBe(15000);
  });

  it('prints the certificate of an exempt customer and asks no tax', () => {
    const bill = priceBill({ ...example, terms: billTerms({ taxes: [{ ...taxOn('part'), exempt: 'GX-00417' }] }) });
    expect(bill.taxes[0]).toMatchObject({
      base: 0,
      amount: 0,
      exempt: 'GX-00417',
      working: 'exempt, certificate GX-00417',
    });
  });

  it('rounds a tax on each line only where the shop says so', () => {
    const lines = [1, 2, 3].map(() => line('part', 7));
    const terms = billTerms({ taxes: [taxOn('part')] });
    expect(priceBill({ ...example, lines, washed: 0, terms }).figures.tax).toBe(1);
    expect(priceBill({ ...example, lines, washed: 0, terms: { ...terms, taxRounding: 'per_line' } }).figures.tax).toBe(
      0,
    );
  });

  // Source: Idaho State Tax Commission, guide "Repair Shops": labour not listed apart from parts is taxed with them.
  it('taxes a combined line whole where parts are taxed', () => {
    const combined = { ...line('operation', 10000), taxClass: 'combined' } as const;
    expect(priceBill({ ...example, lines: [combined], washed: 0 }).figures.tax).toBe(700);
  });

  it('is 0 for nothing', () => {
    expect(priceBill({ ...example, lines: [], washed: 0 }).figures.total).toBe(0);
  });
});

describe('roleOf', () => {
  it('reads outside work charged as an operation as outside work', () => {
    expect(roleOf({ kind: 'operation', taxClass: 'sublet' })).toBe('sublet');
    expect(roleOf({ kind: 'fee', taxClass: 'labour_repair' })).toBe('fee');
    expect(roleOf({ kind: 'package', taxClass: 'labour_repair' })).toBe('labour');
    expect(roleOf({ kind: 'core', taxClass: 'core' })).toBe('core');
  });
});

describe('for any ticket', () => {
  const kinds = fc.constantFrom('operation', 'package', 'part', 'hourly', 'fee', 'freight', 'core') as fc.Arbitrary<
    BillLine['kind']
  >;
  const anyLine = fc.record({
    key: fc.constant('x'),
    kind: kinds,
    amount: fc.integer({ min: 0, max: 500_000 }).map(cents),
    taxClass: fc.constantFrom('labour_repair', 'labour_fabrication', 'part', 'fee', 'combined') as fc.Arbitrary<
      BillLine['taxClass']
    >,
    net: fc.boolean(),
  });
  const anyTerms = fc
    .record({
      labourDiscount: fc.integer({ min: 0, max: 4000 }).map(basisPoints),
      partsDiscount: fc.integer({ min: 0, max: 4000 }).map(basisPoints),
      rush: fc.integer({ min: 0, max: 5000 }).map(basisPoints),
      supplies: fc.integer({ min: 0, max: 900 }).map(basisPoints),
      suppliesCap: fc.option(fc.integer({ min: 0, max: 9000 }).map(cents)),
      feePerWash: fc.integer({ min: 0, max: 2000 }).map(cents),
      minimum: fc.integer({ min: 0, max: 9000 }).map(cents),
    })
    .map((terms) =>
      billTerms({ ...terms, taxes: [taxOn('part', 'labour_fabrication'), { ...taxOn('fee'), code: 'b' }] }),
    );

  const sum = (rows: readonly Readonly<{ amount: Cents }>[]) => rows.reduce((total, row) => total + row.amount, 0);

  it('the total is the sum of the lines and the taxes (I3)', () => {
    fc.assert(
      fc.property(fc.array(anyLine, { maxLength: 15 }), anyTerms, fc.nat({ max: 5 }), (lines, terms, washed) => {
        const bill = priceBill({ lines, washed, earlier: NOTHING_EARLIER, last: true, terms });
        expect(bill.figures.total).toBe(sum(lines) + sum(bill.derived) + sum(bill.taxes));
        expect(bill.figures.beforeTax + bill.figures.tax).toBe(bill.figures.total);
      }),
    );
  });

  it('part invoices before tax add up to the one invoice', () => {
    const cut = fc.array(fc.array(anyLine, { maxLength: 6 }), { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(cut, anyTerms, (portions, terms) => {
        const all = portions.flat();
        const one = priceBill({ lines: all, washed: portions.length, earlier: NOTHING_EARLIER, last: true, terms });
        let earlier: Earlier = NOTHING_EARLIER;
        let billed = 0;
        for (const [index, lines] of portions.entries()) {
          const last = index === portions.length - 1;
          const bill = priceBill({ lines, washed: index + 1, earlier, last, terms });
          billed += bill.figures.beforeTax;
          earlier = { lines: [...earlier.lines, ...lines], derived: [...earlier.derived, ...bill.derived] };
        }
        expect(billed).toBe(one.figures.beforeTax);
      }),
    );
  });
});
