/** Asking for added work: the ways are priced, written down with their lines, and asked with an end. */
import { getCasting } from '../../castings/store.ts';
import { insertHold } from '../../floor/store.ts';
import type { Ctx, Handlers } from '../../host/implement.ts';
import { type Day, day } from '../../kernel/days.ts';
import { badField } from '../../kernel/errors.ts';
import type { AddedWorkId, CastingId, Id, TicketId } from '../../kernel/ids.ts';
import { addCharge, addPart } from '../../lines/store/add-charges.ts';
import { addOperation, addPackage, finishJob, openJob } from '../../lines/store/add-lines.ts';
import { insertAddedWork, insertOption, listAddedWork } from '../../lines/store/answers.ts';
import { stockItem } from '../../lines/store/parts.ts';
import { readTicketMoney } from '../../lines/store/ticket-money.ts';
import { getTicket, refuseClosed } from '../../tickets/store.ts';
import type { askingContract } from '../contract.ts';
import { type AskInput, priceOptions, type View } from './options.ts';

type Asking = Pick<Handlers<typeof askingContract>, 'approvals/ask-added-work' | 'approvals/get-added-work-price'>;

export const ask: Asking = {
  'approvals/get-added-work-price': {
    run(input, ctx) {
      const { options, ...stops } = priceOptions(ctx, input, readTicketMoney(ctx.db, input.ticketId, ctx.today));
      return { options: [...options], ...stops };
    },
  },
  'approvals/ask-added-work': {
    run(input, ctx) {
      const ticket = getTicket(ctx.db, input.ticketId);
      refuseClosed(ticket);
      if (input.expiresAt <= ctx.now)
        throw badField('approvals/over-already', 'expiresAt', 'Choose an end that is still to come.');
      refuseStrangers(ctx, input);
      const priced = priceOptions(ctx, input, readTicketMoney(ctx.db, ticket.id, ctx.today));
      const number = (listAddedWork(ctx.db, ticket.id).at(-1)?.number ?? 0) + 1;
      const addedWorkId = insertAddedWork(
        ctx.db,
        {
          ticket_id: ticket.id,
          number,
          casting_id: input.castingId,
          operation_id: input.operationId,
          words: input.words,
          expires_at: input.expiresAt,
          cost_to_stop_cents: priced.stopCasting.bill.figures.beforeTax,
          cost_to_stop_all_cents: priced.stopAll.bill.figures.beforeTax,
          if_no_answer: input.ifNoAnswer,
          asked_at: ctx.now,
        },
        input.findings,
      );
      const options = priced.options.map((view, index) => {
        const id = writeOption(ctx, { ticketId: ticket.id, addedWorkId, view });
        writeLines(ctx, input, index, id);
        return { ...view, id };
      });
      holdForAnswer(ctx, { ticketId: ticket.id, castingId: input.castingId, until: input.expiresAt.slice(0, 10) });
      const name = `${ticket.number}-A${number}`;
      return {
        output: { addedWorkId, number: name, options },
        activity: [
          {
            subject: ['added_work', addedWorkId],
            words: `Asked for added work ${name}: ${input.words}`,
            ticket: ticket.id,
            after: options.map(({ letter, words, extra, newTotal }) => ({ letter, words, extra, newTotal })),
          },
        ],
        touched: [ticket.id],
      };
    },
  },
};

function refuseStrangers(ctx: Ctx, input: AskInput): void {
  if (getCasting(ctx.db, input.castingId).ticket_id !== input.ticketId) {
    throw badField('pricing/not-on-this-ticket', 'castingId', 'This casting is not on this ticket.');
  }
  for (const finding of input.findings) {
    const row = ctx.db.one(ctx.db.q.selectFrom('finding').select('ticket_id').where('id', '=', finding));
    if (row?.ticket_id !== input.ticketId)
      throw badField('approvals/no-such-finding', 'findings', 'This finding is of another ticket.');
  }
}

type Written = Readonly<{ ticketId: TicketId; addedWorkId: AddedWorkId; view: View }>;

const writeOption = (ctx: Ctx, { ticketId, addedWorkId, view }: Written): Id<'added_work_option'> =>
  insertOption(ctx.db, {
    added_work_id: addedWorkId,
    ticket_id: ticketId,
    letter: view.letter,
    words: view.words,
    kind: view.kind,
    days_more: view.daysMore,
    extra_cents: view.extra,
    new_total_cents: view.newTotal,
    if_declined_words: view.ifDeclinedWords,
  });

/** The lines of a way stand on the ticket from now on and count once it is chosen. */
function writeLines(ctx: Ctx, input: AskInput, index: number, optionId: Id<'added_work_option'>): void {
  const option = input.options[index];
  if (!option) return;
  const job = openJob(ctx.db, input.ticketId, optionId);
  const field = `options.${index}`;
  for (const wish of option.packages) addPackage(ctx.db, job, [input.castingId], wish, field);
  for (const wish of option.operations) addOperation(ctx.db, job, input.castingId, wish, field);
  for (const [at, wish] of option.parts.entries()) {
    addPart(ctx.db, job, input.castingId, wish, stockItem(ctx.db, wish.stockItemId), `${field}.parts.${at}`);
  }
  for (const wish of option.charges) addCharge(ctx.db, job, input.castingId, wish);
  finishJob(ctx.db, job);
}

/** The casting waits for the answer, unless something already holds it for that. */
function holdForAnswer(
  ctx: Ctx,
  { ticketId, castingId, until }: Readonly<{ ticketId: TicketId; castingId: CastingId; until: string }>,
): void {
  const open = ctx.db.one(
    ctx.db.q
      .selectFrom('hold')
      .select('id')
      .where('casting_id', '=', castingId)
      .where('reason', '=', 'customer_answer')
      .where('closed_at', 'is', null),
  );
  if (open) return;
  const followUp: Day = day(until);
  insertHold(ctx.db, {
    ticket_id: ticketId,
    casting_id: castingId,
    reason: 'customer_answer',
    owner_role: 'counter',
    owner_id: ctx.session.staff,
    follow_up_on: followUp < ctx.today ? ctx.today : followUp,
  });
}
