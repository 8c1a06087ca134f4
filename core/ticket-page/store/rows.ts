/** Lists of the ticket page that need no rule: holds, promises, calls, activity, releases. */

import type { ReadDb } from '../../db/query.ts';
import { type Day, daysBetween, type Moment } from '../../kernel/days.ts';
import { type FormatSettings, formatDayTime } from '../../kernel/format.ts';
import type { StaffId, TicketId } from '../../kernel/ids.ts';
import { listActivity } from '../../shop/store/activity-read.ts';
import { HOLD_WORDS } from '../../state/compute/words.ts';
import { listPromises } from '../../tickets/store.ts';
import { PROMISE_WORDS } from '../compute.ts';

export type Reading = Readonly<{
  db: ReadDb;
  today: Day;
  minute: number;
  settings: FormatSettings;
  local(at: Moment): Readonly<{ day: Day; minute: number }>;
}>;

/** "Mon 9 Mar 09:21" on the shop's clock. */
export const atWords = ({ local, settings }: Pick<Reading, 'local' | 'settings'>, at: Moment): string =>
  formatDayTime(local(at), settings);

/** A person as pages print them; null when nobody is named. */
export const who = (staff: StaffId | null, initials: string | null, name: string | null) =>
  staff === null ? null : { staff, initials: initials ?? '', name: name ?? '' };

/** Open holds, oldest first. */
export function holdViews({ db, today, local }: Reading, ticket: TicketId) {
  const rows = db.all(
    db.q
      .selectFrom('hold as h')
      .leftJoin('staff as o', 'o.id', 'h.owner_id')
      .leftJoin('staff as b', 'b.id', 'h.created_by')
      .leftJoin('casting as c', 'c.id', 'h.casting_id')
      .leftJoin('operation as p', 'p.id', 'h.operation_id')
      .leftJoin('operation_kind as k', 'k.id', 'p.operation_kind_id')
      .selectAll('h')
      .select([
        'o.initials as owner_initials',
        'o.name as owner_name',
        'b.initials as by_initials',
        'b.name as by_name',
        'c.tag_no',
        'k.shop_words',
      ])
      .where('h.ticket_id', '=', ticket)
      .where('h.closed_at', 'is', null)
      .orderBy('h.id'),
  );
  return rows.map((row) => ({
    id: row.id,
    ticketId: row.ticket_id,
    castingId: row.casting_id,
    operationId: row.operation_id,
    reason: row.reason,
    reasonWords: HOLD_WORDS[row.reason],
    words: row.words,
    onWhat: row.shop_words ?? (row.tag_no === null ? 'whole ticket' : 'this casting'),
    ownerRole: row.owner_role,
    owner: who(row.owner_id, row.owner_initials, row.owner_name),
    followUpOn: row.follow_up_on,
    due: row.follow_up_on <= today,
    openedAt: row.created_at,
    openedBy: who(row.created_by, row.by_initials, row.by_name),
    days: daysBetween(local(row.created_at).day, today),
    identity: row.reason === 'identity',
  }));
}

/** Promises, first one first. */
export const promiseViews = (reading: Reading, ticket: TicketId) =>
  listPromises(reading.db, ticket).map((row) => ({
    promiseId: row.id,
    day: row.on_day,
    minute: row.at_minute,
    ownTime: row.own_time === 1,
    words: formatDayTime({ day: row.on_day, minute: row.at_minute }, reading.settings),
    dependsOn: row.depends_on,
    reason: row.reason,
    reasonWords: PROMISE_WORDS[row.reason],
    why: row.why,
    at: row.created_at,
    by: row.by ?? '',
  }));

/** "moved once: crack, weld out"; empty when it never moved. */
export function movedWords(promises: ReturnType<typeof promiseViews>): string {
  const moves = promises.slice(1);
  const last = moves.at(-1);
  if (!last) return '';
  const count = moves.length === 1 ? 'once' : moves.length === 2 ? 'twice' : `${moves.length} times`;
  return `moved ${count}: ${last.why ?? last.reasonWords}`;
}

/** Calls and messages about the ticket, newest first. */
export const contactViews = (reading: Reading, ticket: TicketId) =>
  reading.db
    .all(
      reading.db.q
        .selectFrom('contact_log as l')
        .leftJoin('customer_person as p', 'p.id', 'l.person_id')
        .leftJoin('staff as s', 's.id', 'l.created_by')
        .selectAll('l')
        .select(['p.name as person', 's.name as by'])
        .where('l.ticket_id', '=', ticket)
        .orderBy('l.id', 'desc')
        .limit(100),
    )
    .map((row) => ({
      contactId: row.id,
      at: row.created_at,
      atWords: atWords(reading, row.created_at),
      means: row.means,
      about: row.about,
      person: row.person,
      number: row.number_or_address,
      words: row.words,
      reached: row.reached === 1,
      by: row.by ?? '',
    }));

const MOST_ACTIVITY = 60;

export const activityViews = (reading: Reading, ticket: TicketId) =>
  listActivity(reading.db, { ticket, limit: MOST_ACTIVITY })
    .slice(0, MOST_ACTIVITY)
    .map((row) => ({
      id: row.id,
      at: row.at as Moment,
      atWords: atWords(reading, row.at as Moment),
      by: row.by,
      words: row.words,
    }));

const PROOFS = { claim_ticket: 'claim ticket', identity: 'identity paper', known: 'known to us' } as const;

/** Hand-overs, newest first. */
export const releaseViews = (reading: Reading, ticket: TicketId) =>
  reading.db
    .all(
      reading.db.q
        .selectFrom('release as r')
        .leftJoin('staff as s', 's.id', 'r.created_by')
        .selectAll('r')
        .select('s.name as by')
        .where('r.ticket_id', '=', ticket)
        .orderBy('r.id', 'desc'),
    )
    .map((row) => ({
      releaseId: row.id,
      at: row.created_at,
      takenBy: row.taken_by,
      words: `${row.taken_by} took it ${atWords(reading, row.created_at)}, ${PROOFS[row.proof]}${row.unpaid_why === null ? '' : `, unpaid: ${row.unpaid_why}`}`,
    }));
