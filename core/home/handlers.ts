/** What the counter's first page shows. */
import { implement, type QueryCtx } from '../host/implement.ts';
import { addDays } from '../kernel/days.ts';
import { hoursOf, nextOpenDay } from '../tickets/compute/open-days.ts';
import { calendarOf } from '../tickets/store.ts';
import { dayWords, ringBy, summaryWords } from './compute.ts';
import { homeContract } from './contract.ts';
import * as rows from './handlers/rows.ts';
import * as store from './store.ts';

/** The rows of a list as they are shown. */
const shown = <R, O>({ rows: found, count }: store.Listed<R>, view: (row: R) => O | null) => ({
  rows: found.map(view).filter((row) => row !== null),
  count,
});

export const home = implement(homeContract, {
  'home/get-counter': {
    run(_, ctx) {
      const calendar = calendarOf(ctx.db);
      const open = hoursOf(calendar, ctx.today);
      const found = readAll(ctx, nextOpenDay(calendar, addDays(ctx.today, 1)));
      const look = rows.lookUp(ctx, found.tickets);
      const byId = new Map(found.tickets.map((t) => [t.ticket_id, t]));
      const promisedToday = shown(found.todays, (t) => rows.promisedRow(look, t));
      const toRing = shown(found.toRing, (t) => rows.ringRow(look, t));
      const calls = found.calls.map((call) => rows.callRow(look, call));
      const by = ringBy(open?.until ?? null, ctx.minute, look.settings);
      const outside = found.outside.flatMap((one) => {
        const ticket = byId.get(one.ticket_id);
        return ticket ? [rows.outsideRow(look, ticket, one)] : [];
      });
      const parts = shown(found.parts, (t) => rows.partRow(look, t));
      return {
        today: ctx.today,
        minute: ctx.minute,
        dayWords: dayWords(ctx.today),
        summary: summaryWords({
          promised: promisedToday.count,
          misses: promisedToday.rows.filter((row) => row.misses).length,
          ring: found.missed.count + toRing.count + calls.length + store.countUntold(ctx.db),
          approvals: found.asked.count,
        }),
        open,
        missed: shown(found.missed, (t) => rows.promisedRow(look, t)),
        ringBack: { rows: [...toRing.rows, ...calls].slice(0, store.MOST), count: toRing.count + calls.length },
        ready: shown(found.ready, (t) => rows.readyRow(look, t)),
        approvals: shown(found.asked, (t) => rows.askedRow(look, t)),
        holds: shown(found.holds, (hold) => {
          const ticket = byId.get(hold.ticket_id);
          return ticket ? rows.holdRow(look, ticket, hold) : null;
        }),
        quotes: shown(found.quotes, (t) => rows.quoteRow(look, t)),
        promisedToday,
        tomorrow: shown(found.tomorrow, (t) => ({ ...rows.promisedRow(look, t), right: by, tone: 'close' as const })),
        due: { rows: [...parts.rows, ...outside].slice(0, store.MOST), count: parts.count + outside.length },
      };
    },
  },
});

/** Every row of every list, and the tickets they are about. */
function readAll({ db, today, minute }: QueryCtx, nextDay: QueryCtx['today']) {
  const lists = {
    missed: store.listMissed(db, today, minute),
    todays: store.listPromised(db, today),
    tomorrow: store.listStuck(db, nextDay),
    ready: store.listReady(db),
    asked: store.listAsked(db),
    quotes: store.listQuotes(db),
    toRing: store.listToRing(db),
    parts: store.listPartsDue(db, today),
  };
  const holds = store.listHolds(db, today);
  const outside = store.listOutsideDue(db, today);
  const others = store.listTickets(
    db,
    [...holds.rows, ...outside].map((row) => row.ticket_id),
  );
  const tickets = [...Object.values(lists).flatMap((list) => list.rows), ...others];
  return { ...lists, holds, outside, calls: store.listCallsInVain(db), tickets };
}
