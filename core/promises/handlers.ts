/** Lists of tickets by promise, and what could be promised. */
import type { z } from 'zod';
import { implement, type QueryCtx } from '../host/implement.ts';
import type { Day } from '../kernel/days.ts';
import { daysBetween } from '../kernel/days.ts';
import { formatAge, formatDayTime } from '../kernel/format.ts';
import type { TicketId } from '../kernel/ids.ts';
import { getShop, settingsOf } from '../shop/store.ts';
import { type ListedTicket, listTickets } from '../state/store/ticket-rows.ts';
import { hoursOf, nextOpenDay, promiseMinute, workedShare } from '../tickets/compute/open-days.ts';
import { suggestPromise } from '../tickets/compute/promise.ts';
import { calendarOf, getTicket, listPromises } from '../tickets/store.ts';
import { promisesContract } from './contract.ts';
import * as store from './store.ts';

type Asked = z.output<(typeof promisesContract)['promises/get-suggestion']['input']>;
/** A bench that says no hours: eight a day. */
const USUAL_OPEN = 8 * 3600;

const listingOf = ({ db, today, minute }: QueryCtx) => ({ db, today, minute, settings: settingsOf(getShop(db)) });

/** The fields of the contract; the rest is for other lists. */
const rowOf = (one: ListedTicket) => ({
  ticketId: one.ticketId,
  number: one.number,
  customerId: one.customerId,
  customer: one.customer,
  person: one.person,
  phone: one.phone,
  engineWords: one.engineWords,
  orderNumber: one.orderNumber,
  line: one.line,
  tags: one.tags,
  word: one.word,
  chips: one.chips,
  promise: one.promise,
  arrivedAt: one.arrivedAt,
});

export const promises = implement(promisesContract, {
  'tickets/list-open': {
    run({ word, customerId, all, limit }, ctx) {
      let rows = ctx.db.q.selectFrom('ticket_now').select('ticket_id');
      if (word !== undefined) rows = rows.where('word', '=', word);
      else if (!all) rows = rows.where('over', '=', 0);
      if (customerId !== undefined) rows = rows.where('customer_id', '=', customerId);
      const ids = ctx.db.all(rows.orderBy('number', 'desc').limit(limit + 1)).map((row) => row.ticket_id);
      return { tickets: listTickets(listingOf(ctx), ids.slice(0, limit)).map(rowOf), more: ids.length > limit };
    },
  },
  'promises/list-due': {
    run({ day = undefined }, ctx) {
      const on: Day = day ?? ctx.today;
      const ids = ctx.db.all(
        ctx.db.q
          .selectFrom('ticket_now')
          .select('ticket_id')
          .where('promised_on', '=', on)
          .where('over', '=', 0)
          .where('word', 'not in', ['collected', 'declined', 'abandoned'])
          .orderBy('promised_minute')
          .orderBy('ticket_id')
          .limit(500),
      );
      return {
        day: on,
        tickets: listTickets(
          listingOf(ctx),
          ids.map((row) => row.ticket_id),
        ).map(rowOf),
      };
    },
  },
  'promises/list-late': {
    run(_, ctx) {
      const ids = ctx.db.all(
        ctx.db.q
          .selectFrom('ticket_now')
          .select('ticket_id')
          .where('promise_open', '=', 1)
          .where('promised_on', '<=', ctx.today)
          .orderBy('promised_on')
          .orderBy('promised_minute')
          .limit(500),
      );
      const late = listTickets(
        listingOf(ctx),
        ids.map((row) => row.ticket_id),
      ).filter((one) => one.late);
      return { tickets: late.map((one) => ({ ...rowOf(one), lateWords: lateWords(one, ctx) })) };
    },
  },
  'promises/get-suggestion': { run: suggest },
});

/** "missed by 40 min", "missed by 2 days". */
function lateWords({ promise }: ListedTicket, { today, minute }: QueryCtx): string {
  if (!promise) return '';
  const minutes = daysBetween(promise.day, today) * 1440 + minute - promise.minute;
  return `missed by ${formatAge(minutes)}`;
}

function suggest(asked: Asked, ctx: QueryCtx) {
  const { db, today, minute } = ctx;
  const bench = calendarOf(db, 'bench');
  const { start, now } = workedShare(bench, today, minute);
  const shop = getShop(db);
  const before =
    'ticketId' in asked
      ? placeOf(ctx, asked.ticketId)
      : { ticket: null, promisedOn: null, arrivedAt: null, rush: asked.rush };
  const centres = store.readCentres(db, store.readQueues(db, before));
  const castings =
    'ticketId' in asked
      ? store.stepsOfTicket(db, asked.ticketId)
      : asked.castings.map((one, index) => store.stepsOfThought(db, one, `casting ${index + 1}`, today));
  const hours = hoursOf(bench, start);
  const answer = suggestPromise({
    start,
    now,
    calendar: bench,
    openSeconds: hours ? (hours.until - hours.from) * 60 : USUAL_OPEN,
    centres,
    castings,
    buffer: shop.buffer_bp,
  });
  const dayOf = (day: Day | null) => day && promised(ctx, day);
  const centre = answer.bottleneck === null ? null : (centres[answer.bottleneck]?.name ?? answer.bottleneck);
  return {
    earliest: dayOf(answer.earliest),
    comfortable: dayOf(answer.comfortable),
    bottleneck: centre === null ? null : { centre, words: `${centre} is the bottleneck` },
    dependsOn: [...answer.dependsOn],
    working: answer.castings.flatMap((one) => one.working.map((line) => `${one.label}: ${line}`)),
  };
}

/** The day at the shop's usual hour; the counter must be open to hand over, so a bench day may roll on. */
function promised({ db }: QueryCtx, worked: Day) {
  const counter = calendarOf(db, 'counter');
  const day = nextOpenDay(counter, worked);
  const minute = promiseMinute(counter, day, getShop(db).promise_minute);
  return { day, minute, words: formatDayTime({ day, minute }, settingsOf(getShop(db))) };
}

function placeOf({ db }: QueryCtx, ticket: TicketId) {
  const row = getTicket(db, ticket);
  const last = listPromises(db, ticket).at(-1);
  return {
    ticket,
    promisedOn: last?.on_day ?? null,
    arrivedAt: row.arrived_at,
    rush: row.rush_bp !== null && row.rush_lost_at === null,
  };
}
