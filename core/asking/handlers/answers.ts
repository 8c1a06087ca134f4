/** Writing down what the customer said: who, when, how, in their words (I6, I7). */
import { getCasting } from '../../castings/store.ts';
import { getCustomer, getPerson } from '../../customers/store.ts';
import type { Ctx, Handlers } from '../../host/implement.ts';
import { personOf } from '../../host/implement.ts';
import type { ParsedInputOf } from '../../kernel/contract.ts';
import { AppError, badField, ruleBroken } from '../../kernel/errors.ts';
import type { ApprovalId, CustomerId, TicketId, WorkLineId } from '../../kernel/ids.ts';
import { type Cents, cents } from '../../kernel/units.ts';
import { mayNotApprove } from '../../lines/compute/approver.ts';
import { authorisedAmount } from '../../lines/compute/authorised.ts';
import { getAddedWork, getApproval, insertApproval, listOptionsOf } from '../../lines/store/answers.ts';
import { readTicketMoney } from '../../lines/store/ticket-money.ts';
import { getShop } from '../../shop/store.ts';
import { getTicket, refuseClosed } from '../../tickets/store.ts';
import type { askingContract } from '../contract.ts';
import { followAnswer } from './effects.ts';
import { type Question, resolveQuestion } from './question-ref.ts';

type Answers = Pick<
  Handlers<typeof askingContract>,
  | 'approvals/set-ceiling'
  | 'approvals/record-answer'
  | 'approvals/accept-unnamed'
  | 'approvals/withdraw-answer'
  | 'approvals/close-question'
>;

type Said = Pick<
  ParsedInputOf<(typeof askingContract)['approvals/record-answer']>,
  'personId' | 'saidBy' | 'means' | 'numberCalled' | 'words' | 'proof' | 'saidAt'
>;

export const answers: Answers = {
  'approvals/set-ceiling': {
    run(input, ctx) {
      const ticket = getTicket(ctx.db, input.ticketId);
      refuseClosed(ticket);
      const taxIn = input.taxIn ?? getShop(ctx.db).ceiling_tax_in === 1;
      if (input.overrideWhy !== null && !ctx.session.may.has('leads:decide')) {
        throw new AppError(
          'not-allowed',
          'approvals/not-a-lead',
          'Only a lead gives a reason for such a yes. Ask one.',
        );
      }
      const who = whoSaid(ctx, ticket.customer_id, input, {
        amount: input.amount,
        why: input.overrideWhy,
        counts: true,
      });
      const id = insertApproval(
        ctx.db,
        {
          ticket_id: ticket.id,
          about: 'ceiling',
          answer: 'yes',
          amount_cents: input.amount,
          tax_in: taxIn ? 1 : 0,
          ...who,
        },
        [],
      );
      return done(ctx, ticket.id, id, `Ceiling agreed for ticket ${ticket.number}`);
    },
  },
  'approvals/record-answer': { run: (input, ctx) => record(ctx, input, null) },
  'approvals/accept-unnamed': { run: (input, ctx) => record(ctx, input, input.why) },
  'approvals/withdraw-answer': {
    run(input, ctx) {
      const before = getApproval(ctx.db, input.approvalId);
      const ticket = getTicket(ctx.db, before.ticket_id);
      if (before.answer === 'withdrawn')
        throw ruleBroken('approvals/is-withdrawal', 'This row takes an answer back itself.');
      if (isTakenBack(ctx, ticket.id, before.id))
        throw ruleBroken('approvals/taken-back', 'This answer was taken back already.');
      reopen(ctx, before);
      const who = whoSaid(ctx, ticket.customer_id, input, { amount: cents(0), why: null, counts: false });
      const id = insertApproval(
        ctx.db,
        {
          ticket_id: ticket.id,
          about: before.about,
          estimate_id: before.estimate_id,
          option_id: before.option_id,
          added_work_id: before.added_work_id,
          casting_id: before.casting_id,
          answer: 'withdrawn',
          withdraws_id: before.id,
          amount_cents: before.amount_cents,
          tax_in: before.tax_in,
          ...who,
        },
        [],
      );
      return done(ctx, ticket.id, id, `Answer taken back on ticket ${ticket.number}`);
    },
  },
  'approvals/close-question': {
    run({ addedWorkId, seenVersion }, { db, now }) {
      const question = getAddedWork(db, addedWorkId);
      if (question.closed_at !== null) throw ruleBroken('approvals/closed', 'This question is closed already.');
      const version = db.step('added_work', addedWorkId, seenVersion, { closed_at: now });
      const words = `Closed added work A${question.number} without an answer`;
      return {
        output: { version },
        activity: [{ subject: ['added_work', addedWorkId], words, ticket: question.ticket_id }],
        touched: [question.ticket_id],
      };
    },
  },
};

type AnswerInput = ParsedInputOf<(typeof askingContract)['approvals/record-answer']>;

