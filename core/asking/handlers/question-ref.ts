/** What an answer is about, and what it is worth. */
import { getCasting } from '../../castings/store.ts';
import type { Ctx } from '../../host/implement.ts';
import type { ParsedInputOf } from '../../kernel/contract.ts';
import { badField, ruleBroken } from '../../kernel/errors.ts';
import type { AddedWorkId, CastingId, EstimateId, Id, TicketId, WorkLineId } from '../../kernel/ids.ts';
import { type Cents, cents } from '../../kernel/units.ts';
import { authorisedAmount } from '../../lines/compute/authorised.ts';
import { NOTHING_EARLIER } from '../../lines/compute/bill.ts';
import { optionPrice } from '../../lines/compute/stop.ts';
import { linesOnBill, type TicketMoney, washedCastings, wholeBill } from '../../lines/compute/ticket-bill.ts';
import {
  getAddedWork,
  getEstimate,
  listEstimates,
  listLinesOfEstimate,
  listOptions,
} from '../../lines/store/answers.ts';
import { readTicketMoney } from '../../lines/store/ticket-money.ts';
import { getWorkLine } from '../../lines/store/work-lines.ts';
import { getTicket } from '../../tickets/store.ts';
import type { askingContract } from '../contract.ts';

type AnswerInput = ParsedInputOf<(typeof askingContract)['approvals/record-answer']>;

export type Question = Readonly<{
  ticketId: TicketId;
  about: 'estimate' | 'added_work' | 'overrun' | 'scrap';
  estimateId: EstimateId | null;
  optionId: Id<'added_work_option'> | null;
  addedWorkId: AddedWorkId | null;
  castingId: CastingId | null;
  /** `stop_casting` or `stop_all` for such an option. */
  stop: 'stop_casting' | 'stop_all' | null;
  /** What a yes authorises, with tax when `taxIn`. */
  amount: Cents;
  taxIn: boolean;
  /** What is compared with a person's limit: before tax. */
  forLimit: Cents;
  /** Lines a part answer or an overrun is about. */
  lines: readonly WorkLineId[];
  /** "Estimate 20455-E1", "Added work 20455-A1, way a". */
  words: string;
}>;

const NOTHING = {
  estimateId: null,
  optionId: null,
  addedWorkId: null,
  castingId: null,
  stop: null,
  lines: [],
} as const;

/** @throws AppError when the question is no longer open, or the answer does not fit it */
export function resolveQuestion(
  ctx: Ctx,
  ref: AnswerInput['question'],
  answer: AnswerInput['answer'],
  yesLines: readonly WorkLineId[],
): Question {
  if ('estimateId' in ref) return onEstimate(ctx, ref.estimateId, answer, yesLines);
  if (answer === 'part')
    throw badField('approvals/no-part', 'answer', 'Only an estimate is answered in part. Answer yes or no.');
  if ('optionId' in ref) return onOption(ctx, ref.optionId);
  if ('overrunLineId' in ref) return onOverrun(ctx, ref.overrunLineId);
  if ('scrapCastingId' in ref) return onScrap(ctx, ref.scrapCastingId);
  if (answer !== 'no') throw badField('approvals/which-way', 'question', 'Say which way they chose.');
  const question = getAddedWork(ctx.db, ref.addedWorkId);
  const { number } = getTicket(ctx.db, question.ticket_id);
  return {
    ...NOTHING,
    ticketId: question.ticket_id,
    about: 'added_work',
    addedWorkId: question.id,
    amount: cents(0),
    taxIn: false,
    forLimit: cents(0),
    words: `Added work ${number}-A${question.number}`,
  };
}

function onEstimate(
  ctx: Ctx,
  id: EstimateId,
  answer: AnswerInput['answer'],
  yesLines: readonly WorkLineId[],
): Question {
  const { db } = ctx;
  const row = getEstimate(db, id);
  const ticket = getTicket(db, row.ticket_id);
  const latest = listEstimates(db, ticket.id).at(-1);
  if (latest && latest.id !== id) {
    const message = `There is a later estimate, revision ${latest.revision}. Answer that one.`;
    throw ruleBroken('approvals/estimate-replaced', message);
  }
  const lines = listLinesOfEstimate(db, id).flatMap((line) => line.work_line_id ?? []);
  const unknown = yesLines.filter((line) => !lines.includes(line));
  if (answer === 'part' && (yesLines.length === 0 || unknown.length > 0)) {
    throw badField('approvals/part-of-what', 'lines', 'Choose the lines of the estimate they said yes to.');
  }
  const amount =
    answer === 'part' ? partAmount(readTicketMoney(db, ticket.id, ctx.today), yesLines) : row.before_tax_cents;
  return {
    ...NOTHING,
    ticketId: ticket.id,
    about: 'estimate',
    estimateId: id,
    amount,
    taxIn: false,
    forLimit: amount,
    lines,
    words: `Estimate ${ticket.number}-E${row.revision}`,
  };
}

