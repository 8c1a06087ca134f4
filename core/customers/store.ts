/** Writes customers, their people and numbers. */
import type { z } from 'zod';
import { flag, type ReadDb, type WriteDb } from '../db/query.ts';
import type { CustomerTable } from '../db/schema.ts';
import { badField, notFound } from '../kernel/errors.ts';
import type { CustomerId, CustomerPersonId, Id } from '../kernel/ids.ts';
import { basisPoints } from '../kernel/units.ts';
import { digitsOf, shortNameOf } from './compute.ts';
import type { ContactInput, CustomerWish, NewCustomer, PersonInput } from './contract.ts';

type Contact = z.output<typeof ContactInput>;
type Person = z.output<typeof PersonInput>;
export type New = z.output<typeof NewCustomer>;

/** @throws AppError `not-found` */
export function getCustomer(db: ReadDb, id: CustomerId) {
  const row = db.one(db.q.selectFrom('customer').selectAll().where('id', '=', id));
  if (!row) throw notFound('customers/no-such-customer', 'This customer');
  return row;
}

/** @throws AppError `not-found` */
export function getPerson(db: ReadDb, id: CustomerPersonId) {
  const row = db.one(db.q.selectFrom('customer_person').selectAll().where('id', '=', id));
  if (!row) throw notFound('customers/no-such-person', 'This person');
  return row;
}

/** People who still speak for the customer, in the order they were added. */
export const listPersons = (db: ReadDb, customer: CustomerId) =>
  db.all(
    db.q
      .selectFrom('customer_person')
      .selectAll()
      .where('customer_id', '=', customer)
      .where('retired_on', 'is', null)
      .orderBy('id'),
  );

/** Numbers and addresses in use, in the order they were added. */
export const listContacts = (db: ReadDb, customer: CustomerId) =>
  db.all(
    db.q
      .selectFrom('contact_point as c')
      .innerJoin('customer_person as p', 'p.id', 'c.customer_person_id')
      .select(['c.id', 'c.customer_person_id as person', 'c.kind', 'c.value', 'c.digits'])
      .where('p.customer_id', '=', customer)
      .where('p.retired_on', 'is', null)
      .where('c.retired_on', 'is', null)
      .orderBy('c.id'),
  );

/** Terms of a new customer: due on receipt; made when the shop has none of the kind yet. */
function usualTerms(db: WriteDb): Id<'terms'> {
  const found = db.one(
    db.q
      .selectFrom('terms')
      .select('id')
      .where('kind', '=', 'on_receipt')
      .where('retired_on', 'is', null)
      .orderBy('id'),
  );
  return found?.id ?? db.add('terms', { code: 'due', words: 'due on receipt', kind: 'on_receipt', days: 0 });
}

/** Add a customer with people and numbers. Without people: one of the customer's own name. */
export function insertCustomer(
  db: WriteDb,
  typed: New,
): { id: CustomerId; persons: { id: CustomerPersonId; name: string }[] } {
  const id = db.add('customer', {
    kind: typed.kind,
    name: typed.name,
    short_name: typed.shortName ?? shortNameOf(typed.name, typed.kind),
    legal_name: typed.legalName,
    trade: typed.trade,
    billing_address: typed.billingAddress,
    delivery_address: typed.deliveryAddress,
    route: typed.route,
    notes: typed.notes,
    terms_id: usualTerms(db),
    needs_order_number: flag(typed.needsOrderNumber),
    who_approves: typed.whoApproves,
    price_list: 'standard',
    labour_discount_bp: basisPoints(0),
    parts_discount_bp: basisPoints(0),
    overrun_bp: basisPoints(0),
  });
  const own: Person = {
    name: typed.name,
    roleWords: null,
    mayApprove: true,
    approveLimit: null,
    mayCollect: true,
    prefers: 'call',
    contacts: [],
  };
  const people = typed.persons.length > 0 ? typed.persons : [own];
  return { id, persons: people.map((person) => ({ id: insertPerson(db, id, person), name: person.name })) };
}

export function insertPerson(db: WriteDb, customer: CustomerId, person: Person): CustomerPersonId {
  const id = db.add('customer_person', {
    customer_id: customer,
    name: person.name,
    role_words: person.roleWords,
    may_approve: flag(person.mayApprove),
    approve_limit_cents: person.approveLimit,
    may_collect: flag(person.mayCollect),
    prefers: person.prefers,
  });
  for (const contact of person.contacts) insertContact(db, id, contact);
  return id;
}

export const insertContact = (db: WriteDb, person: CustomerPersonId, { kind, value }: Contact): Id<'contact_point'> =>
  db.add('contact_point', {
    customer_person_id: person,
    kind,
    value,
    digits: kind === 'phone' ? digitsOf(value).slice(0, 30) || null : null,
  });

/** What a wish comes to: the customer and the person to speak to, made when it is new. @throws AppError `not-found` */
export function customerOf(
  db: WriteDb,
  wish: z.output<typeof CustomerWish>,
): { id: CustomerId; person: CustomerPersonId | null; made: string | null } {
  if ('add' in wish) {
    const made = insertCustomer(db, wish.add);
    return { id: made.id, person: made.persons[0]?.id ?? null, made: wish.add.name };
  }
  const customer = getCustomer(db, wish.customerId);
  // A customer that was merged goes on under the one it was merged into.
  const id = customer.merged_into_id ?? customer.id;
  if (wish.personId !== null && getPerson(db, wish.personId).customer_id !== id) {
    throw badField(
      'customers/other-person',
      'customer.personId',
      'This person does not speak for this customer. Pick another.',
    );
  }
  return { id, person: wish.personId ?? listPersons(db, id)[0]?.id ?? null, made: null };
}

/** Field names of the requests to columns. */
export const CUSTOMER_COLUMNS = {
  kind: 'kind',
  name: 'name',
  shortName: 'short_name',
  legalName: 'legal_name',
  trade: 'trade',
  billingAddress: 'billing_address',
  deliveryAddress: 'delivery_address',
  route: 'route',
  notes: 'notes',
  needsOrderNumber: 'needs_order_number',
  whoApproves: 'who_approves',
} as const satisfies Readonly<Record<string, keyof CustomerTable>>;

export const PERSON_COLUMNS = {
  name: 'name',
  roleWords: 'role_words',
  mayApprove: 'may_approve',
  approveLimit: 'approve_limit_cents',
  mayCollect: 'may_collect',
  prefers: 'prefers',
} as const;

/** Fields under their request names; flags as yes and no. */
export const fieldsOf = (row: Readonly<Record<string, unknown>>, columns: Readonly<Record<string, string>>) =>
  Object.fromEntries(
    Object.entries(columns).map(([field, column]) => [field, isFlag(column) ? row[column] === 1 : row[column]]),
  );

/** Request fields as columns. */
export const columnsOf = (fields: Readonly<Record<string, unknown>>, columns: Readonly<Record<string, string>>) =>
  Object.fromEntries(
    Object.entries(fields).flatMap(([field, value]) => {
      const column = columns[field];
      return column === undefined ? [] : [[column, typeof value === 'boolean' ? Number(value) : value]];
    }),
  );

const FLAGS = [
  'needs_order_number',
  'may_approve',
  'may_collect',
  'certified',
  'close_tolerance',
  'bare',
  'came_assembled',
];
const isFlag = (column: string): boolean => FLAGS.includes(column);
