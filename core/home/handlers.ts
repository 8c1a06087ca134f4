/** What the counter's first page shows. */
import { implement, type QueryCtx } from '../host/implement.ts';
import { addDays } from '../kernel/days.ts';
import type { TicketId } from '../kernel/ids.ts';
import { isLate } from '../state/compute/tickets.ts';
import type { TicketWord } from '../state/compute/words.ts';
import { hoursOf, nextOpenDay } from '../tickets/compute/open-days.ts';
import { calendarOf } from '../tickets/store.ts';
import { dayWords, ringBy, summaryWords } from './compute.ts';
import { homeContract } from './contract.ts';
import * as rows from './handlers/rows.ts';
import * as store from './store.ts';

/** Rows sent of one list; the count says how many there are. */
const MOST = 50;
const listOf = <T>(all: readonly T[]) => ({ rows: all.slice(0, MOST), count: all.length });

export const home = implement(homeContract, {
  'home/get-counter': {
    run(_, ctx) {
      const calendar = calendarOf(ctx.db);
      const open = hoursOf(calendar, ctx.today);
      const found = readAll(ctx, nextOpenDay(calendar, addDays(ctx.today, 1)));
      const look = rows.lookUp(ctx, found.tickets);
      const byId = new Map(found.tickets.map((t) => [t.ticket_id, t]));
      const with_ = <R extends { ticket_id: TicketId }, O>(
        list: readonly R[],
        view: (row: R, t: store.HomeTicket) => O,
      ) =>
        list.flatMap((row) => {
          const ticket = byId.get(row.ticket_id);
          return ticket ? [view(row, ticket)] : [];
        });
      const promisedToday = found.todays.map((t) => rows.promisedRow(look, t));
      const ringBack = [
        ...found.toRing.map((t) => rows.ringRow(look, t)),
        ...store.listCallsInVain(ctx.db).map((call) => rows.callRow(look, call)),
      ];
      const approvals = found.asked.filter((t) => t.arrived_at !== null);
      const by = ringBy(open?.until ?? null, ctx.minute, look.settings);
      const untold = found.ready.filter((t) => t.told_at === null).length;
      return {
        today: ctx.today,
        minute: ctx.minute,
        dayWords: dayWords(ctx.today),
        summary: summaryWords({
          promised: promisedToday.length,
          misses: promisedToday.filter((row) => row.misses).length,
          ring: found.late.length + ringBack.length + untold,
          approvals: approvals.length,
        }),
        open,
        missed: listOf(found.late.map((t) => rows.promisedRow(look, t))),
        ringBack: listOf(ringBack),
        ready: listOf(found.ready.map((t) => rows.readyRow(look, t))),
        approvals: listOf(approvals.map((t) => rows.askedRow(look, t))),
        holds: listOf(with_(found.holds, (hold, t) => rows.holdRow(look, t, hold))),
        quotes: listOf(found.asked.filter((t) => t.arrived_at === null).map((t) => rows.quoteRow(look, t))),
        promisedToday: listOf(promisedToday),
        tomorrow: listOf(
          found.tomorrow.map((t) => ({ ...rows.promisedRow(look, t), right: by, tone: 'close' as const })),
        ),
        due: listOf([
          ...found.parts.map((t) => rows.partRow(look, t)),
          ...with_(found.outside, (outside, t) => rows.outsideRow(look, t, outside)),
        ]),
      };
    },
  },
});

/** Every row of every list, and the tickets they are about. */
function readAll({ db, today, minute }: QueryCtx, nextDay: QueryCtx['today']) {
  const now = { day: today, minute };
  const late = store.listPromised(db, null, today).filter((t) => {
    const promise = { day: t.promised_on ?? today, minute: t.promised_minute ?? 0 };
    return isLate(promise, { word: t.word as TicketWord, ready: t.ready === 1 }, now);
  });
  const todays = store.listPromised(db, today, today);
  const tomorrow = store.listPromised(db, nextDay, nextDay).filter(rows.cannotBeDone);
  const ready = store.listReady(db);
  const asked = store.listAsked(db);
  const toRing = store.listToRing(db);
  const parts = store.listPartsDue(db, today);
  const holds = store.listHolds(db).filter((h) => h.owner_id === null || h.follow_up_on <= today);
  const outside = store.listOutsideDue(db, today);
  const others = store.listTickets(
    db,
    [...holds, ...outside].map((row) => row.ticket_id),
  );
  const tickets = [late, todays, tomorrow, ready, asked, toRing, parts, others].flat();
  return { late, todays, tomorrow, ready, asked, toRing, parts, holds, outside, tickets };
}
