/** What the requests about accounts do. */
import { getCustomer } from '../customers/store.ts';
import { implement } from '../host/implement.ts';
import { badField, notFound, ruleBroken } from '../kernel/errors.ts';
import { termsContract } from './contract.ts';
import * as store from './store.ts';

export const terms = implement(termsContract, {
  'customers/put-on-stop': {
    run({ customerId, seenVersion, why }, { db, now }) {
      const row = getCustomer(db, customerId);
      if (row.on_stop_at !== null)
        throw ruleBroken('terms/on-stop', `${row.name} is on stop already: ${row.on_stop_why}.`);
      const version = db.step('customer', row.id, seenVersion, { on_stop_at: now, on_stop_why: why });
      return {
        output: { version },
        activity: [{ subject: ['customer', row.id], words: `Put ${row.name} on stop: ${why}`, after: { why } }],
        touched: ticketsOf(db, row.id),
      };
    },
  },
  'customers/lift-stop': {
    run({ customerId, seenVersion, why }, { db }) {
      const row = getCustomer(db, customerId);
      if (row.on_stop_at === null) throw ruleBroken('terms/not-on-stop', `${row.name} is not on stop.`);
      const version = db.step('customer', row.id, seenVersion, { on_stop_at: null, on_stop_why: null });
      return {
        output: { version },
        activity: [
          {
            subject: ['customer', row.id],
            words: `Lifted the stop of ${row.name}: ${why}`,
            before: { why: row.on_stop_why },
            after: { why },
          },
        ],
        touched: ticketsOf(db, row.id),
      };
    },
  },
  'customers/set-terms': {
    run({ customerId, seenVersion, ...typed }, { db }) {
      const row = getCustomer(db, customerId);
      const found = typed.terms === undefined ? undefined : store.findTerms(db, typed.terms);
      if (typed.terms !== undefined && !found)
        throw badField('terms/no-such-terms', 'terms', 'These terms are not known. Choose some from the list.');
      const overrun = typed.overrun ?? row.overrun_bp;
      const proof = typed.overrunProof === undefined ? row.overrun_proof_id : typed.overrunProof;
      if (overrun > 0 && proof === null) {
        throw badField(
          'terms/overrun-proof',
          'overrun',
          'An overrun needs the paper the customer signed. Keep it first.',
        );
      }
      const changes = {
        ...(found && { terms_id: found.id }),
        ...(typed.creditLimit !== undefined && { credit_limit_cents: typed.creditLimit }),
        ...(typed.labourDiscount !== undefined && { labour_discount_bp: typed.labourDiscount }),
        ...(typed.partsDiscount !== undefined && { parts_discount_bp: typed.partsDiscount }),
        ...(typed.priceList !== undefined && { price_list: typed.priceList }),
        ...(typed.statement !== undefined && { statement: typed.statement }),
        overrun_bp: overrun,
        overrun_proof_id: proof,
      };
      const version = db.step('customer', row.id, seenVersion, changes);
      const before = Object.fromEntries(Object.keys(changes).map((key) => [key, row[key as keyof typeof row]]));
      return {
        output: { version },
        activity: [{ subject: ['customer', row.id], words: `Set the terms of ${row.name}`, before, after: typed }],
        touched: ticketsOf(db, row.id),
      };
    },
  },
  'customers/add-terms': {
    run(input, { db }) {
      if (store.findTerms(db, input.code))
        throw badField('terms/code-used', 'code', `Terms with the code ${input.code} are there already.`);
      const termsId = store.insertTerms(db, input);
      return {
        output: { termsId },
        activity: [{ subject: ['terms', termsId], words: `Added terms: ${input.words}`, after: input }],
      };
    },
  },
  'customers/list-terms': {
    run: (_, { db }) => ({ terms: store.listTerms(db) }),
  },
  'customers/add-exemption': {
    run(input, { db }) {
      const row = getCustomer(db, input.customerId);
      if (input.until !== null && input.until < input.from) {
        throw badField('terms/days-crossed', 'until', 'The certificate ends before it begins. Look at both days.');
      }
      const exemptionId = db.add('tax_exemption', {
        customer_id: row.id,
        tax_rate_code: input.taxCode,
        certificate_no: input.certificateNo,
        words: input.words,
        from_on: input.from,
        until_on: input.until,
      });
      const words = `Tax certificate ${input.certificateNo} of ${row.name}`;
      return { output: { exemptionId }, activity: [{ subject: ['customer', row.id], words, after: input }] };
    },
  },
  'customers/end-exemption': {
    run({ exemptionId, on, why }, { db }) {
      const found = db.one(db.q.selectFrom('tax_exemption').selectAll().where('id', '=', exemptionId));
      if (!found) throw notFound('terms/no-such-certificate', 'This certificate');
      db.add('tax_exemption_end', { tax_exemption_id: exemptionId, ended_on: on, why });
      const words = `Tax certificate ${found.certificate_no} ended`;
      return { output: {}, activity: [{ subject: ['customer', found.customer_id], words, after: { on, why } }] };
    },
  },
});

/** Tickets whose money words may change with the account: those not yet all out. At most 500. */
const ticketsOf = (db: Parameters<typeof getCustomer>[0], customer: Parameters<typeof getCustomer>[1]) =>
  db
    .all(
      db.q
        .selectFrom('ticket as t')
        .select('t.id')
        .where('t.customer_id', '=', customer)
        .where((eb) =>
          eb.exists(
            eb
              .selectFrom('casting as c')
              .select('c.id')
              .whereRef('c.ticket_id', '=', 't.id')
              .where('c.out_at', 'is', null),
          ),
        )
        .limit(500),
    )
    .map((row) => row.id);
