/** Found rows as the find pane shows them. */
import { KIND_WORDS, metalView } from '../../castings/compute.ts';
import { personViews } from '../../customers/store/read.ts';
import { getCustomer } from '../../customers/store.ts';
import type { ReadDb } from '../../db/query.ts';
import type { Day, Moment } from '../../kernel/days.ts';
import { type FormatSettings, formatDay, formatDayTime, formatMoney, formatTime } from '../../kernel/format.ts';
import type { CastingId, CustomerId, TicketId } from '../../kernel/ids.ts';
import { cents } from '../../kernel/units.ts';
import { listTickets } from '../../state/store/ticket-rows.ts';
import { moreWords, type Sayable, sayThis } from '../compute/say.ts';
import { digitStretches, numberKey, placeOfKey, stretchesOf, type Typed } from '../compute/typed.ts';
import { type ByPhone, countOpen, owedBy, readCastings, readyPlaces } from './find.ts';

export type Looking = Readonly<{
  db: ReadDb;
  today: Day;
  minute: number;
  settings: FormatSettings;
  typed: Typed;
  local(at: Moment): Readonly<{ day: Day; minute: number }>;
}>;

type Foundby =
  | 'phone'
  | 'customer'
  | 'person'
  | 'ticket'
  | 'tag'
  | 'container'
  | 'stamp'
  | 'casting number'
  | 'order number'
  | 'engine'
  | 'words'
  | 'invoice';

/** A customer with whom is asked for, what is owed and when they last rang. */
export function customerView(looking: Looking, id: CustomerId, phone: ByPhone | undefined) {
  const { db, today, settings, typed } = looking;
  const c = getCustomer(db, id);
  const people = personViews({ db, settings }, id);
  const person =
    people.find((one) => one.personId === phone?.person) ??
    people.find((one) => stretchesOf(one.name, typed.words).length > 0) ??
    people[0];
  const shownPhone =
    phone?.value ??
    [person, ...people].flatMap((one) => one?.contacts ?? []).find((one) => one.kind === 'phone')?.value ??
    null;
  const terms = db.one(db.q.selectFrom('terms').select('words').where('id', '=', c.terms_id))?.words ?? '';
  const { owed, overdue } = owedBy(db, id, today);
  const inName = stretchesOf(c.name, typed.words);
  const byPerson =
    phone === undefined &&
    inName.length === 0 &&
    person !== undefined &&
    stretchesOf(person.name, typed.words).length > 0;
  const matched = phone?.value ?? (byPerson ? person.name : c.name);
  return {
    foundBy: (phone ? 'phone' : byPerson ? 'person' : 'customer') as Foundby,
    matched,
    hits: phone ? digitStretches(phone.value, phone.digits) : stretchesOf(matched, typed.words),
    customerId: id,
    name: c.name,
    accountWords: accountWords({ kind: c.kind, terms, onStop: c.on_stop_at !== null, owed, overdue }, settings),
    owed: cents(owed),
    person: person ? { personId: person.personId, name: person.name, approveWords: person.approveWords } : null,
    phone: shownPhone,
    phoneHits: phone && shownPhone ? digitStretches(shownPhone, phone.digits) : [],
    lastRang: lastRang(looking, id),
    openTickets: countOpen(db, id),
  };
}

type Account = Readonly<{ kind: 'retail' | 'trade'; terms: string; onStop: boolean; owed: number; overdue: number }>;

/** "account, net 30, not on stop. Owes 1,290.40, none overdue" */
function accountWords({ kind, terms, onStop, owed, overdue }: Account, settings: FormatSettings): string {
  const stop = onStop ? 'ON STOP' : 'not on stop';
  const head = kind === 'trade' ? `account, ${terms}, ${stop}` : onStop ? `retail, ${stop}` : 'retail';
  if (owed === 0) return `${head}. Owes nothing`;
  const late = overdue === 0 ? 'none overdue' : `${formatMoney(cents(overdue), settings)} overdue`;
  return `${head}. Owes ${formatMoney(cents(owed), settings)}, ${late}`;
}

function lastRang({ db, local, today, settings }: Looking, id: CustomerId): string | null {
  const row = db.one(
    db.q
      .selectFrom('contact_log')
      .select(['created_at', 'means'])
      .where('customer_id', '=', id)
      .orderBy('id', 'desc')
      .limit(1),
  );
  if (!row) return null;
  const at = local(row.created_at);
  return `last spoken ${at.day === today ? 'today' : formatDay(at.day)} ${formatTime(at.minute, settings)}`;
}