function record(ctx: Ctx, input: AnswerInput, why: string | null) {
  const question = resolveQuestion(ctx, input.question, input.answer, input.lines);
  const ticket = getTicket(ctx.db, question.ticketId);
  const counts = input.answer !== 'no';
  const who = whoSaid(ctx, ticket.customer_id, input, { amount: question.forLimit, why, counts });
  const after = counts ? followAnswer(ctx, question, input.words) : [];
  const id = insertApproval(
    ctx.db,
    {
      ticket_id: ticket.id,
      about: question.about,
      estimate_id: question.estimateId,
      option_id: question.optionId,
      added_work_id: question.addedWorkId,
      casting_id: question.castingId,
      answer: input.answer,
      amount_cents: question.amount,
      tax_in: question.taxIn ? 1 : 0,
      ...who,
    },
    linesOf(input, question, after),
  );
  if (question.about === 'scrap' && input.answer === 'yes' && question.castingId !== null) {
    const casting = getCasting(ctx.db, question.castingId);
    ctx.db.step('casting', casting.id, casting.version, { scrap_approval_id: id });
  }
  if (!counts) followNo(ctx, question);
  return done(ctx, ticket.id, id, `${question.words}: ${input.answer}, ${who.said_by} by ${input.means}`);
}

/** Part answers name each line; an overrun its line; a stop the lines it left. */
function linesOf(input: AnswerInput, question: Question, written: readonly WorkLineId[]) {
  const answer = input.answer === 'no' ? 'no' : 'yes';
  if (question.about === 'overrun') return question.lines.map((line) => ({ line, answer }) as const);
  if (written.length > 0) return written.map((line) => ({ line, answer }) as const);
  if (input.answer !== 'part') return [];
  return question.lines.map((line) => ({
    line,
    answer: input.lines.includes(line) ? ('yes' as const) : ('no' as const),
  }));
}

/** A no to everything closes the question; a no to one way leaves the others open. */
function followNo(ctx: Ctx, question: Question): void {
  if (question.addedWorkId === null || question.optionId !== null) return;
  const row = getAddedWork(ctx.db, question.addedWorkId);
  if (row.closed_at === null) ctx.db.step('added_work', row.id, row.version, { closed_at: ctx.now });
}

type Weight = Readonly<{
  /** Compared with the person's limit, before tax. */
  amount: Cents;
  /** A lead's reason for a person who may not approve. */
  why: string | null;
  /** A yes has to come from somebody who may say it; a no may come from anybody. */
  counts: boolean;
}>;

/**
 * The columns that say who answered and how.
 *
 * @throws AppError `approvals/no-name`, `approvals/no-number`, `approvals/may-not-approve` (with the way on)
 */
function whoSaid(ctx: Ctx, customer: CustomerId, said: Said, { amount, why, counts }: Weight) {
  const person = said.personId === null ? null : getPerson(ctx.db, said.personId);
  const known = person?.customer_id === customer ? person : null;
  const name = known?.name ?? said.saidBy ?? person?.name;
  if (!name) throw badField('approvals/no-name', 'saidBy', 'Write who said it.');
  if (said.means === 'phone' && said.numberCalled === null) {
    throw badField('approvals/no-number', 'numberCalled', 'Write who said yes and the number you called.');
  }
  const approver = known && { name: known.name, mayApprove: known.may_approve === 1, limit: known.approve_limit_cents };
  const refusal = counts ? mayNotApprove(getCustomer(ctx.db, customer).who_approves, approver, name, amount) : null;
  if (refusal !== null && why === null) throw badField('approvals/may-not-approve', 'personId', refusal);
  return {
    person_id: known?.id ?? null,
    said_by: name,
    means: said.means,
    number_called: said.numberCalled,
    words: said.words,
    proof_id: said.proof,
    said_at: said.saidAt ?? ctx.now,
    override_by: refusal === null ? null : personOf(ctx),
    override_why: refusal === null ? null : why,
  };
}

/** A question whose answer is taken back is open again. A stop that was carried out is not undone by words. */
function reopen(ctx: Ctx, before: ReturnType<typeof getApproval>): void {
  if (before.added_work_id === null) return;
  const option =
    before.option_id === null
      ? undefined
      : listOptionsOf(ctx.db, before.added_work_id).find((o) => o.id === before.option_id);
  if (before.answer === 'yes' && (option?.kind === 'stop_casting' || option?.kind === 'stop_all')) {
    throw ruleBroken(
      'approvals/stop-carried-out',
      'The stop was carried out. Add the work again if it goes on after all.',
    );
  }
  const question = getAddedWork(ctx.db, before.added_work_id);
  if (question.closed_at !== null) ctx.db.step('added_work', question.id, question.version, { closed_at: null });
}

const isTakenBack = (ctx: Ctx, ticket: TicketId, id: ApprovalId): boolean =>
  readTicketMoney(ctx.db, ticket, ctx.today).answers.some((a) => a.withdraws === id);

function done(ctx: Ctx, ticketId: TicketId, id: ApprovalId, words: string) {
  const { amount, taxIn } = authorisedAmount(readTicketMoney(ctx.db, ticketId, ctx.today).answers);
  return {
    output: { approvalId: id, authorised: amount, authorisedTaxIn: taxIn },
    activity: [{ subject: ['approval', id], words, ticket: ticketId, after: { authorised: amount } }] as const,
    touched: [ticketId],
  };
}
