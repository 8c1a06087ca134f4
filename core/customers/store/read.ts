/** Reads customers as lists and pages show them. */
import type { z } from 'zod';
import type { ReadDb } from '../../db/query.ts';
import type { Day, Moment } from '../../kernel/days.ts';
import type { FormatSettings } from '../../kernel/format.ts';
import type { CustomerId } from '../../kernel/ids.ts';
import { approveWords, digitSpellings, foldText, stopWords } from '../compute.ts';
import type { CustomerLine, CustomerPage, PersonView } from '../contract.ts';
import { getCustomer, listContacts, listPersons } from '../store.ts';

/** What the words of a page depend on. */
export type Reading = Readonly<{
  db: ReadDb;
  today: Day;
  settings: FormatSettings;
  local(at: Moment): { day: Day; minute: number };
}>;

/** People with their numbers. */
export function personViews(
  { db, settings }: Pick<Reading, 'db' | 'settings'>,
  customer: CustomerId,
): z.output<typeof PersonView>[] {
  const contacts = listContacts(db, customer);
  return listPersons(db, customer).map((p) => {
    const person = { mayApprove: p.may_approve === 1, approveLimit: p.approve_limit_cents };
    return {
      personId: p.id,
      name: p.name,
      roleWords: p.role_words,
      ...person,
      approveWords: approveWords(person, settings),
      mayCollect: p.may_collect === 1,
      prefers: p.prefers,
      contacts: contacts
        .filter((c) => c.person === p.id)
        .map((c) => ({ contactId: c.id, kind: c.kind, value: c.value })),
      version: p.version,
    };
  });
}

/** The stop as a sentence; null when the account is free. */
export const stopOf = (
  row: Readonly<{ on_stop_at: Moment | null; on_stop_why: string | null }>,
  local: Reading['local'],
): string | null => (row.on_stop_at === null ? null : stopWords(local(row.on_stop_at).day, row.on_stop_why ?? ''));

/** Everything about one customer. @throws AppError `not-found` */
export function customerPage(reading: Reading, id: CustomerId): z.output<typeof CustomerPage> {
  const { db } = reading;
  const c = getCustomer(db, id);
  const terms = db.one(db.q.selectFrom('terms').select(['id', 'code', 'words']).where('id', '=', c.terms_id));
  return {
    customerId: c.id,
    version: c.version,
    kind: c.kind,
    name: c.name,
    shortName: c.short_name,
    legalName: c.legal_name,
    printName: c.legal_name ?? c.name,
    trade: c.trade,
    billingAddress: c.billing_address,
    deliveryAddress: c.delivery_address,
    route: c.route,
    notes: c.notes,
    terms: { termsId: c.terms_id, code: terms?.code ?? '', words: terms?.words ?? '' },
    needsOrderNumber: c.needs_order_number === 1,
    creditLimit: c.credit_limit_cents,
    onStopAt: c.on_stop_at,
    onStopWhy: c.on_stop_why,
    stopWords: stopOf(c, reading.local),
    whoApproves: c.who_approves,
    priceList: c.price_list,
    labourDiscount: c.labour_discount_bp,
    partsDiscount: c.parts_discount_bp,
    overrun: c.overrun_bp,
    statement: c.statement,
    standingInstruction: c.standing_instruction,
    instructionSigned: c.instruction_proof_id !== null,
    mergedInto: c.merged_into_id,
    persons: personViews(reading, id),
    exemptions: exemptionsOf(reading, id),
    openTickets: openTickets(db, id),
  };
}

function exemptionsOf({ db, today }: Reading, customer: CustomerId) {
  const rows = db.all(
    db.q
      .selectFrom('tax_exemption as x')
      .leftJoin('tax_exemption_end as e', 'e.tax_exemption_id', 'x.id')
      .select(['x.id', 'x.tax_rate_code', 'x.certificate_no', 'x.words', 'x.from_on', 'x.until_on', 'e.ended_on'])
      .where('x.customer_id', '=', customer)
      .orderBy('x.from_on', 'desc'),
  );
  return rows.map((row) => {
    const last = [row.until_on, row.ended_on].filter((d): d is Day => d !== null).sort()[0] ?? null;
    const inForce = row.from_on <= today && (last === null || today <= last);
    const lapsed = last !== null && last < today ? `lapsed on ${last}: tax is charged` : '';
    return {
      exemptionId: row.id,
      taxCode: row.tax_rate_code,
      certificateNo: row.certificate_no,
      words: row.words,
      from: row.from_on,
      until: row.until_on,
      ended: row.ended_on,
      inForce,
      sentence: `Certificate ${row.certificate_no} ${inForce ? 'in force' : lapsed || `from ${row.from_on}`}.`,
    };
  });
}

