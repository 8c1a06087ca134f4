/** Tickets as lists show them: from the projected rows, with what depends on today computed now. */
import { KIND_WORDS, type Kind, metalView } from '../../castings/compute.ts';
import type { ReadDb } from '../../db/query.ts';
import type { Day, Moment } from '../../kernel/days.ts';
import { type FormatSettings, formatCount, formatDayTime } from '../../kernel/format.ts';
import type { CastingId, CustomerId, TicketId } from '../../kernel/ids.ts';
import { isLate } from '../compute/tickets.ts';
import type { Chip, TicketWord } from '../compute/words.ts';

/** What a list depends on beside the file. */
export type Listing = Readonly<{ db: ReadDb; today: Day; minute: number; settings: FormatSettings }>;

type NowRow = ReturnType<typeof readNow>[number];
export type ListedTicket = ReturnType<typeof listTickets>[number];

/** These tickets in the order given; those without a projected row are left out. */
export function listTickets(listing: Listing, ids: readonly TicketId[]) {
  const { db } = listing;
  if (ids.length === 0) return [];
  const rows = new Map(readNow(db, ids).map((row) => [row.ticket_id, row]));
  const castings = Map.groupBy(readCastings(db, ids), (row) => row.ticket_id);
  const phones = readPhones(
    db,
    [...rows.values()].map((row) => row.customer_id),
  );
  return ids.flatMap((id) => {
    const row = rows.get(id);
    return row ? [viewOf(listing, row, castings.get(id) ?? [], phones.get(row.customer_id) ?? null)] : [];
  });
}

const readNow = (db: ReadDb, ids: readonly TicketId[]) =>
  db.all(
    db.q
      .selectFrom('ticket_now as n')
      .innerJoin('ticket as t', 't.id', 'n.ticket_id')
      .innerJoin('customer as c', 'c.id', 'n.customer_id')
      .leftJoin('engine_type as e', 'e.id', 't.engine_type_id')
      .leftJoin('customer_person as p', 'p.id', 't.contact_person_id')
      .innerJoin('terms as m', 'm.id', 'c.terms_id')
      .selectAll('n')
      .select([
        't.engine_words',
        't.order_number',
        't.quick',
        't.wanted_words',
        'c.short_name',
        'c.name as customer_name',
        'e.words as engine',
        'p.name as person',
        'm.kind as terms_kind',
        'c.on_stop_at',
      ])
      .where('n.ticket_id', 'in', [...ids]),
  );

const readCastings = (db: ReadDb, ids: readonly TicketId[]) =>
  db.all(
    db.q
      .selectFrom('casting as c')
      .innerJoin('casting_type as y', 'y.id', 'c.casting_type_id')
      .select([
        'c.id',
        'c.ticket_id',
        'c.tag_no',
        'c.kind',
        'c.material',
        'c.metal_confirmed_at',
        'c.out_at',
        'y.name as type_name',
      ])
      .where('c.ticket_id', 'in', [...ids])
      .orderBy('c.position_in_ticket'),
  );
type CastingRow = ReturnType<typeof readCastings>[number];

/** The first telephone of each customer. */
function readPhones(db: ReadDb, customers: readonly CustomerId[]): Map<CustomerId, string> {
  const rows = db.all(
    db.q
      .selectFrom('contact_point as c')
      .innerJoin('customer_person as p', 'p.id', 'c.customer_person_id')
      .select(['p.customer_id', 'c.value'])
      .where('p.customer_id', 'in', [...new Set(customers)])
      .where('c.kind', '=', 'phone')
      .where('c.retired_on', 'is', null)
      .orderBy('c.id', 'desc'),
  );
  return new Map(rows.map((row) => [row.customer_id, row.value]));
}

function viewOf(
  { today, minute, settings }: Listing,
  row: NowRow,
  castings: readonly CastingRow[],
  phone: string | null,
) {
  const word = row.word as TicketWord;
  const now = { day: today, minute };
  const promised =
    row.promised_on === null || row.promised_minute === null
      ? null
      : { day: row.promised_on, minute: row.promised_minute };
  const late = isLate(promised, { word, ready: row.ready === 1 }, now);
  return {
    ticketId: row.ticket_id,
    number: row.number,
    customerId: row.customer_id,
    customer: row.short_name,
    customerName: row.customer_name,
    person: row.person,
    phone,
    engineWords: row.engine_words ?? row.engine,
    orderNumber: row.order_number,
    line: lineWords(row, castings),
    tags: castings.map((one) => ({
      castingId: one.id as CastingId,
      tag: one.tag_no,
      metal: metalView(one.material, one.metal_confirmed_at),
    })),
    word,
    chips: chipsOf(row, late, today),
    promise: promised && { ...promised, ownTime: row.own_time === 1, words: formatDayTime(promised, settings), late },
    late,
    arrivedAt: row.arrived_at as Moment | null,
    over: row.over === 1,
    ready: row.ready === 1,
    whereWords: row.where_words,
    asked:
      row.unanswered === 0 ? null : { words: row.asked_words ?? '', kind: row.asked_kind, number: row.asked_number },
    /** Pays by invoice: net or end of month, and not on stop. */
    onAccount: row.terms_kind !== 'on_receipt' && row.on_stop_at === null,
    toldAt: row.told_at,
    toPay: row.to_pay_cents,
    balance: row.balance_cents,
    leftSeconds: row.left_s,
  };
}

/** "2 heads, V6 DOHC, order 7731"; the words of a quick ticket. */
function lineWords(row: NowRow, castings: readonly CastingRow[]): string {
  const kinds = new Map<Kind, number>();
  for (const { kind } of castings) kinds.set(kind, (kinds.get(kind) ?? 0) + 1);
  const things = [...kinds].map(([kind, count]) => formatCount(count, KIND_WORDS[kind].toLowerCase()));
  const engine =
    row.engine_words ?? row.engine ?? castings[0]?.type_name ?? (things.length === 0 ? row.wanted_words : null);
  const order = row.order_number === null ? null : `order ${row.order_number}`;
  return [...things, engine?.slice(0, 80), order].filter(Boolean).join(', ');
}

function chipsOf(row: NowRow, late: boolean, today: Day): Chip[] {
  const counted = (chip: 'held' | 'unanswered', count: number): Chip[] =>
    count === 0 ? [] : [{ chip, words: count === 1 ? chip : `${chip} (${count})`, count }];
  const plain = (chip: Chip['chip'], words: string, on: boolean): Chip[] => (on ? [{ chip, words, count: null }] : []);
  return [
    ...counted('held', row.held),
    ...counted('unanswered', row.unanswered),
    ...plain('rush', 'RUSH', row.rush === 1),
    ...plain('comeback', 'comeback', row.comeback === 1),
    ...plain('partly out', 'partly out', row.partly_out === 1),
    ...plain('goods still here', 'goods still here', row.goods_here === 1),
    ...plain('late', 'late', late),
    ...plain('overdue', 'overdue', row.due_on !== null && row.balance_cents > 0 && today > row.due_on),
  ];
}
