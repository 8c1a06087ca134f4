/** What a yes sets in motion: the chosen way stands, holds for the answer close, a stop is carried out. */
import { closeHold } from '../../floor/store.ts';
import type { Ctx } from '../../host/implement.ts';
import { personOf } from '../../host/implement.ts';
import type { CastingId, TicketId, WorkLineId } from '../../kernel/ids.ts';
import { getAddedWork } from '../../lines/store/answers.ts';
import { resequence } from '../../lines/store/operations.ts';
import { applyStop, readStopBook } from '../../lines/store/stops.ts';
import { readTicketMoney } from '../../lines/store/ticket-money.ts';
import type { Question } from './question-ref.ts';

/** @returns lines written by a stop, which the yes covers */
export function followAnswer(ctx: Ctx, question: Question, words: string): WorkLineId[] {
  if (question.about === 'estimate') closeAnswerHolds(ctx, question.ticketId, null, words);
  if (question.addedWorkId === null) return [];
  const asked = getAddedWork(ctx.db, question.addedWorkId);
  if (asked.closed_at === null) ctx.db.step('added_work', asked.id, asked.version, { closed_at: ctx.now });
  closeAnswerHolds(ctx, question.ticketId, question.castingId, words);
  return question.stop === null ? [] : stopWork(ctx, question);
}

function stopWork(ctx: Ctx, question: Question): WorkLineId[] {
  const money = readTicketMoney(ctx.db, question.ticketId, ctx.today);
  const stop = readStopBook(ctx.db, question.ticketId, money);
  const stops =
    question.stop === 'stop_all' || question.castingId === null ? 'everything' : new Set([question.castingId]);
  const who = { now: ctx.now, by: personOf(ctx), why: `Stopped by the customer: ${question.words}` };
  const written = applyStop(ctx.db, stop, stops, who);
  for (const casting of stop.castings) resequence(ctx.db, stop.book, casting);
  return written;
}

/** Holds that only waited for the customer; a crack or scrap decision stays with its lead. */
function closeAnswerHolds(ctx: Ctx, ticket: TicketId, casting: CastingId | null, words: string): void {
  const { db } = ctx;
  const open = db.all(
    db.q
      .selectFrom('hold')
      .select(['id', 'casting_id', 'operation_id'])
      .where('ticket_id', '=', ticket)
      .where('reason', '=', 'customer_answer')
      .where('closed_at', 'is', null),
  );
  const castingOf = (operation: number | null) =>
    operation === null
      ? null
      : (db.one(
          db.q
            .selectFrom('operation')
            .select('casting_id')
            .where('id', '=', operation as never),
        )?.casting_id ?? null);
  for (const hold of open) {
    const on = hold.casting_id ?? castingOf(hold.operation_id);
    if (on === casting || on === null || casting === null) {
      closeHold(db, hold.id, ctx.now, personOf(ctx), `Answered: ${words}`.slice(0, 600));
    }
  }
}