export type FoundTicket = Readonly<{ id: TicketId; foundBy: Foundby; column?: string }>;

/** Tickets with what to say. */
export function ticketViews(looking: Looking, found: readonly FoundTicket[]) {
  const { db, typed, settings } = looking;
  const listed = listTickets(
    looking,
    found.map((one) => one.id),
  );
  return listed.map((row) => {
    const how = found.find((one) => one.id === row.ticketId)?.foundBy ?? 'ticket';
    const matched =
      how === 'order number'
        ? (row.orderNumber ?? '')
        : how === 'engine'
          ? (row.engineWords ?? row.line)
          : how === 'ticket'
            ? String(row.number)
            : row.customerName;
    const sayable = sayableOf(looking, row);
    return {
      foundBy: how,
      matched,
      hits: how === 'ticket' ? [{ from: 0, until: matched.length }] : stretchesOf(matched, typed.words),
      ticketId: row.ticketId,
      number: row.number,
      customer: row.customer,
      customerId: row.customerId,
      line: row.line,
      tags: row.tags,
      say: sayThis(sayable, settings),
      word: row.word,
      wordMore: moreWords(sayable),
      chips: row.chips,
      open: !row.over,
    };
  });

  function sayableOf(from: Looking, row: (typeof listed)[number]): Sayable {
    const ready = row.ready && !row.over;
    return {
      word: row.word,
      whereWords: row.whereWords,
      promise: row.promise,
      asked: row.asked,
      toPay: row.toPay,
      onAccount: row.onAccount,
      places: ready ? readyPlaces(db, row.ticketId) : [],
      toldWords: row.toldAt === null ? null : formatDayTime(from.local(row.toldAt), settings),
    };
  }
}

export type FoundCasting = Readonly<{ id: CastingId; foundBy: Foundby; matched?: string }>;

type CastingRow = ReturnType<typeof readCastings>[number];

/** Castings in one line each. */
export function castingViews({ db, typed }: Looking, found: readonly FoundCasting[]) {
  const rows = readCastings(
    db,
    found.map((one) => one.id),
  );
  const again = Map.groupBy(rows, (row) => row.casting_number);
  return rows.map((row) => {
    const how = found.find((one) => one.id === row.id);
    const foundBy = how?.foundBy ?? 'tag';
    const matched = how?.matched ?? matchedOf(row, foundBy);
    const alike = foundBy === 'casting number' ? (again.get(row.casting_number) ?? []) : [];
    return {
      foundBy,
      matched,
      hits: foundBy === 'customer' ? stretchesOf(matched, typed.words) : numberHits(matched, typed),
      castingId: row.id,
      ticketId: row.ticket,
      ticketNumber: row.number,
      tag: row.tag_no,
      metal: metalView(row.material, row.metal_confirmed_at),
      line: `${row.casting_number === null ? '' : `no. ${row.casting_number}, `}${KIND_WORDS[row.kind].toLowerCase()}, ${row.type}`,
      second: secondWords(row, alike),
      customer: row.short_name,
      word: row.out_at === null ? (row.word ?? '') : 'released',
    };
  });
}

function matchedOf(row: CastingRow, foundBy: Foundby): string {
  if (foundBy === 'casting number') return row.casting_number ?? row.serial ?? '';
  if (foundBy === 'stamp') return row.shop_stamp ?? '';
  return foundBy === 'customer' ? row.short_name : String(row.tag_no);
}

/** "ticket 20455, stamp 40677, seen 3 times, last 30655". */
function secondWords(row: CastingRow, alike: readonly CastingRow[]): string {
  const stamp = row.shop_stamp === null ? '' : `, stamp ${row.shop_stamp}`;
  const seen =
    alike.length > 1 ? `, seen ${alike.length} times, last ${Math.max(...alike.map((one) => one.tag_no))}` : '';
  return `ticket ${row.number}${stamp}${seen}`;
}

/** Where the typed key stands in a number, signs between left in; `?` matches any character. */
function numberHits(shown: string, { key }: Typed): { from: number; until: number }[] {
  if (key === null) return [];
  const places = [...shown].flatMap((letter, index) => (numberKey(letter) === '' ? [] : [index]));
  const start = placeOfKey(places.map((index) => numberKey(shown[index] ?? '')).join(''), key);
  const from = places[start];
  const last = places[start + key.length - 1];
  return start < 0 || from === undefined || last === undefined ? [] : [{ from, until: last + 1 }];
}
