/** A price without a ticket: what check-in shows while it is filled in. Reads only. */
import type { z } from 'zod';
import type { Handlers, QueryCtx } from '../../host/implement.ts';
import type { Day } from '../../kernel/days.ts';
import { badField } from '../../kernel/errors.ts';
import { basisPoints, cents } from '../../kernel/units.ts';
import { NOTHING_EARLIER, priceBill } from '../../lines/compute/bill.ts';
import { type DraftLine, draftBillLines, draftCharge, draftPart, draftWork } from '../../lines/store/draft-lines.ts';
import { billView } from '../../lines/store/line-views.ts';
import { readPriceBook } from '../../lines/store/price-book.ts';
import { type CastingForPrice, describedCasting, describeType } from '../../lines/store/priced-castings.ts';
import { readBillTerms } from '../../lines/store/ticket-money.ts';
import { STANDARD_LIST } from '../../rates/compute.ts';
import type { pricingContract, QuoteCasting } from '../contract.ts';

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
      const drafted = castings.flatMap(({ wish, facts }) => draftWork(book, wish, wish.key, facts, pricing));
      const lines: DraftLine[] = [
        ...drafted.flatMap((one) => ('line' in one ? [one.line] : [])),
        ...castings.flatMap(({ wish }, index) =>
          wish.parts.flatMap((part, at) => draftPart(ctx.db, part, wish.key, `castings.${index}.parts.${at}`)),
        ),
        ...input.parts.flatMap((part, at) => draftPart(ctx.db, part, null, `parts.${at}`)),
        ...input.charges.map(draftCharge),
      ];
      const bill = priceQuote(ctx, lines, { on, customer, rush: input.rushBp ?? basisPoints(0) });
      const { beforeTax, total } = bill.figures;
      return {
        lines: lines.map(({ washes: _washes, ...line }) => line),
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

function priceQuote(
  ctx: QueryCtx,
  lines: readonly DraftLine[],
  {
    on,
    customer,
    rush,
  }: Readonly<{ on: Day; customer: Parameters<typeof readBillTerms>[1]; rush: ReturnType<typeof basisPoints> }>,
) {
  return priceBill({
    lines: draftBillLines(lines),
    washed: new Set(lines.filter((line) => line.washes).map((line) => line.castingKey)).size,
    earlier: NOTHING_EARLIER,
    last: true,
    terms: readBillTerms(ctx.db, customer, on, rush),
  });
}