/** What the accepted lines come to, with discount, supplies and fees of these lines. */
function partAmount(money: TicketMoney, yes: readonly WorkLineId[]): Cents {
  const accepted = money.lines.filter((line) => yes.includes(line.id as WorkLineId) && !line.withdrawn);
  return wholeBill(money, accepted).figures.beforeTax;
}

function onOption(ctx: Ctx, id: Id<'added_work_option'>): Question {
  const { db } = ctx;
  const found = db.one(db.q.selectFrom('added_work_option').select(['ticket_id']).where('id', '=', id));
  const option = found && listOptions(db, found.ticket_id).find((o) => o.id === id);
  if (!option) throw ruleBroken('approvals/no-such-option', 'This way is not offered. Look at the question again.');
  if (option.closed_at !== null)
    throw ruleBroken('approvals/closed', 'This question is closed. Ask again if it changed.');
  const { number } = getTicket(db, option.ticket_id);
  const money = readTicketMoney(db, option.ticket_id, ctx.today);
  const { taxIn, base } = authorisedAmount(money.answers);
  const withTax = base !== null && taxIn;
  return {
    ...NOTHING,
    ticketId: option.ticket_id,
    about: 'added_work',
    optionId: id,
    addedWorkId: option.added_work_id,
    castingId: option.casting_id,
    stop: option.kind === 'stop_casting' || option.kind === 'stop_all' ? option.kind : null,
    amount: withTax ? cents(option.extra_cents + taxOfOption(money, id)) : option.extra_cents,
    taxIn: withTax,
    forLimit: option.extra_cents,
    words: `Added work ${number}-A${option.added_work_number}, way ${option.letter}`,
  };
}

/** The tax a way adds, for a customer whose authorised amount is meant with tax. */
function taxOfOption(money: TicketMoney, option: number): number {
  const now = linesOnBill(money);
  const added = money.lines.filter((line) => line.optionId === option && !line.withdrawn && !now.includes(line));
  const input = {
    lines: now.map((line) => line.bill),
    washed: washedCastings(money, now, 'planned'),
    earlier: NOTHING_EARLIER,
    last: true,
    terms: money.terms,
  };
  const price = optionPrice(
    input,
    added.map((line) => line.bill),
    washedCastings(money, [...now, ...added], 'planned'),
  );
  return price.extraWithTax - price.extraBeforeTax;
}

function onOverrun(ctx: Ctx, id: WorkLineId): Question {
  const line = getWorkLine(ctx.db, id);
  const money = readTicketMoney(ctx.db, line.ticketId, ctx.today);
  const facts = money.lines.find((other) => other.id === id);
  const more = facts && facts.actualAmount !== null ? facts.actualAmount - line.amount : 0;
  if (more <= 0) throw ruleBroken('approvals/no-overrun', `${line.words} is not over its estimate.`);
  return {
    ...NOTHING,
    ticketId: line.ticketId,
    about: 'overrun',
    amount: cents(more),
    taxIn: false,
    forLimit: cents(more),
    lines: [id],
    words: `More hours on ${line.words}`,
  };
}

function onScrap(ctx: Ctx, id: CastingId): Question {
  const casting = getCasting(ctx.db, id);
  if (casting.scrap_at === null) {
    throw ruleBroken('approvals/not-scrap', `A lead has to call tag ${casting.tag_no} scrap first, with the reason.`);
  }
  return {
    ...NOTHING,
    ticketId: casting.ticket_id,
    about: 'scrap',
    castingId: id,
    amount: cents(0),
    taxIn: false,
    forLimit: cents(0),
    words: `Tag ${casting.tag_no} is scrap`,
  };
}
