/** Small work over the counter: name, words, price, pay. A tag only if it stays. */
import { customerOf } from '../../customers/store.ts';
import { type Handlers, personOf } from '../../host/implement.ts';
import { formatDayTime } from '../../kernel/format.ts';
import { cents } from '../../kernel/units.ts';
import { addCharge } from '../../lines/store/add-charges.ts';
import { finishJob, openJob } from '../../lines/store/add-lines.ts';
import { getShop, settingsOf } from '../../shop/store.ts';
import { insertPromise, insertTicket } from '../../tickets/store.ts';
import type { checkInContract } from '../contract.ts';
import { readAccount } from './account.ts';
import { accountOf, papersOf } from './check-in.ts';
import { addCastings } from './new-castings.ts';

type Quick = Pick<Handlers<typeof checkInContract>, 'tickets/quick-ticket' | 'customers/get-account'>;

export const overTheCounter: Quick = {
  'tickets/quick-ticket': {
    run(input, ctx) {
      const { db, now, today } = ctx;
      const who = customerOf(db, input.customer);
      const fields = { wantedWords: input.words };
      const arrived = { at: now, by: personOf(ctx) };
      const ticket = insertTicket(db, { customer: who.id, person: who.person, fields, arrived, today, quick: true });
      const { castings, alsoTouched } = addCastings(
        ctx,
        ticket.id,
        input.casting === null ? [] : [input.casting],
        'casting',
      );
      const job = openJob(db, ticket.id);
      const charge = addCharge(db, job, castings[0]?.castingId ?? null, {
        kind: input.taxClass === 'labour_repair' || input.taxClass === 'labour_fabrication' ? 'text' : 'fee',
        words: input.words,
        quantity: input.quantity,
        price: input.price,
        priceWhy: 'agreed at the counter',
        taxClass: input.taxClass,
      });
      finishJob(db, job);
      const promise =
        input.promise === null
          ? null
          : insertPromise(db, ticket.id, input.promise, { today, reason: 'first', why: null, path: 'promise' });
      const output = {
        ticketId: ticket.id,
        number: ticket.number,
        customerId: who.id,
        castings,
        containers: [],
        account: accountOf(ctx, ticket.id, who.id),
        promise: promise && {
          day: promise.day,
          minute: promise.minute,
          words: formatDayTime(promise, settingsOf(getShop(db))),
        },
        notes: [],
        papers: papersOf(castings, []),
        depositAsked: cents(0),
      };
      return {
        output,
        activity: [
          {
            subject: ['ticket', ticket.id],
            ticket: ticket.id,
            words: `Quick ticket ${ticket.number}: ${input.words}`,
            after: { words: input.words, amount: charge.amount },
          },
        ],
        touched: [ticket.id, ...alsoTouched],
      };
    },
  },
  'customers/get-account': {
    run({ customerId }, ctx) {
      const { row, use, state } = readAccount(ctx, customerId);
      const known =
        ctx.db.one(ctx.db.q.selectFrom('ticket').select('id').where('customer_id', '=', row.id).limit(1)) !== undefined;
      return {
        ...state,
        owed: use.owed,
        overdue: use.overdue,
        standingInstruction: row.standing_instruction,
        depositSuggested: row.kind === 'retail' && !known ? getShop(ctx.db).deposit_new_retail_cents : cents(0),
      };
    },
  },
};
