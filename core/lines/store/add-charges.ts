/** Puts parts and typed charges on a ticket, beside add-lines.ts. */
import type { WriteDb } from '../../db/query.ts';
import { badField } from '../../kernel/errors.ts';
import type { CastingId, Id, PartLineId, WorkLineId } from '../../kernel/ids.ts';
import type { Cents, PriceE4 } from '../../kernel/units.ts';
import type { TaxClass } from '../../rates/compute.ts';
import { costPlus, lineAmount, lineWorking, PER_HOUR, PER_PIECE, type PriceTerms } from '../compute/line.ts';
import { type Added, castingOf, type Job } from './add-lines.ts';
import { insertPart, type StockItem } from './parts.ts';
import { insertWorkLine } from './work-lines.ts';

export type PartWishInput = Readonly<{
  stockItemId: Id<'stock_item'> | null;
  words: string | null;
  makerNumber?: string | null;
  quantity: number;
  source: 'shop' | 'stock' | 'customer';
  sell: 'list' | 'markup' | 'typed';
  price: PriceE4 | null;
  priceWhy?: string | null;
  cost?: PriceE4 | null;
  markup?: number | null;
  blocks?: Id<'operation_kind'> | null;
  newUsed?: 'new' | 'used' | 'rebuilt';
}>;

export type AddedPart = Readonly<{
  partId: PartLineId;
  lineId: WorkLineId | null;
  amount: Cents;
  working: string;
  words: string;
}>;

/**
 * Add a part; what the customer brings is not charged.
 *
 * @throws AppError `parts/no-price` when it has neither list price, cost nor typed price; `parts/no-words`
 */
export function addPart(
  db: WriteDb,
  job: Job,
  castingId: CastingId | null,
  wish: PartWishInput,
  stock: StockItem | undefined,
  field: string,
): AddedPart {
  if (castingId !== null) castingOf(job, castingId);
  const words = wish.words ?? stock?.words;
  if (!words) throw badField('parts/no-words', `${field}.words`, 'Say what part it is.');
  const castings = castingId === null ? [] : [castingId];
  if (wish.source === 'customer') {
    const partId = insertPart(db, { ticketId: job.ticket.id, castingId, lineId: null, words, wish });
    return { partId, lineId: null, amount: 0 as Cents, working: '', words };
  }
  const unitPrice = partPrice(wish, stock, field);
  const terms: PriceTerms = {
    quantity: wish.quantity,
    per: PER_PIECE,
    unitPrice,
    factors: [],
    lineMinimum: 0 as Cents,
  };
  const amount = lineAmount(terms);
  const lineId = insertWorkLine(db, {
    ...terms,
    ticketId: job.ticket.id,
    kind: 'part',
    castings,
    words,
    priceFrom: wish.sell === 'list' ? 'stock' : 'typed',
    priceWhy: wish.sell === 'list' ? null : (wish.priceWhy ?? priceWords(wish)),
    amount,
    taxClass: 'part',
    priceDay: job.ticket.priceDay,
    optionId: job.optionId,
  });
  const partId = insertPart(db, { ticketId: job.ticket.id, castingId, lineId, words, wish });
  return { partId, lineId, amount, working: lineWorking(terms, 'each'), words };
}

const priceWords = (wish: PartWishInput): string => (wish.sell === 'markup' ? 'cost and markup' : 'typed price');

/** Selling price of one. @throws AppError `parts/no-price` */
export function partPrice(wish: PartWishInput, stock: StockItem | undefined, field: string): PriceE4 {
  const list = stock?.listPrice ?? null;
  if (wish.sell === 'list' && list !== null) return list;
  if (wish.sell === 'typed' && wish.price !== null) return wish.price;
  if (wish.sell === 'markup' && wish.cost !== null && wish.cost !== undefined) {
    return costPlus(wish.cost, (wish.markup ?? 0) as Parameters<typeof costPlus>[1]);
  }
  const message = 'This part has no price yet. Type its price, or its cost and markup.';
  throw badField('parts/no-price', `${field}.price`, message);
}

export type ChargeWishInput = Readonly<{
  kind: 'fee' | 'freight' | 'text' | 'hourly' | 'sublet' | 'core' | 'storage';
  words: string;
  quantity: number;
  price: PriceE4;
  priceWhy?: string | null;
  taxClass: TaxClass | null;
}>;

/** The tax class of a typed charge when nobody chose one. */
export const CHARGE_CLASSES: Readonly<Record<ChargeWishInput['kind'], TaxClass>> = {
  fee: 'fee',
  freight: 'freight',
  text: 'fee',
  hourly: 'labour_repair',
  sublet: 'sublet',
  core: 'core',
  storage: 'storage',
};

/** The terms of a typed charge; hours are in seconds. */
export const chargeTerms = (wish: ChargeWishInput): PriceTerms => ({
  quantity: wish.quantity,
  per: wish.kind === 'hourly' ? PER_HOUR : PER_PIECE,
  unitPrice: wish.price,
  factors: [],
  lineMinimum: 0 as Cents,
});

export const chargeUnit = (wish: ChargeWishInput): string => (wish.kind === 'hourly' ? 'hour' : 'each');

/** Add a charge typed by a person. */
export function addCharge(db: WriteDb, job: Job, castingId: CastingId | null, wish: ChargeWishInput): Added {
  if (castingId !== null) castingOf(job, castingId);
  const terms = chargeTerms(wish);
  const amount = lineAmount(terms);
  const lineId = insertWorkLine(db, {
    ...terms,
    ticketId: job.ticket.id,
    kind: wish.kind,
    castings: castingId === null ? [] : [castingId],
    words: wish.words,
    priceFrom: 'typed',
    priceWhy: wish.priceWhy ?? 'typed charge',
    amount,
    taxClass: wish.taxClass ?? CHARGE_CLASSES[wish.kind],
    priceDay: job.ticket.priceDay,
    optionId: job.optionId,
  });
  return { lineId, operationIds: [], amount, working: lineWorking(terms, chargeUnit(wish)), words: wish.words };
}
