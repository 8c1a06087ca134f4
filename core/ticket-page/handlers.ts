/** The ticket page and a casting, composed from facts. */
import { implement, type QueryCtx } from '../host/implement.ts';
import { notFound } from '../kernel/errors.ts';
import type { CastingId, TicketId } from '../kernel/ids.ts';
import { readIdentities } from '../racks/store/goods.ts';
import { getShop, settingsOf } from '../shop/store.ts';
import { ticketNow } from '../state/compute/tickets.ts';
import { loadFacts } from '../state/store/load-facts.ts';
import { ticketPageContract } from './contract.ts';
import { readPage } from './store/page.ts';
import { holdViews, type Reading } from './store/rows.ts';
import { castingViews, operationViews } from './store/work.ts';

const readingOf = (ctx: QueryCtx): Reading => ({
  db: ctx.db,
  today: ctx.today,
  minute: ctx.minute,
  settings: settingsOf(getShop(ctx.db)),
  local: ctx.local,
});

export const ticketPage = implement(ticketPageContract, {
  'tickets/get-ticket': {
    run: (of, ctx) => readPage(readingOf(ctx), 'ticketId' in of ? of.ticketId : idOfNumber(ctx, of.number)),
  },
  'castings/get-casting': {
    run(of, ctx) {
      const reading = readingOf(ctx);
      const found = findCasting(ctx, of);
      const now = ticketNow(loadFacts(ctx.db, found.ticketId));
      const holds = holdViews(reading, found.ticketId);
      const operations = operationViews(reading, now, []);
      const casting = castingViews(
        reading,
        now,
        readIdentities(ctx.db, found.ticketId, reading.settings).castings,
        operations,
        holds,
      ).find((one) => one.castingId === found.castingId);
      if (!casting) throw notFound('castings/no-such-casting', 'This casting');
      return {
        ...casting,
        customer: found.customer,
        ticketWord: now.word,
        identityInDoubt: holds.some(
          (one) => one.identity && (one.castingId === null || one.castingId === found.castingId),
        ),
      };
    },
  },
});

function idOfNumber({ db }: QueryCtx, number: number): TicketId {
  const row = db.one(db.q.selectFrom('ticket').select('id').where('number', '=', number));
  if (!row) throw notFound('tickets/no-such-ticket', `Ticket ${number}`);
  return row.id;
}

function findCasting({ db }: QueryCtx, of: Readonly<{ castingId: CastingId }> | Readonly<{ tag: number }>) {
  const rows = db.q
    .selectFrom('casting as c')
    .innerJoin('ticket as t', 't.id', 'c.ticket_id')
    .innerJoin('customer as u', 'u.id', 't.customer_id')
    .select(['c.id as castingId', 't.id as ticketId', 'u.short_name as customer']);
  const row = db.one('castingId' in of ? rows.where('c.id', '=', of.castingId) : rows.where('c.tag_no', '=', of.tag));
  if (!row) throw notFound('castings/no-such-casting', 'tag' in of ? `Tag ${of.tag}` : 'This casting');
  return row;
}
