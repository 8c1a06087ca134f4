/** What the requests about the agreement do. */
import { customerOf, getCustomer, getPerson, listPersons } from '../customers/store.ts';
import { changeLine, mergeOrRefuse } from '../host/field-merge.ts';
import { type Ctx, implement, personOf } from '../host/implement.ts';
import { AppError, badField, ruleBroken } from '../kernel/errors.ts';
import { formatDayTime } from '../kernel/format.ts';
import type { CustomerId, TicketId } from '../kernel/ids.ts';
import { getShop, settingsOf } from '../shop/store.ts';
import { ticketsContract } from './contract.ts';
import * as store from './store.ts';

const NAMES: Readonly<Record<string, string>> = {
  customerId: 'the customer',
  contactPersonId: 'the person to ask',
  orderNumber: 'the order number',
  wantedWords: 'what is wanted',
  broughtBy: 'who brought it',
  engine: 'the engine',
  engineWords: 'the engine',
  useWords: 'the use',
  gasket: 'the gasket',
  valveLift: 'the valve lift',
  fuelWords: 'the fuel',
  historyWords: 'the history',
  notes: 'the notes',
  oldParts: 'the old parts',
  crackCheck: 'the crack check',
  certified: 'the guard band',
  declaredValue: 'the declared value',
};

export const tickets = implement(ticketsContract, {
  'tickets/open-enquiry': {
    run({ customer, ...fields }, { db, today }) {
      const who = customerOf(db, customer);
      const made = store.insertTicket(db, { customer: who.id, person: who.person, fields, arrived: null, today }, '');
      return {
        output: { ticketId: made.id, number: made.number, customerId: who.id },
        activity: [
          { subject: ['ticket', made.id], ticket: made.id, words: `Opened enquiry ${made.number}`, after: fields },
        ],
        touched: [made.id],
      };
    },
  },
  'tickets/change-ticket': {
    run({ ticketId, seenVersion, changes }, { db }) {
      const row = store.getTicket(db, ticketId);
      const now = fieldsNow(db, row);
      const { changed, takenOver } = mergeOrRefuse(db, {
        table: 'ticket',
        id: row.id,
        seenVersion,
        now,
        changes,
        names: NAMES,
      });
      refuseCustomerChange(db, row, changed);
      const version = db.step('ticket', row.id, row.version, {
        ...store.fieldColumns(db, changed, 'changes'),
        ...speakerOfNew(db, changed),
      });
      const words = `Changed ticket ${row.number}: ${
        Object.keys(changed)
          .map((f) => NAMES[f] ?? f)
          .join(', ') || 'nothing'
      }`;
      return {
        output: { version, takenOver },
        activity: [
          changeLine({ subject: ['ticket', row.id], words, ticket: row.id, before: now, fields: changed, version }),
        ],
        touched: [row.id],
      };
    },
  },
  'tickets/decline-ticket': {
    run({ ticketId, seenVersion, why }, { db, now }) {
      const row = store.getTicket(db, ticketId);
      store.refuseClosed(row);
      if (store.hasWork(db, row.id)) {
        throw ruleBroken(
          'tickets/work-begun',
          `Work has begun on ticket ${row.number}. Stop it through added work, so that what is done is paid.`,
        );
      }
      if (store.hasInvoice(db, row.id))
        throw ruleBroken('tickets/invoiced', `Ticket ${row.number} is invoiced. Make a credit note instead.`);
      const version = db.step('ticket', row.id, seenVersion, { declined_at: now, declined_why: why });
      return {
        output: { version },
        activity: [
          {
            subject: ['ticket', row.id],
            ticket: row.id,
            words: `Declined ticket ${row.number}: ${why}`,
            after: { why },
          },
        ],
        touched: [row.id],
      };
    },
  },
  'tickets/log-contact': {
    run(input, { db }) {
      const ticket = input.ticketId === null ? null : store.getTicket(db, input.ticketId);
      const customer = getCustomer(db, input.customerId);
      if (ticket && ticket.customer_id !== customer.id) {
        throw badField(
          'tickets/other-customer',
          'customerId',
          `Ticket ${ticket.number} is another customer's. Load the page again.`,
        );
      }
      if (input.personId !== null && getPerson(db, input.personId).customer_id !== customer.id) {
        throw badField(
          'tickets/other-person',
          'personId',
          'This person does not speak for this customer. Pick another.',
        );
      }
      const contactId = db.add('contact_log', {
        ticket_id: input.ticketId,
        customer_id: input.customerId,
        person_id: input.personId,
        means: input.means,
        number_or_address: input.numberOrAddress,
        about: input.about,
        words: input.words,
        reached: input.reached ? 1 : 0,
      });
      const words = input.reached
        ? `Spoke with ${customer.name} (${input.means}): ${input.words}`
        : `Tried to reach ${customer.name}: ${input.words}`;
      return {
        output: { contactId },
        activity: [{ subject: ['contact_log', contactId], ticket: input.ticketId, words, after: input }],
        touched: input.ticketId === null ? [] : [input.ticketId],
      };
    },
  },
  'promises/set-promise': {
    run({ ticketId, promise, reason, why, seenPromiseId }, { db, today }) {
      const row = store.getTicket(db, ticketId);
      store.refuseClosed(row);
      const last = store.listPromises(db, ticketId).at(-1);
      refuseOtherPromise(last, seenPromiseId, db);
      if (last && reason === 'first')
        throw badField('promises/not-first', 'reason', 'There is a promise already. Say why it changes.');
      if (reason === 'other' && why === null)
        throw badField('promises/no-why', 'why', 'Write why the promise changes.');
      const made = store.insertPromise(db, ticketId, promise, {
        today,
        reason: last ? reason : 'first',
        why,
        path: 'promise',
      });
      const words = formatDayTime(made, settingsOf(getShop(db)));
      return {
        output: { promiseId: made.id, day: made.day, minute: made.minute, words },
        activity: [
          {
            subject: ['promise', made.id],
            ticket: ticketId,
            words: last
              ? `Moved the promise of ${row.number} to ${words}${why === null ? '' : `: ${why}`}`
              : `Promised ${row.number} for ${words}`,
            before: last ? { day: last.on_day, minute: last.at_minute } : null,
            after: { day: made.day, minute: made.minute, reason },
          },
        ],
        touched: [ticketId],
      };
    },
  },
  'tickets/give-account-yes': {
    run: ({ ticketId, about, why }, ctx) => giveYes(ctx, ticketId, about, why),
  },
});

