/** Rows turned into what screens show: holds, queue rows, centres. */
import { KIND_WORDS, metalView } from '../../castings/compute.ts';
import type { LocalTime, QueryCtx } from '../../host/implement.ts';
import { type Day, daysBetween, type Moment } from '../../kernel/days.ts';
import type { StaffId } from '../../kernel/ids.ts';
import { getShop, settingsOf } from '../../shop/store.ts';
import { isLate } from '../../state/compute/tickets.ts';
import { HOLD_WORDS, type HoldReason, type OperationWord, type TicketWord } from '../../state/compute/words.ts';
import { capital, piecesWords, placeWords, promiseView, unitWords } from '../compute/bench-words.ts';
import { aheadWords, queueOrder } from '../compute/queue.ts';
import type { HoldRow, listCentres, listRunning, listTags, QueuedRow } from '../store/queue.ts';

/** A person as benches print them; null when nobody is named. */
export const who = (staff: StaffId | null, initials: string | null, name: string | null) =>
  staff === null ? null : { staff, initials: initials ?? '', name: name ?? '' };

/** An open hold with what it is on. */
export function holdView(row: HoldRow, { today, local }: Readonly<{ today: Day; local(at: Moment): LocalTime }>) {
  const tag = row.tag_no ?? row.operation_tag;
  return {
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
    tag,
    ticketNumber: row.number,
    customer: row.short_name,
  };
}

type CentreRow = ReturnType<typeof listCentres>[number];

export const centreView = ({ asked: _, castings, ...centre }: CentreRow) => ({
  ...centre,
  words: aheadWords(castings, centre.aheadSeconds),
});

/** Queue rows in their order, each told whether it keeps the set-up of the row above. */
export function queueViews(
  rows: readonly QueuedRow[],
  running: ReturnType<typeof listRunning>,
  { db, today, minute }: Pick<QueryCtx, 'db' | 'today' | 'minute'>,
) {
  const settings = settingsOf(getShop(db));
  const ordered = queueOrder(
    rows.map((row) => ({
      row,
      operationId: row.operation_id,
      rank: row.rank,
      promisedOn: row.promised_on,
      promisedMinute: row.promised_minute,
      rush: row.rush === 1,
      arrivedAt: row.arrived_at,
      setUpKey: row.set_up === '' ? '' : `${row.code} ${row.set_up}`,
    })),
  );
  return ordered.map(({ row, setUpKey }, index) => {
    const promise =
      row.promised_on === null || row.promised_minute === null
        ? null
        : { day: row.promised_on, minute: row.promised_minute, ownTime: row.own_time === 1 };
    const pieces = piecesWords(row.units, row.charge_unit);
    const place = placeWords(row.kind, row.side, row.position_in_ticket, row.of ?? 1);
    return {
      operationId: row.operation_id,
      version: row.version,
      castingId: row.casting_id,
      tag: row.tag_no,
      metal: metalView(row.material, row.metal_confirmed_at),
      words: capital(row.shop_words),
      second: [pieces, place, row.type_name, row.set_up, row.instruction].filter(Boolean).join(', '),
      units: row.units,
      unitWords: unitWords(row.units, row.charge_unit),
      setUp: row.set_up,
      sameSetUp: setUpKey !== '' && ordered[index - 1]?.setUpKey === setUpKey,
      customer: row.short_name,
      ticketNumber: row.number,
      promise: promiseView(promise, row.rush === 1, { day: today, minute }, settings),
      word: row.word as OperationWord,
      right: row.right_words,
      hold: row.hold_reason === null ? null : holdOf(row.hold_reason as HoldReason),
      mayStart: row.slot === 'next',
      running: running
        .filter((run) => run.operation_id === row.operation_id)
        .map((run) => ({ staff: run.staff_id, initials: run.initials, name: run.name, at: run.started_at })),
      plannedSeconds: row.planned_s,
      rank: row.rank,
      slot: row.slot,
    };
  });
}

const holdOf = (reason: HoldReason) => ({ reason, words: HOLD_WORDS[reason] });

/** A tag for a screen nobody signed in on. */
export function tagView(row: ReturnType<typeof listTags>[number], now: Readonly<{ day: Day; minute: number }>) {
  const promise = { day: row.promised_on as Day, minute: row.promised_minute ?? 0 };
  const state = { word: 'in work' as TicketWord, ready: row.ready === 1 };
  return {
    tag: row.tag_no,
    kindWords: KIND_WORDS[row.kind as keyof typeof KIND_WORDS],
    metal: metalView(row.material, row.metal_confirmed_at as Moment | null),
    next: row.next_words ?? (row.ready === 1 ? 'ready' : 'to be signed off'),
    centre: row.centre ?? '',
    held: row.slot === 'held',
    late: row.promised_on !== null && isLate(promise, state, now),
  };
}
