/** Short ways to drive a ticket of the practice shop to its bill, and the figures that bill is expected to have. */
import { expect } from 'vitest';
import type { App } from '#core/app-contract.ts';
import type { InputOf } from '#core/kernel/contract.ts';
import reference from '#tests/reference/practice-bills.json' with { type: 'json' };
import type { TestHost } from './test-host.ts';

type CheckIn = InputOf<App['tickets/check-in-ticket']>;

const cent = (text: string) => Math.round(Number(text) * 100);

/** The figures of a bill of the file, under our names. */
export function expected(name: string) {
  const story = reference.bills.find((bill) => bill.name === name);
  if (!story) throw new Error(name);
  const { figures } = story;
  return {
    labour: cent(figures.labour),
    labourDiscount: -cent(figures.labourDiscount) || 0,
    supplies: cent(figures.supplies),
    fee: cent(figures.environmentFee),
    minimum: cent(figures.minimumAdded),
    parts: cent(figures.parts),
    beforeTax: cent(figures.beforeTax),
    tax: cent(figures.tax),
    total: cent(figures.total),
  };
}

const idOf = (shop: TestHost, text: string, ...values: readonly unknown[]): number => {
  const [row] = shop.db.sql<{ id: number }>(text, ...values);
  if (!row) throw new Error(`nothing for ${text} ${values.join(' ')}`);
  return row.id;
};
export const customerId = (shop: TestHost, short: string) =>
  idOf(shop, 'SELECT id FROM customer WHERE short_name = ?', short);
export const personId = (shop: TestHost, name: string) =>
  idOf(shop, 'SELECT id FROM customer_person WHERE name = ?', name);
export const stockItemId = (shop: TestHost, code: string) =>
  idOf(shop, 'SELECT id FROM stock_item WHERE code = ?', code);
export const kindId = (shop: TestHost, code: string) =>
  idOf(shop, 'SELECT id FROM operation_kind WHERE code = ?', code);

export async function checkIn(shop: TestHost, at: string, input: CheckIn) {
  shop.setClock(at);
  return shop.send('tickets/check-in-ticket', input, { as: 'TV' });
}

export const addPart = (
  shop: TestHost,
  ticketId: number,
  code: string,
  quantity: number,
  castingId: number | null = null,
) =>
  shop.send(
    'parts/add-part',
    { ticketId, castingId, part: { stockItemId: stockItemId(shop, code), quantity } },
    { as: 'MN' },
  );

export async function issue(shop: TestHost, ticketId: number) {
  const { bill, problems } = await shop.send('invoices/get-preview', { ticketId }, { as: 'TV' });
  expect(problems).toEqual([]);
  const { invoiceId } = await shop.send(
    'invoices/issue-invoice',
    { ticketId, seenTotal: bill.figures.total },
    { as: 'TV' },
  );
  return (await shop.send('invoices/get-invoice', { invoiceId }, { as: 'TV' })).bill.figures;
}