function giveYes(ctx: Ctx, ticketId: TicketId, about: 'work' | 'release', why: string) {
  const { db, now, session } = ctx;
  const row = store.getTicket(db, ticketId);
  const by = personOf(ctx);
  const id = db.add('account_yes', { ticket_id: ticketId, customer_id: row.customer_id, about, why });
  if (about === 'work') {
    // The hold that check-in opened for the account; other money holds have their own follow-up.
    const held = db.all(
      db.q
        .selectFrom('hold')
        .select('id')
        .where('ticket_id', '=', ticketId)
        .where('reason', '=', 'money')
        .where('casting_id', 'is', null)
        .where('operation_id', 'is', null)
        .where('closed_at', 'is', null),
    );
    for (const hold of held) db.set('hold', hold.id, { closed_at: now, closed_by: by, closed_words: why });
  }
  const words = about === 'work' ? 'Work may go on' : 'Goods may go out';
  return {
    output: { words: `${words}: ${session.name}, ${why}` },
    activity: [
      {
        subject: ['account_yes', id],
        ticket: ticketId,
        words: `${words} on ticket ${row.number}: ${why}`,
        after: { about, why },
      },
    ] as const,
    touched: [ticketId],
  };
}

/** What stands on the ticket under the names of the request. */
function fieldsNow(db: Ctx['db'], row: store.TicketRow): Record<string, unknown> {
  const plain = Object.fromEntries(Object.entries(store.TICKET_COLUMNS).map(([field, column]) => [field, row[column]]));
  const engine =
    row.engine_type_id === null
      ? null
      : db.one(db.q.selectFrom('engine_type').select('code').where('id', '=', row.engine_type_id))?.code;
  return { ...plain, certified: row.certified === 1, engine, valveLift: row.valve_lift_typed, version: row.version };
}

/** Another customer brings another person to speak to. */
function speakerOfNew(db: Ctx['db'], changed: Readonly<Record<string, unknown>>) {
  if (changed.customerId === undefined || changed.contactPersonId !== undefined) return {};
  return { contact_person_id: listPersons(db, changed.customerId as CustomerId)[0]?.id ?? null };
}

function refuseCustomerChange(db: Ctx['db'], row: store.TicketRow, changed: Readonly<Record<string, unknown>>): void {
  if (changed.customerId !== undefined && store.hasInvoice(db, row.id)) {
    throw badField(
      'tickets/customer-fixed',
      'changes.customerId',
      `Ticket ${row.number} is invoiced; its customer stays. Make a credit note and a new ticket.`,
    );
  }
  const person = changed.contactPersonId;
  const customer = (changed.customerId ?? row.customer_id) as store.TicketRow['customer_id'];
  if (typeof person === 'number' && getPerson(db, person as never).customer_id !== customer) {
    throw badField(
      'tickets/other-person',
      'changes.contactPersonId',
      'This person does not speak for this customer. Pick another.',
    );
  }
}

function refuseOtherPromise(
  last: ReturnType<typeof store.listPromises>[number] | undefined,
  seen: number | null | undefined,
  db: Ctx['db'],
): void {
  if (!last || seen === undefined || last.id === seen) return;
  const theirs = formatDayTime({ day: last.on_day, minute: last.at_minute }, settingsOf(getShop(db)));
  throw new AppError(
    'conflict',
    'promises/changed-meanwhile',
    `${last.by ?? 'Somebody'} changed the promise to ${theirs} while you had it open. Your day is kept; look and save again.`,
    { facts: { promiseId: last.id, day: last.on_day, minute: last.at_minute, by: last.by } },
  );
}
