/** What the requests about customers do. */
import { changeLine, mergeOrRefuse } from '../host/field-merge.ts';
import { implement, type QueryCtx } from '../host/implement.ts';
import type { Day } from '../kernel/days.ts';
import { badField, ruleBroken } from '../kernel/errors.ts';
import { getShop, settingsOf } from '../shop/store.ts';
import { customersContract } from './contract.ts';
import { customerPage, findCustomers, type Reading } from './store/read.ts';
import * as store from './store.ts';

const NAMES: Readonly<Record<string, string>> = {
  kind: 'the kind',
  name: 'the name',
  shortName: 'the short name',
  legalName: 'the legal name',
  trade: 'the trade',
  billingAddress: 'the address',
  deliveryAddress: 'the delivery address',
  route: 'the route',
  notes: 'the notes',
  needsOrderNumber: 'the order number rule',
  whoApproves: 'who approves',
  roleWords: 'the role',
  mayApprove: 'the right to approve',
  approveLimit: 'the limit',
  mayCollect: 'the right to collect',
  prefers: 'how to reach them',
};

const readingOf = (ctx: QueryCtx): Reading => ({
  db: ctx.db,
  today: ctx.today,
  settings: settingsOf(getShop(ctx.db)),
  local: ctx.local,
});

export const customers = implement(customersContract, {
  'customers/add-customer': {
    run(input, { db }) {
      const made = store.insertCustomer(db, input);
      return {
        output: {
          customerId: made.id,
          version: 1,
          persons: made.persons.map((person) => ({ personId: person.id, name: person.name })),
        },
        activity: [{ subject: ['customer', made.id], words: `Added customer ${input.name}`, after: input }],
      };
    },
  },
  'customers/change-customer': {
    run({ customerId, seenVersion, changes }, { db }) {
      const row = store.getCustomer(db, customerId);
      const now = { ...store.fieldsOf(row, store.CUSTOMER_COLUMNS), version: row.version };
      const { changed, takenOver } = mergeOrRefuse(db, {
        table: 'customer',
        id: row.id,
        seenVersion,
        now,
        changes,
        names: NAMES,
      });
      const version = db.step('customer', row.id, row.version, store.columnsOf(changed, store.CUSTOMER_COLUMNS));
      const words = `Changed customer ${row.name}: ${
        Object.keys(changed)
          .map((f) => NAMES[f] ?? f)
          .join(', ') || 'nothing'
      }`;
      return {
        output: { version, takenOver },
        activity: [changeLine({ subject: ['customer', row.id], words, before: now, fields: changed, version })],
      };
    },
  },
  'customers/add-person': {
    run({ customerId, person }, { db }) {
      const customer = store.getCustomer(db, customerId);
      const personId = store.insertPerson(db, customerId, person);
      return {
        output: { personId, version: 1 },
        activity: [
          { subject: ['customer', customerId], words: `Added ${person.name} for ${customer.name}`, after: person },
        ],
      };
    },
  },
  'customers/change-person': {
    run({ personId, seenVersion, changes, addContacts, dropContacts, retire }, { db, today }) {
      const row = store.getPerson(db, personId);
      const now = { ...store.fieldsOf(row, store.PERSON_COLUMNS), version: row.version };
      const { changed, takenOver } = mergeOrRefuse(db, {
        table: 'customer_person',
        id: row.id,
        seenVersion,
        now,
        changes,
        names: NAMES,
      });
      const mine = store.listContacts(db, row.customer_id).filter((c) => c.person === row.id);
      for (const contact of dropContacts) {
        if (!mine.some((c) => c.id === contact))
          throw badField(
            'customers/not-their-number',
            'dropContacts',
            'This number is not theirs any more. Load the page again.',
          );
        db.set('contact_point', contact, { retired_on: today });
      }
      for (const contact of addContacts) store.insertContact(db, row.id, contact);
      if (retire) refuseLastPerson(store.listPersons(db, row.customer_id).length);
      const version = db.step('customer_person', row.id, row.version, {
        ...store.columnsOf(changed, store.PERSON_COLUMNS),
        ...(retire && { retired_on: today as Day }),
      });
      const words = retire ? `${row.name} no longer speaks for the customer` : `Changed ${row.name}`;
      return {
        output: { version, takenOver },
        activity: [changeLine({ subject: ['customer_person', row.id], words, before: now, fields: changed, version })],
      };
    },
  },
  'customers/find-customer': {
    run({ text, limit }, ctx) {
      const found = findCustomers(readingOf(ctx), text, limit + 1);
      return { customers: found.slice(0, limit), more: found.length > limit };
    },
  },
  'customers/get-customer': {
    run: ({ customerId }, ctx) => customerPage(readingOf(ctx), customerId),
  },
  'customers/set-standing-instruction': {
    run({ customerId, seenVersion, words, proof }, { db }) {
      const row = store.getCustomer(db, customerId);
      const version = db.step('customer', row.id, seenVersion, {
        standing_instruction: words,
        instruction_proof_id: words === null ? null : proof,
      });
      const told =
        words === null
          ? `Ended the standing instruction of ${row.name}`
          : `Standing instruction of ${row.name}: ${words}`;
      return {
        output: { version },
        activity: [
          {
            subject: ['customer', row.id],
            words: told,
            before: { words: row.standing_instruction },
            after: { words, proof },
          },
        ],
      };
    },
  },
});

function refuseLastPerson(people: number): void {
  if (people <= 1)
    throw ruleBroken('customers/last-person', 'Somebody must speak for this customer. Add another person first.');
}
