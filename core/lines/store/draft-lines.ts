/** Wishes as priced lines that are nowhere yet: the live price of check-in and of added work before it is asked. */
import type { z } from 'zod';
import type { ReadDb } from '../../db/query.ts';
import { cents } from '../../kernel/units.ts';
import type { BillLine } from '../compute/bill.ts';
import {
  type BookCasting,
  type Draft,
  type Drafted,
  draftOperation,
  draftPackage,
  type PriceBook,
} from '../compute/book.ts';
import { lineAmount, type PriceTerms } from '../compute/line.ts';
import { draftView, lineWords } from '../compute/line-views.ts';
import type { PricingDay } from '../compute/offer.ts';
import type { ChargeWish, OperationWish, PackageWish, PartWish, QuoteLine, RefusalView } from '../contract.ts';
import { CHARGE_CLASSES, chargeTerms, chargeUnit, partPrice } from './add-charges.ts';
import { stockItem } from './parts.ts';

export type DraftLine = z.output<typeof QuoteLine> &
  Readonly<{
    /** It brings a wash: the washing fee counts its casting. */
    washes: boolean;
  }>;
type Refused = z.output<typeof RefusalView>;

export type WorkWish = Readonly<{
  operations: readonly z.output<typeof OperationWish>[];
  packages: readonly z.output<typeof PackageWish>[];
}>;

/** A line, or why not. */
export type DraftOne = Readonly<{ line: DraftLine } | { refused: Refused }>;

/** Packages, then operations, of one casting. @param key names the casting for the caller */
export function draftWork(
  book: PriceBook,
  wish: WorkWish,
  key: string,
  facts: BookCasting,
  pricing: PricingDay,
): DraftOne[] {
  const packages = wish.packages.map(({ packageId }): DraftOne => {
    const pack = book.packages.get(packageId);
    const ids = { operationKindId: null, packageId };
    if (!pack) return { refused: refusal(key, ids, 'This package is not in the catalogue.', true) };
    return asOne(key, ids, 'package', draftPackage(book, pack, facts, pricing, { castings: 1, price: null }));
  });
  const operations = wish.operations.map(({ operationKindId, quantity }): DraftOne => {
    const kind = book.kinds.get(operationKindId);
    const ids = { operationKindId, packageId: null };
    if (!kind) return { refused: refusal(key, ids, 'This operation is not in the catalogue.', true) };
    return asOne(key, ids, 'operation', draftOperation(book, kind, facts, pricing, quantity));
  });
  return [...packages, ...operations];
}

type Ids = Pick<Refused, 'operationKindId' | 'packageId'>;

const refusal = (castingKey: string, ids: Ids, words: string, priceOnly: boolean): Refused => ({
  castingKey,
  ...ids,
  words,
  priceOnly,
  fits: [],
});

function asOne(castingKey: string, ids: Ids, kind: 'operation' | 'package', drafted: Drafted): DraftOne {
  if ('refusal' in drafted) {
    const { words, priceOnly, fits } = drafted.refusal;
    const offers = fits.map((fit) => ({ operationKindId: fit.id, words: fit.words }));
    return { refused: { ...refusal(castingKey, ids, words, priceOnly), fits: offers } };
  }
  return { line: draftLine(castingKey, ids, kind, drafted.draft) };
}

const draftLine = (castingKey: string, ids: Ids, kind: 'operation' | 'package', draft: Draft): DraftLine => ({
  castingKey,
  ...ids,
  kind,
  ...draftView(draft),
  quantity: draft.offer.quantity,
  per: draft.offer.per,
  unitPrice: draft.offer.unitPrice,
  factors: [...draft.offer.factors],
  taxClass: draft.offer.taxClass,
  inside: kind === 'package' ? draft.operations.map((step) => step.kind.words) : [],
  asksQuantity: draft.asksQuantity,
  washes: draft.operations.some((step) => step.kind.groups.includes('clean')),
});

/** A part the customer brings is no line. */
export function draftPart(
  db: ReadDb,
  wish: z.output<typeof PartWish>,
  castingKey: string | null,
  field: string,
): DraftLine[] {
  if (wish.source === 'customer') return [];
  const stock = stockItem(db, wish.stockItemId);
  const terms: PriceTerms = {
    quantity: wish.quantity,
    per: 1,
    unitPrice: partPrice(wish, stock, field),
    factors: [],
    lineMinimum: cents(0),
  };
  return [
    plainLine({ kind: 'part', words: wish.words ?? stock?.words ?? '', taxClass: 'part', castingKey }, terms, 'each'),
  ];
}

/** A charge typed by a person. */
export const draftCharge = (wish: z.output<typeof ChargeWish>): DraftLine =>
  plainLine(
    { kind: wish.kind, words: wish.words, taxClass: wish.taxClass ?? CHARGE_CLASSES[wish.kind], castingKey: null },
    chargeTerms(wish),
    chargeUnit(wish),
  );

const plainLine = (
  named: Pick<DraftLine, 'kind' | 'words' | 'taxClass' | 'castingKey'>,
  terms: PriceTerms,
  unit: string,
): DraftLine => ({
  ...named,
  operationKindId: null,
  packageId: null,
  shopWords: named.words,
  quantity: terms.quantity,
  per: terms.per,
  unit,
  unitPrice: terms.unitPrice,
  factors: [],
  ...lineWords(terms, unit),
  amount: lineAmount(terms),
  inside: [],
  asksQuantity: false,
  washes: false,
});

/** Drafted lines as a bill sees them. */
export const draftBillLines = (lines: readonly DraftLine[]): BillLine[] =>
  lines.map((line, index) => ({
    key: `draft ${index}`,
    kind: line.kind,
    amount: line.amount,
    taxClass: line.taxClass,
    net: false,
  }));
