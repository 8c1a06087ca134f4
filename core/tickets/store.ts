/** Writes tickets, promises, contacts and the yes to an account that is stopped or over its limit. */
import { flag, type NewRow, type ReadDb, type WriteDb } from '../db/query.ts';
import type { Day } from '../kernel/days.ts';
import { badField, notFound, ruleBroken } from '../kernel/errors.ts';
import type { CustomerId, CustomerPersonId, Id, StaffId, TicketId } from '../kernel/ids.ts';
import { readTyped } from '../kernel/measure.ts';
import type { Nanometres } from '../kernel/units.ts';
import { findShop, findText, getShop, listHolidays, listOpenHours, takeNumber } from '../shop/store.ts';
import { type Calendar, isOpenDay, nextOpenDay, promiseMinute } from './compute/open-days.ts';

/** @throws AppError `not-found` */
export function getTicket(db: ReadDb, id: TicketId) {
  const row = db.one(db.q.selectFrom('ticket').selectAll().where('id', '=', id));
  if (!row) throw notFound('tickets/no-such-ticket', 'This ticket');
  return row;
}
export type TicketRow = ReturnType<typeof getTicket>;

/** @throws AppError `rule-broken` when the ticket takes no more goods or work. */
export function refuseClosed(ticket: Pick<TicketRow, 'number' | 'declined_at' | 'abandoned_at'>): void {
  if (ticket.declined_at !== null)
    throw ruleBroken('tickets/declined', `Ticket ${ticket.number} was declined. Open a new ticket for new work.`);
  if (ticket.abandoned_at !== null)
    throw ruleBroken('tickets/abandoned', `Ticket ${ticket.number} was abandoned. Open a new ticket for new work.`);
}

/** Fields of the requests to columns; engine and valve lift need their own reading. */
export const TICKET_COLUMNS = {
  customerId: 'customer_id',
  contactPersonId: 'contact_person_id',
  orderNumber: 'order_number',
  wantedWords: 'wanted_words',
  broughtBy: 'brought_by',
  engineWords: 'engine_words',
  useWords: 'use_words',
  gasket: 'gasket',
  fuelWords: 'fuel_words',
  historyWords: 'history_words',
  notes: 'notes',
  oldParts: 'old_parts',
  crackCheck: 'crack_check',
  certified: 'certified',
  declaredValue: 'declared_value_cents',
} as const;

/** What the counter types about a ticket. */
export type TicketFields = Readonly<{
  orderNumber: string | null;
  wantedWords: string | null;
  broughtBy: string | null;
  engine: string | null;
  engineWords: string | null;
  useWords: string | null;
  gasket: TicketRow['gasket'];
  valveLift: string | null;
  fuelWords: string | null;
  historyWords: string | null;
  notes: string | null;
  oldParts: TicketRow['old_parts'];
  crackCheck: TicketRow['crack_check'];
  certified: boolean;
  declaredValue: TicketRow['declared_value_cents'];
}>;

type NewTicket = Readonly<{
  customer: CustomerId;
  person: CustomerPersonId | null;
  fields: Partial<TicketFields>;
  arrived: Readonly<{ at: TicketRow['arrived_at']; by: StaffId }> | null;
  today: Day;
  quick?: boolean;
  rush?: TicketRow['rush_bp'];
}>;

/** Add a ticket with the next number. `path` names the fields in refusals. */
export function insertTicket(db: WriteDb, made: NewTicket, path = 'ticket'): { id: TicketId; number: number } {
  const number = takeNumber(db, 'ticket');
  const terms = findText(db, 'claim_terms', made.today);
  const id = db.add('ticket', {
    number,
    customer_id: made.customer,
    contact_person_id: made.person,
    quick: flag(made.quick ?? false),
    ...fieldColumns(db, made.fields, path),
    arrived_at: made.arrived?.at ?? null,
    taken_in_by: made.arrived?.by ?? null,
    price_day: made.today,
    rush_bp: made.rush ?? null,
    terms_text_id: terms?.id ?? null,
  } as NewRow<'ticket'>);
  return { id, number };
}

/** Typed fields as columns. @throws AppError `invalid-input` for an unknown engine or a lift that is no length. */
export function fieldColumns(db: ReadDb, fields: Partial<TicketFields>, path: string) {
  const { engine, valveLift, certified, ...plain } = fields;
  const columns = Object.fromEntries(
    Object.entries(plain).map(([field, value]) => [TICKET_COLUMNS[field as keyof typeof TICKET_COLUMNS], value]),
  ) as Partial<NewRow<'ticket'>>;
  return {
    ...columns,
    ...(certified !== undefined && { certified: flag(certified) }),
    ...(engine !== undefined && { engine_type_id: engineOf(db, engine, `${path}.engine`) }),
    ...(valveLift !== undefined && liftOf(db, valveLift, `${path}.valveLift`)),
  };
}

function engineOf(db: ReadDb, code: string | null, path: string): Id<'engine_type'> | null {
  if (code === null) return null;
  const found = db.one(db.q.selectFrom('engine_type').select('id').where('code', '=', code));
  if (!found)
    throw badField(
      'tickets/no-such-engine',
      path,
      `The catalogue has no engine "${code}". Choose one, or describe it in words.`,
    );
  return found.id;
}

