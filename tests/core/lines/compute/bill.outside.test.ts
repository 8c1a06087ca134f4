/**
 * Our bill against published invoices. Source: EN 16931-1 test invoices (validation artefacts of CEN/TC 434) and the
 * examples of Peppol BIS Billing 3.0; numbers taken over in tests/reference/invoice-totals.json with file names.
 */
import { describe, expect, it } from 'vitest';
import { basisPoints, cents, factor, priceE4 } from '#core/kernel/units.ts';
import { type BillLine, NOTHING_EARLIER, priceBill } from '#core/lines/compute/bill.ts';
import { lineAmount } from '#core/lines/compute/line.ts';
import { balanceOf } from '#core/money/compute.ts';
import type { TaxClass } from '#core/rates/compute.ts';
import reference from '#tests/reference/invoice-totals.json' with { type: 'json' };
import { billTerms } from './builders.ts';

type Case = (typeof reference.cases)[number];

const whole = (text: string, places: number): number => {
  const [units = '0', decimals = ''] = text.replace('-', '').split('.');
  const digits = decimals.padEnd(places, '0');
  if (/[1-9]/.test(digits.slice(places))) throw new RangeError(`${text} has more than ${places} decimals`);
  const value = Number(units + digits.slice(0, places));
  return text.startsWith('-') ? -value : value;
};
const money = (text: string) => cents(whole(text, 2));

/** Their groups (category and rate) stand for tax classes of ours; no file has more than four. */
const CLASSES: readonly TaxClass[] = ['part', 'fee', 'freight', 'storage'];
const groupOf = (row: { category: string; rate: string | null }) => `${row.category} ${Number(row.rate ?? 0)}`;

function asBill(one: Case) {
  const groups = one.tax.map(groupOf);
  const classOf = (row: { category: string; rate: string | null }) => {
    const found = CLASSES[groups.indexOf(groupOf(row))];
    if (!found) throw new RangeError(`no class for ${groupOf(row)}`);
    return found;
  };
  const typed = (amount: number, taxClass: TaxClass): BillLine => ({
    key: '',
    kind: 'fee',
    amount: cents(amount),
    taxClass,
    net: true,
  });
  const sign = (row: { charge: boolean; amount: string }) => (row.charge ? 1 : -1) * money(row.amount);
  const lines = one.lines.map((row) => ({ net: money(row.line_net), taxClass: classOf(row), row }));
  const others = one.document_allowances_charges.map((row) => typed(sign(row), classOf(row)));
  const taxes = one.tax.map((row, index) => ({
    code: groupOf(row),
    words: groupOf(row),
    bp: basisPoints(whole(row.rate ?? '0', 2)),
    classes: CLASSES.slice(index, index + 1),
    exempt: null,
  }));
  return { lines, typed, others, taxes, sign };
}

const agreeing = reference.cases.filter((one) => one.recomputed === 'agrees');

describe('lineAmount', () => {
  it.each(agreeing)('gives every line net amount of $id (BR-CO-10)', (one) => {
    const { lines, sign } = asBill(one);
    for (const { row, net } of lines) {
      const changes = row.allowances_charges.reduce((sum, change) => sum + sign(change), 0);
      const terms = {
        quantity: whole(row.quantity, 3),
        per: 1000 * Number(row.price_base_quantity ?? 1),
        unitPrice: priceE4(whole(row.unit_price, 4)),
        factors: [{ code: 'one', factor: factor(10_000) }],
        lineMinimum: cents(0),
      };
      expect(lineAmount(terms) + changes).toBe(net);
    }
  });
});

describe('priceBill', () => {
  it.each(reference.cases)('gives tax and totals of $id (BR-CO-13, 15, 17)', (one) => {
    const { lines, typed, others, taxes } = asBill(one);
    const terms = billTerms({ supplies: basisPoints(0), feePerWash: cents(0), minimum: cents(0), taxes });
    const bill = priceBill({
      lines: [...lines.map((row) => typed(row.net, row.taxClass)), ...others],
      washed: 0,
      earlier: NOTHING_EARLIER,
      last: true,
      terms,
    });
    expect(bill.figures.beforeTax).toBe(money(one.totals.without_tax));
    expect(bill.taxes.map((tax) => [tax.base, tax.amount])).toEqual(
      one.tax.map((tax) => [money(tax.taxable), money(tax.tax)]),
    );
    expect(bill.figures.tax).toBe(money(one.tax_total));
    expect(bill.figures.total).toBe(money(one.totals.with_tax));
  });
});

describe('balanceOf', () => {
  // Cases with a cash-rounding amount are left out: we round no payment.
  it.each(reference.cases.filter((one) => Number(one.totals.rounding ?? 0) === 0))(
    'leaves what $id asks to be paid (BR-CO-16)',
    (one) => {
      const paid = one.totals.prepaid === null ? [] : [money(one.totals.prepaid)];
      expect(balanceOf(money(one.totals.with_tax), paid, [])).toBe(money(one.totals.payable));
    },
  );
});
