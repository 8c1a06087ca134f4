/**
 * The bills of the practice shop's twelve tickets. A regression baseline of invented data, worked out once; it proves that
 * nothing moved, not that the rule is right (bill.outside.test.ts and the worked example do that).
 */
import { describe, expect, it } from 'vitest';
import { basisPoints, cents, factor, priceE4 } from '#core/kernel/units.ts';
import { type Bill, type BillLine, type Earlier, NOTHING_EARLIER, priceBill } from '#core/lines/compute/bill.ts';
import { lineAmount } from '#core/lines/compute/line.ts';
import reference from '#tests/reference/practice-bills.json' with { type: 'json' };
import { billTerms, line, taxOn } from './builders.ts';

type Story = (typeof reference.bills)[number];

const scaled = (text: string, by: number) => Math.round(Number(text) * by);
const money = (text: string) => cents(scaled(text, 100));

function linesOf(story: Story): BillLine[] {
  const priced = story.lines.map((row): BillLine => {
    const per = row.unit === 'hour' ? 3600 : 1;
    const amount = lineAmount({
      quantity: scaled(row.units, per),
      per,
      unitPrice: priceE4(scaled(row.price, 10_000)),
      factors: [{ code: 'all', factor: factor(scaled(row.factor, 10_000)) }],
      lineMinimum: cents(0),
    });
    expect(amount, row.code).toBe(money(row.amount));
    return { ...line(row.kind as BillLine['kind'], amount), net: row.net };
  });
  const sublet = 'sublet' in story ? [line('sublet', money(story.sublet as string))] : [];
  const core = 'core' in story ? [line('core', money(story.core as string))] : [];
  return [...priced, ...sublet, ...core];
}

function price(story: Story): Bill {
  const before = reference.bills.find((other) => 'after' in story && other.name === story.after);
  const earlier: Earlier = before ? { lines: linesOf(before), derived: price(before).derived } : NOTHING_EARLIER;
  const terms = billTerms({
    labourDiscount: basisPoints(scaled(story.labourDiscount, 100)),
    partsDiscount: basisPoints(scaled(story.partsDiscount, 100)),
    rush: basisPoints('rush' in story ? scaled(story.rush as string, 100) : 0),
    taxes: [taxOn('part', 'labour_fabrication', 'combined')],
  });
  const last = !('last' in story && story.last === false);
  return priceBill({ lines: linesOf(story), washed: story.washed, earlier, last, terms });
}

describe('priceBill', () => {
  it.each(reference.bills)('gives every figure of $name', (story) => {
    const bill = price(story);
    const want = story.figures;
    expect(bill.figures).toEqual({
      labour: money(want.labour),
      labourDiscount: -money(want.labourDiscount) || 0,
      rush: money(want.rush),
      supplies: money(want.supplies),
      fee: money(want.environmentFee),
      minimum: money(want.minimumAdded),
      parts: money(want.parts),
      partsDiscount: -money(want.partsDiscount) || 0,
      sublet: money(want.sublet),
      core: money(want.coreCharge),
      other: 0,
      beforeTax: money(want.beforeTax),
      tax: money(want.tax),
      total: money(want.total),
    });
    expect(bill.taxes[0]?.base).toBe(money(want.taxBase));
  });
});