/** A lift with its unit; bare digits are asked about, never guessed. */
function liftOf(
  db: ReadDb,
  typed: string | null,
  path: string,
): Pick<NewRow<'ticket'>, 'valve_lift_nm' | 'valve_lift_typed'> {
  if (typed === null) return { valve_lift_nm: null, valve_lift_typed: null };
  const unit = findShop(db)?.units === 'metric' ? 'mm' : 'in';
  const read = readTyped(typed, { family: 'length', unit, decimals: { in: 3, mm: 2 } });
  switch (read.kind) {
    case 'empty':
      return { valve_lift_nm: null, valve_lift_typed: null };
    case 'figure': {
      const kept = /[a-z"″µ]/i.test(read.typed) ? read.typed : `${read.typed} ${read.unit}`;
      return { valve_lift_nm: read.value as Nanometres, valve_lift_typed: kept.slice(0, 20) };
    }
    case 'ask':
      throw badField('tickets/lift-unit', path, read.question, {
        offers: read.choices.map((one) => ({ words: one.typed })),
      });
    case 'refused':
      throw badField('tickets/lift', path, read.message);
  }
}

/** Counter hours and holidays in force. */
export function calendarOf(db: ReadDb, part: 'counter' | 'bench' = 'counter'): Calendar {
  const all = listOpenHours(db);
  const hours = all.filter((one) => one.part === part);
  return { hours: hours.length > 0 ? hours : all, holidays: listHolidays(db).map((one) => one.day) };
}

/** Promises of a ticket, first one first. The last is in force. */
export const listPromises = (db: ReadDb, ticket: TicketId) =>
  db.all(
    db.q
      .selectFrom('promise as p')
      .leftJoin('staff as s', 's.id', 'p.created_by')
      .selectAll('p')
      .select('s.name as by')
      .where('p.ticket_id', '=', ticket)
      .orderBy('p.id'),
  );

type PromiseRow = NewRow<'promise'>;
type Wished = Readonly<{ day: Day; minute: number | null; dependsOn: string | null }>;

/**
 * Write a promise; `path` names the field in refusals.
 *
 * @throws AppError `invalid-input` for a closed or a past day.
 */
export function insertPromise(
  db: WriteDb,
  ticket: TicketId,
  wished: Wished,
  given: Readonly<{ today: Day; reason: PromiseRow['reason']; why: string | null; path: string }>,
): { id: Id<'promise'>; day: Day; minute: number } {
  const calendar = calendarOf(db);
  const field = `${given.path}.day`;
  if (!isOpenDay(calendar, wished.day)) {
    const next = nextOpenDay(calendar, wished.day);
    throw badField(
      'promises/closed-day',
      field,
      `The shop is closed that day. Pick another; the next open day is ${next}.`,
      {
        offers: [{ words: next }],
      },
    );
  }
  if (wished.day < given.today)
    throw badField('promises/past-day', field, 'That day is past. Pick today or a later day.');
  const minute = wished.minute ?? promiseMinute(calendar, wished.day, getShop(db).promise_minute);
  const id = db.add('promise', {
    ticket_id: ticket,
    on_day: wished.day,
    at_minute: minute,
    own_time: flag(wished.minute !== null),
    depends_on: wished.dependsOn,
    reason: given.reason,
    why: given.why,
  });
  return { id, day: wished.day, minute };
}

/** Work was begun on the ticket: some operation has a run or is finished. */
export const hasWork = (db: ReadDb, ticket: TicketId): boolean =>
  db.sql(
    `SELECT 1 FROM operation o WHERE o.ticket_id = ? AND (o.finished_at IS NOT NULL
     OR EXISTS (SELECT 1 FROM operation_run r WHERE r.operation_id = o.id)) LIMIT 1`,
    ticket,
  ).length > 0;

/** The ticket has an invoice. */
export const hasInvoice = (db: ReadDb, ticket: TicketId): boolean =>
  db.one(db.q.selectFrom('invoice').select('id').where('ticket_id', '=', ticket).limit(1)) !== undefined;

/** Somebody named said yes to go on although the account is stopped or over its limit; the last word counts. */
export function accountYes(db: ReadDb, ticket: TicketId, about: 'work' | 'release'): boolean {
  const last = db.one(
    db.q
      .selectFrom('account_yes')
      .select('ended')
      .where('ticket_id', '=', ticket)
      .where('about', '=', about)
      .orderBy('id', 'desc')
      .limit(1),
  );
  return last !== undefined && last.ended === 0;
}

/**
 * Nothing is ordered for a ticket whose account is stopped or over its limit before somebody named said yes.
 *
 * @throws AppError `rule-broken` `tickets/account-waits` while the hold of check-in is open
 */
export function refuseWaitingAccount(db: ReadDb, ticket: TicketId): void {
  const hold = db.one(
    db.q
      .selectFrom('hold')
      .select('words')
      .where('ticket_id', '=', ticket)
      .where('reason', '=', 'money')
      .where('casting_id', 'is', null)
      .where('operation_id', 'is', null)
      .where('closed_at', 'is', null),
  );
  if (!hold) return;
  const words = `${hold.words ?? 'The account waits for money.'} A lead or the owner says yes first.`;
  throw ruleBroken('tickets/account-waits', words, {
    offers: [
      {
        words: 'Say yes with a reason',
        request: 'tickets/give-account-yes',
        input: { ticketId: ticket, about: 'work' },
      },
    ],
  });
}
