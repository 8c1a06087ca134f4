/** The ticket with the people it concerns, as papers name them. */
import type { ReadDb } from '../../db/query.ts';
import type { CustomerId, CustomerPersonId, Id, TicketId } from '../../kernel/ids.ts';
import { getTicket } from '../../tickets/store.ts';
import type { Party } from '../contract/papers.ts';

/** The customer as papers print it. */
export const getPrintedCustomer = (db: ReadDb, id: CustomerId) => {
  const row = db.one(
    db.q
      .selectFrom('customer as c')
      .innerJoin('terms as t', 't.id', 'c.terms_id')
      .selectAll('c')
      .select(['t.words as terms_words'])
      .where('c.id', '=', id),
  );
  if (!row) throw new RangeError(`no customer ${id}`);
  return { ...row, printName: row.legal_name ?? row.name };
};

/** A person's first telephone number in use, else their first address; empty when none is known. */
function numberOf(db: ReadDb, person: CustomerPersonId | null): string {
  if (person === null) return '';
  const rows = db.all(
    db.q
      .selectFrom('contact_point')
      .select(['kind', 'value'])
      .where('customer_person_id', '=', person)
      .where('retired_on', 'is', null)
      .orderBy('id'),
  );
  return (rows.find(({ kind }) => kind === 'phone') ?? rows[0])?.value ?? '';
}

/** Everything of a ticket that heads its papers. */
export function readTicketPeople(db: ReadDb, id: TicketId) {
  const ticket = getTicket(db, id);
  const customer = getPrintedCustomer(db, ticket.customer_id);
  const person = db.one(
    db.q
      .selectFrom('customer_person')
      .select(['id', 'name'])
      .where('id', '=', ticket.contact_person_id ?? (0 as CustomerPersonId)),
  );
  return { ticket, customer, person: person ?? null, number: numberOf(db, person?.id ?? null) };
}

export type TicketPeople = ReturnType<typeof readTicketPeople>;

/** "Hill Road Garage" and "Mara, 555-0142"; the person is left out when they are the customer. */
export function partyOf({ customer, person, number }: TicketPeople): Party {
  const name = person && person.name !== customer.name ? person.name : '';
  const more = [name, number].filter(Boolean).join(', ');
  return { name: customer.printName, ...(more !== '' && { more }) };
}

/** Name of a person of the shop; empty when nobody is named. */
export const staffName = (db: ReadDb, id: Id<'staff'> | null): string =>
  id === null ? '' : (db.one(db.q.selectFrom('staff').select('name').where('id', '=', id))?.name ?? '');