/** Tickets that are neither declined, abandoned nor wholly out; newest first, at most 50. */
const openTickets = (db: ReadDb, customer: CustomerId) =>
  db.all(
    db.q
      .selectFrom('ticket as t')
      .select(['t.id as ticketId', 't.number', 't.engine_words as engineWords', 't.arrived_at as arrivedAt'])
      .where('t.customer_id', '=', customer)
      .where('t.declined_at', 'is', null)
      .where('t.abandoned_at', 'is', null)
      .where((eb) =>
        eb.or([
          eb.exists(
            eb
              .selectFrom('casting as c')
              .select('c.id')
              .whereRef('c.ticket_id', '=', 't.id')
              .where('c.out_at', 'is', null),
          ),
          eb.not(eb.exists(eb.selectFrom('casting as c').select('c.id').whereRef('c.ticket_id', '=', 't.id'))),
        ]),
      )
      .orderBy('t.number', 'desc')
      .limit(50),
  );

/** Customers as found, best known first: those whose number or name matches; newest first without text. */
export function findCustomers(reading: Reading, text: string, limit: number): z.output<typeof CustomerLine>[] {
  const { db, local } = reading;
  return matchingIds(db, text, limit).map((id) => {
    const c = getCustomer(db, id);
    const contacts = listContacts(db, id);
    const persons = listPersons(db, id);
    const spellings = digitSpellings(text).filter((digits) => digits.length >= 3);
    const folded = foldText(text);
    const contact =
      contacts.find((one) => spellings.some((digits) => one.digits?.includes(digits))) ??
      contacts.find((one) => one.kind === 'phone');
    const person =
      persons.find((one) => folded !== '' && foldText(one.name).includes(folded)) ??
      persons.find((one) => one.id === contact?.person) ??
      persons[0];
    const terms = db.one(db.q.selectFrom('terms').select('words').where('id', '=', c.terms_id));
    return {
      customerId: c.id,
      kind: c.kind,
      name: c.name,
      shortName: c.short_name,
      phone: contact?.value ?? '',
      personId: person?.id ?? null,
      person: person?.name ?? null,
      termsWords: terms?.words ?? '',
      onStop: c.on_stop_at !== null,
      stopWords: stopOf(c, local),
      needsOrderNumber: c.needs_order_number === 1,
      openTickets: openTickets(db, id).length,
    };
  });
}

function matchingIds(db: ReadDb, text: string, limit: number): CustomerId[] {
  const words = foldText(text.slice(0, 200))
    .split(' ')
    .filter((word) => word !== '');
  if (words.length === 0) {
    return db
      .all(
        db.q.selectFrom('customer').select('id').where('merged_into_id', 'is', null).orderBy('id', 'desc').limit(limit),
      )
      .map((row) => row.id);
  }
  const digits = digitSpellings(text).filter((one) => one.length >= 3);
  const byPhone = digits.length > 0 && /^[\d\s()+./-]+$/.test(text.trim()) ? idsByDigits(db, digits, limit) : [];
  const match = words.map((word) => `"${word}"*`).join(' ');
  const byName = db
    .sql<{ id: CustomerId }>(
      'SELECT rowid AS id FROM find_customer WHERE find_customer MATCH ? ORDER BY rowid DESC LIMIT ?',
      match,
      limit,
    )
    .map((row) => row.id);
  return [...new Set([...byPhone, ...byName])].slice(0, limit);
}

const idsByDigits = (db: ReadDb, spellings: readonly string[], limit: number): CustomerId[] =>
  spellings.flatMap((digits) =>
    db
      .sql<{ id: CustomerId }>(
        `SELECT DISTINCT p.customer_id AS id FROM find_phone f JOIN contact_point c ON c.id = f.rowid
         JOIN customer_person p ON p.id = c.customer_person_id
         WHERE find_phone MATCH ? AND c.retired_on IS NULL ORDER BY f.rowid DESC LIMIT ?`,
        `"${digits}"`,
        limit,
      )
      .map((row) => row.id),
  );
