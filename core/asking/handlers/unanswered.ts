/** Questions nobody has answered, found through the tickets that say they have one. */
import type { QueryCtx } from '../../host/implement.ts';
import { type Day, type Moment, moment } from '../../kernel/days.ts';
import type { TicketId } from '../../kernel/ids.ts';
import { type Cents, cents, sumCents } from '../../kernel/units.ts';
import { listEstimates, listOptionsOf } from '../../lines/store/answers.ts';
import { know } from '../../state/compute/live.ts';
import { loadFacts } from '../../state/store/load-facts.ts';

export type UnansweredRow = Readonly<{
  kind: 'estimate' | 'added_work';
  id: number;
  number: string;
  ticketId: TicketId;
  ticketNumber: number;
  customer: string;
  words: string;
  askedAt: Moment;
  /** Null for an estimate: it is good until the end of its last day. */
  expiresAt: Moment | null;
  lastDay: Day;
  expired: boolean;
  /** Before tax: the estimate, or the dearest way of added work. */
  amount: Cents;
  tries: number;
}>;

/** The soonest to end first. @param only one ticket, or null for all */
export function listUnanswered(ctx: QueryCtx, only: TicketId | null): UnansweredRow[] {
  const { db } = ctx;
  const query = db.q
    .selectFrom('ticket_now as n')
    .innerJoin('customer as c', 'c.id', 'n.customer_id')
    .select(['n.ticket_id', 'n.number', 'c.short_name'])
    .where('n.unanswered', '>', 0)
    .where('n.over', '=', 0);
  return db
    .all(only === null ? query : query.where('n.ticket_id', '=', only))
    .flatMap((ticket) => rowsOf(ctx, ticket))
    .sort((a, b) => ((a.expiresAt ?? a.lastDay) < (b.expiresAt ?? b.lastDay) ? -1 : 1));
}

type Ticket = Readonly<{ ticket_id: TicketId; number: number; short_name: string }>;

function rowsOf(ctx: QueryCtx, ticket: Ticket): UnansweredRow[] {
  const facts = loadFacts(ctx.db, ticket.ticket_id);
  return know(facts).unanswered.map((question) => {
    const estimate = question.kind === 'estimate';
    const expiresAt = estimate ? null : moment(question.until);
    const lastDay = expiresAt === null ? (question.until as Day) : ctx.local(expiresAt).day;
    return {
      kind: estimate ? 'estimate' : 'added_work',
      id: question.id,
      number: `${ticket.number}-${estimate ? 'E' : 'A'}${question.number}`,
      ticketId: ticket.ticket_id,
      ticketNumber: ticket.number,
      customer: ticket.short_name,
      words: question.words,
      askedAt: moment(question.askedAt),
      expiresAt,
      lastDay,
      expired: expiresAt === null ? lastDay < ctx.today : expiresAt < ctx.now,
      amount: amountOf(ctx, ticket.ticket_id, question.id, estimate),
      tries: facts.contacts.filter((c) => c.about === 'answer' && c.at >= question.askedAt).length,
    };
  });
}

function amountOf(ctx: QueryCtx, ticket: TicketId, id: number, estimate: boolean): Cents {
  if (estimate) {
    const found = listEstimates(ctx.db, ticket).find((row) => row.id === id);
    return found?.before_tax_cents ?? sumCents([]);
  }
  const extras = listOptionsOf(ctx.db, id as Parameters<typeof listOptionsOf>[1]).map((o) => o.extra_cents);
  return extras.reduce((most, extra) => cents(Math.max(extra, most)), sumCents([]));
}
