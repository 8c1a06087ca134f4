/** A price without a ticket: what check-in shows while it is filled in. Reads only. */
import type { z } from 'zod';
import type { Handlers, QueryCtx } from '../../host/implement.ts';
import type { Day } from '../../kernel/days.ts';
import { badField } from '../../kernel/errors.ts';
import { basisPoints, cents } from '../../kernel/units.ts';
import { type BillLine, NOTHING_EARLIER, priceBill } from '../../lines/compute/bill.ts';
import { type Draft, type Drafted, draftOperation, draftPackage, type PriceBook } from '../../lines/compute/book.ts';
import { lineAmount, type PriceTerms } from '../../lines/compute/line.ts';
import { draftView, lineWords } from '../../lines/compute/line-views.ts';
import type { PricingDay } from '../../lines/compute/offer.ts';
import type { ChargeWish, PartWish } from '../../lines/contract.ts';
import { CHARGE_CLASSES, chargeTerms, chargeUnit, partPrice } from '../../lines/store/add-charges.ts';
import { billView } from '../../lines/store/line-views.ts';
import { stockItem } from '../../lines/store/parts.ts';
import { readPriceBook } from '../../lines/store/price-book.ts';
import { type CastingForPrice, describedCasting, describeType } from '../../lines/store/priced-castings.ts';
import { readBillTerms } from '../../lines/store/ticket-money.ts';
import { STANDARD_LIST } from '../../rates/compute.ts';
import type { pricingContract, QuoteCasting, QuoteLine, RefusalView } from '../contract.ts';

type Line = z.output<typeof QuoteLine> & Readonly<{ net: boolean; washes: boolean }>;
type Refused = z.output<typeof RefusalView>;

export const quote: Pick<Handlers<typeof pricingContract>, 'pricing/get-quote'> = {
  'pricing/get-quote': {
    run(input, ctx) {
      const on = input.day ?? ctx.today;
      const book = readPriceBook(ctx.db);
      const customer = input.customerId;
      const list =
        customer === null
          ? STANDARD_LIST
          : ctx.db.one(ctx.db.q.selectFrom('customer').select('price_list').where('id', '=', customer))?.price_list;
      const pricing = { list: list ?? STANDARD_LIST, on, factors: book.factors };
      const castings = input.castings.map((casting, index) => ({
        wish: casting,
        facts: castingFacts(ctx, casting, index),
      }));
      const drafted = castings.flatMap(({ wish, facts }) => draftsOf(book, wish, facts, pricing));
      const lines: Line[] = [
        ...drafted.flatMap((one) => ('line' in one ? [one.line] : [])),
        ...castings.flatMap(({ wish }, index) =>
          wish.parts.flatMap((part, at) => partLine(ctx, part, wish.key, `castings.${index}.parts.${at}`)),
        ),
        ...input.parts.flatMap((part, at) => partLine(ctx, part, null, `parts.${at}`)),
        ...input.charges.map(chargeLine),
      ];
      const bill = priceQuote(ctx, lines, { on, customer, rush: input.rushBp ?? basisPoints(0) });
      const { beforeTax, total } = bill.figures;
      return {
        lines: lines.map(({ net: _net, washes: _washes, ...line }) => line),
        bill: billView(bill),
        refusals: drafted.flatMap((one) => ('refused' in one ? [one.refused] : [])),
        belowCeiling: input.ceiling === null ? null : cents(input.ceiling - (input.ceilingTaxIn ? total : beforeTax)),
      };
    },
  },
};

function castingFacts(ctx: QueryCtx, wish: z.output<typeof QuoteCasting>, index: number): CastingForPrice {
  if (wish.type !== undefined) return describeType(ctx.db, wish.type, wish.material, wish.closeTolerance);
  if (wish.described) return describedCasting(wish.described, wish.material, wish.closeTolerance);
  throw badField(
    'castings/no-type',
    `castings.${index}.type`,
    'Say what casting it is: choose a type, or describe it.',
  );
}

type One = Readonly<{ line: Line } | { refused: Refused }>;

function draftsOf(
  book: PriceBook,
  wish: z.output<typeof QuoteCasting>,
  facts: CastingForPrice,
  pricing: PricingDay,
): One[] {
  const packages = wish.packages.map(({ packageId }): One => {
    const pack = book.packages.get(packageId);
    const ids = { operationKindId: null, packageId };
    if (!pack) return { refused: refusal(wish.key, ids, 'This package is not in the catalogue.', true) };
    return asOne(wish.key, ids, 'package', draftPackage(book, pack, facts, pricing, { castings: 1, price: null }));
  });
  const operations = wish.operations.map(({ operationKindId, quantity }): One => {
    const kind = book.kinds.get(operationKindId);
    const ids = { operationKindId, packageId: null };
    if (!kind) return { refused: refusal(wish.key, ids, 'This operation is not in the catalogue.', true) };
    return asOne(wish.key, ids, 'operation', draftOperation(book, kind, facts, pricing, quantity));
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

function asOne(castingKey: string, ids: Ids, kind: 'operation' | 'package', drafted: Drafted): One {
  if ('refusal' in drafted) {
    const { words, priceOnly, fits } = drafted.refusal;
    const offers = fits.map((fit) => ({ operationKindId: fit.id, words: fit.words }));
    return { refused: { ...refusal(castingKey, ids, words, priceOnly), fits: offers } };
  }
  return { line: draftLine(castingKey, ids, kind, drafted.draft) };
}

const draftLine = (castingKey: string, ids: Ids, kind: 'operation' | 'package', draft: Draft): Line => ({
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
  net: false,
  washes: draft.operations.some((step) => step.kind.groups.includes('clean')),
});

/** A part the customer brings is no line. */
function partLine(ctx: QueryCtx, wish: z.output<typeof PartWish>, castingKey: string | null, field: string): Line[] {
  if (wish.source === 'customer') return [];
  const stock = stockItem(ctx.db, wish.stockItemId);
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

const chargeLine = (wish: z.output<typeof ChargeWish>): Line =>
  plainLine(
    { kind: wish.kind, words: wish.words, taxClass: wish.taxClass ?? CHARGE_CLASSES[wish.kind], castingKey: null },
    chargeTerms(wish),
    chargeUnit(wish),
  );

const plainLine = (
  named: Pick<Line, 'kind' | 'words' | 'taxClass' | 'castingKey'>,
  terms: PriceTerms,
  unit: string,
): Line => ({
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
  net: false,
  washes: false,
});

function priceQuote(
  ctx: QueryCtx,
  lines: readonly Line[],
  {
    on,
    customer,
    rush,
  }: Readonly<{ on: Day; customer: Parameters<typeof readBillTerms>[1]; rush: ReturnType<typeof basisPoints> }>,
) {
  const billLines = lines.map(
    (line, index): BillLine => ({
      key: String(index),
      kind: line.kind,
      amount: line.amount,
      taxClass: line.taxClass,
      net: line.net,
    }),
  );
  return priceBill({
    lines: billLines,
    washed: new Set(lines.filter((line) => line.washes).map((line) => line.castingKey)).size,
    earlier: NOTHING_EARLIER,
    last: true,
    terms: readBillTerms(ctx.db, customer, on, rush),
  });
}
