/** The ways to go on, priced: each as the ticket with it minus the ticket without it; both stops beside them. */
import type { z } from 'zod';
import type { QueryCtx } from '../../host/implement.ts';
import type { ParsedInputOf } from '../../kernel/contract.ts';
import { badField } from '../../kernel/errors.ts';
import type { CastingId } from '../../kernel/ids.ts';
import { type Cents, cents } from '../../kernel/units.ts';
import { type BillInput, NOTHING_EARLIER } from '../../lines/compute/bill.ts';
import { lineWords, plainUnit } from '../../lines/compute/line-views.ts';
import { optionPrice } from '../../lines/compute/stop.ts';
import { agreedSoFar, linesOnBill, type TicketMoney, washedCastings } from '../../lines/compute/ticket-bill.ts';
import { type DraftLine, draftBillLines, draftCharge, draftPart, draftWork } from '../../lines/store/draft-lines.ts';
import { billView } from '../../lines/store/line-views.ts';
import { priceStop, readStopBook, type StopBook, type StopResult } from '../../lines/store/stops.ts';
import type { askingContract, OptionView } from '../contract.ts';

export type AskInput = ParsedInputOf<(typeof askingContract)['approvals/get-added-work-price']>;
export type View = z.output<typeof OptionView>;

const LETTERS = 'abcdefghijklmnop';

export type PricedOptions = Readonly<{
  options: readonly View[];
  stopCasting: ReturnType<typeof stopView>;
  stopAll: ReturnType<typeof stopView>;
}>;

/** Price everything that is offered. Reads only. */
export function priceOptions(ctx: QueryCtx, input: AskInput, money: TicketMoney): PricedOptions {
  const stop = readStopBook(ctx.db, input.ticketId, money);
  const most = mostOf(money);
  const works = input.options.map((option, index) => workOption(ctx, input, option, index, { money, stop, most }));
  const oneStop = priceStop(stop, new Set([input.castingId]));
  const allStop = priceStop(stop, 'everything');
  const letter = (at: number) => LETTERS[works.length + at] ?? '?';
  const tag = stop.castings.find((c) => c.id === input.castingId)?.tag ?? 0;
  return {
    options: [
      ...works,
      stopOption('stop_casting', letter(0), `Stop ${tag}, finish the rest`, oneStop),
      stopOption('stop_all', letter(1), 'Stop everything', allStop),
    ],
    stopCasting: stopView(stop, oneStop),
    stopAll: stopView(stop, allStop),
  };
}

/** The ceiling with its overrun; null when nothing is agreed under a ceiling. */
function mostOf(money: TicketMoney): Readonly<{ most: Cents; taxIn: boolean }> | null {
  const { authorised, most } = agreedSoFar(money);
  return authorised.ceiling ? { most, taxIn: authorised.taxIn } : null;
}

type Known = Readonly<{ money: TicketMoney; stop: StopBook; most: ReturnType<typeof mostOf> }>;

function workOption(
  ctx: QueryCtx,
  input: AskInput,
  option: AskInput['options'][number],
  index: number,
  known: Known,
): View {
  const lines = draftOption(ctx, input.castingId, option, known.stop, `options.${index}`);
  const { money } = known;
  const now = linesOnBill(money);
  const washed = washedCastings(money, now, 'planned');
  const ticket: BillInput = {
    lines: now.map((line) => line.bill),
    washed,
    earlier: NOTHING_EARLIER,
    last: true,
    terms: money.terms,
  };
  const washes = lines.some((line) => line.washes) && !hasWash(money, input.castingId);
  const price = optionPrice(ticket, draftBillLines(lines), washed + (washes ? 1 : 0));
  const { beforeTax, total } = price.with.figures;
  const past = known.most === null ? null : (known.most.taxIn ? total : beforeTax) - known.most.most;
  return {
    id: null,
    letter: LETTERS[index] ?? '?',
    kind: option.kind,
    words: option.words,
    daysMore: option.daysMore,
    extra: price.extraBeforeTax,
    extraWithTax: price.extraWithTax,
    newTotal: beforeTax,
    newTotalWithTax: total,
    pastCeiling: past !== null && past > 0 ? cents(past) : null,
    ifDeclinedWords: option.ifDeclinedWords,
    lines: lines.map(({ words, quantityWords, priceWords, working, amount, kind }) => ({
      words,
      quantityWords,
      priceWords,
      working,
      amount,
      kind,
    })),
    answer: null,
  };
}

const hasWash = (money: TicketMoney, casting: CastingId): boolean =>
  money.operations.some((o) => o.clean && o.castingId === casting && !o.notNeeded && o.lineId !== null);

/** The lines of a way, on the casting it is about. @throws AppError beside the wish that does not fit */
function draftOption(
  ctx: QueryCtx,
  castingId: CastingId,
  option: AskInput['options'][number],
  stop: StopBook,
  field: string,
): DraftLine[] {
  const casting = stop.castings.find((c) => c.id === castingId);
  if (!casting) throw badField('pricing/not-on-this-ticket', 'castingId', 'This casting is not on this ticket.');
  const pricing = { list: stop.list, on: stop.priceDay, factors: stop.book.factors };
  const drafted = draftWork(stop.book, option, 'casting', casting, pricing);
  const refused = drafted.find((one) => 'refused' in one);
  if (refused && 'refused' in refused) throw badField('pricing/does-not-fit', field, refused.refused.words);
  const work = drafted.flatMap((one) => ('line' in one ? [one.line] : []));
  const asks = work.find((line) => line.asksQuantity);
  if (asks) throw badField('pricing/count-missing', field, `Say how many: ${asks.words} is sold by the ${asks.unit}.`);
  return [
    ...work,
    ...option.parts.flatMap((part, at) => draftPart(ctx.db, part, 'casting', `${field}.parts.${at}`)),
    ...option.charges.map(draftCharge),
  ];
}

const stopOption = (kind: 'stop_casting' | 'stop_all', letter: string, words: string, { bill }: StopResult): View => ({
  id: null,
  letter,
  kind,
  words,
  daysMore: 0,
  extra: cents(0),
  extraWithTax: cents(0),
  newTotal: bill.figures.beforeTax,
  newTotalWithTax: bill.figures.total,
  pastCeiling: null,
  ifDeclinedWords: null,
  lines: [],
  answer: null,
});

export const stopView = (stop: StopBook, { bill, kept }: StopResult) => ({
  bill: billView(bill),
  lines: kept.map(({ line, amount, working }) => ({
    tag: stop.castings.find((c) => c.id === line.castingId)?.tag ?? null,
    words: line.words,
    amount,
    working: working || lineWords(line, unitOf(stop, line)).working,
  })),
});

function unitOf(stop: StopBook, line: StopResult['kept'][number]['line']): string {
  const casting = stop.castings.find((c) => c.id === line.castingIds[0]);
  const kind = line.operationKindId === null ? undefined : stop.book.kinds.get(line.operationKindId);
  return (casting && kind?.uses.get(casting.kind)?.chargeUnit) ?? plainUnit(line.per);
}
