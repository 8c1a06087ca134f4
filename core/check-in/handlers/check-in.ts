/** The one command of checking in. Everything is written, or nothing. */
import type { z } from 'zod';
import { customerOf, getCustomer } from '../../customers/store.ts';
import type { WriteDb } from '../../db/query.ts';
import { type Ctx, type Handlers, type PrepareCtx, personOf } from '../../host/implement.ts';
import { keptPicture } from '../../host/kept-file.ts';
import type { StoredFile } from '../../host/services.ts';
import { insertContainer } from '../../intake/store.ts';
import { badField, ruleBroken } from '../../kernel/errors.ts';
import { formatDayTime, formatMoney } from '../../kernel/format.ts';
import type { CustomerId, CustomerPersonId, TicketId } from '../../kernel/ids.ts';
import { type Cents, cents } from '../../kernel/units.ts';
import { wholeBill } from '../../lines/compute/ticket-bill.ts';
import { finishJob, openJob } from '../../lines/store/add-lines.ts';
import { readTicketMoney } from '../../lines/store/ticket-money.ts';
import { getShop, settingsOf } from '../../shop/store.ts';
import { fieldColumns, getTicket, insertPromise, insertTicket, refuseClosed } from '../../tickets/store.ts';
import type { checkInContract } from '../contract.ts';
import { holdForAccount, readAccount } from './account.ts';
import { setCeiling } from './ceiling.ts';
import { copyLimits } from './like.ts';
import { addCastings } from './new-castings.ts';
import { refuseNoDrawing, sign, signedWords } from './sign.ts';
import { addWish } from './wishes.ts';

type Input = z.output<(typeof checkInContract)['tickets/check-in-ticket']['input']>;
type Who = Readonly<{ id: CustomerId; person: CustomerPersonId | null; made: string | null }>;

export const checkingIn: Pick<Handlers<typeof checkInContract>, 'tickets/check-in-ticket'> = {
  'tickets/check-in-ticket': {
    prepare: async ({ signatureFile }, { services }: PrepareCtx) =>
      signatureFile === null ? null : keptPicture(signatureFile, services, 'signatureFile'),
    run(input, ctx, file: StoredFile | null) {
      const { db } = ctx;
      refuseNoDrawing(input.signed, file);
      if (input.castings.length === 0 && input.containers.length === 0) {
        throw badField('check-in/nothing-came', 'castings', 'Add a casting, or open an enquiry when nothing came yet.');
      }
      const who = customerOf(db, input.customer);
      const depositAsked = depositOf(db, input, who);
      const ticket = ticketOf(ctx, input, who, depositAsked);
      const added = addCastings(ctx, ticket.id, input.castings, 'castings');
      const containers = input.containers.map((one) => insertContainer(db, ticket.id, null, one));
      const notes = addWishes(
        ctx,
        ticket.id,
        input,
        added.castings.map((one) => one.castingId),
      );
      if (input.like !== null)
        copyLimits(
          db,
          input.like,
          added.castings.map((one) => one.castingId),
        );
      if (input.ceiling !== null) setCeiling(ctx, ticket.id, who.id, input.ceiling, who.person);
      const promise = promiseOf(ctx, ticket.id, input);
      if (input.signed !== null) sign(ctx, ticket.id, input.signed, file);
      dropDraft(ctx, input.draftId);
      const account = accountOf(ctx, ticket.id, who.id);
      const output = {
        ticketId: ticket.id,
        number: ticket.number,
        customerId: who.id,
        castings: added.castings,
        containers: containers.map((one) => ({ containerId: one.id, label: one.label })),
        account,
        promise,
        notes,
        papers: papersOf(added.castings, containers),
        depositAsked,
      };
      return { output, activity: activityOf(ticket, input, output, who), touched: [ticket.id, ...added.alsoTouched] };
    },
  },
};

/** The draft this came from is done with; one that is gone already is no reason to refuse. */
function dropDraft({ db, now, session }: Ctx, draft: Input['draftId']): void {
  if (draft === null || session.staff === null) return;
  db.run(
    db.q
      .updateTable('draft')
      .set({ dropped_at: now })
      .where('id', '=', draft)
      .where('staff_id', '=', session.staff)
      .where('dropped_at', 'is', null),
  );
}

/** A new ticket, or the enquiry that now brings its castings. */
function ticketOf(ctx: Ctx, input: Input, who: Who, depositAsked: Cents): { id: TicketId; number: number } {
  const { db, now, today } = ctx;
  const deposit =
    input.depositAsked === null || depositAsked === 0
      ? null
      : `Deposit asked: ${formatMoney(depositAsked, settingsOf(getShop(db)))}.`;
  const notes = [input.ticket.notes, deposit].filter((one) => one !== null).join('\n') || null;
  const fields = { ...input.ticket, notes };
  const arrived = { at: now, by: personOf(ctx) };
  if (input.enquiryId === null) {
    return insertTicket(db, { customer: who.id, person: who.person, fields, arrived, today, rush: input.rush });
  }
  const row = getTicket(db, input.enquiryId);
  refuseClosed(row);
  if (row.arrived_at !== null)
    throw ruleBroken('check-in/arrived', `Ticket ${row.number} is checked in already. Add the casting on its page.`);
  db.step('ticket', row.id, row.version, {
    ...fieldColumns(db, fields, 'ticket'),
    customer_id: who.id,
    contact_person_id: who.person,
    arrived_at: now,
    taken_in_by: arrived.by,
    price_day: today,
    rush_bp: input.rush,
  });
  return { id: row.id, number: row.number };
}

/** Adds every wish; words that are no operation join what is wanted. @returns sentences for the counter */
function addWishes(
  ctx: Ctx,
  ticket: TicketId,
  input: Input,
  castings: readonly Parameters<typeof addWish>[2][number][],
): string[] {
  const { db } = ctx;
  if (input.wishes.length === 0) return [];
  const job = openJob(db, ticket);
  const results = input.wishes.map((wish, index) => addWish(db, job, castings, wish, `wishes.${index}`));
  finishJob(db, job);
  const unread = [...new Set(results.flatMap((one) => one.unread))];
  if (unread.length > 0) {
    const row = getTicket(db, ticket);
    const wanted = [row.wanted_words, ...unread]
      .filter((one) => one !== null)
      .join('; ')
      .slice(0, 2000);
    db.step('ticket', ticket, row.version, { wanted_words: wanted });
  }
  return [...results.flatMap((one) => one.notes), ...unread.map((said) => `“${said}” is kept in their words.`)];
}

function promiseOf(ctx: Ctx, ticket: TicketId, input: Input) {
  if (input.promise === null) return null;
  const made = insertPromise(ctx.db, ticket, input.promise, {
    today: ctx.today,
    reason: 'first',
    why: null,
    path: 'promise',
  });
  return { day: made.day, minute: made.minute, words: formatDayTime(made, settingsOf(getShop(ctx.db))) };
}

/** The account with this ticket's own bill on top; stopped or over: the work waits. */
export function accountOf(ctx: Ctx, ticket: TicketId, customer: CustomerId) {
  const bill = wholeBill(readTicketMoney(ctx.db, ticket, ctx.today)).figures.total;
  const { state } = readAccount(ctx, customer, [bill]);
  holdForAccount(ctx, ticket, state);
  return state;
}

/** What the person typed, else what the shop asks of a retail customer nobody knew. */
function depositOf(db: WriteDb, input: Input, who: Who): Cents {
  if (input.depositAsked !== null) return input.depositAsked;
  const isNewRetail = who.made !== null && getCustomer(db, who.id).kind === 'retail';
  return isNewRetail ? getShop(db).deposit_new_retail_cents : cents(0);
}

type Casting = ReturnType<typeof addCastings>['castings'][number];

/** Claim ticket, a traveller and a tag a casting, a tag a bag: in the order of the pile. */
export function papersOf(
  castings: readonly Casting[],
  containers: readonly Readonly<{ id: Casting['containers'][number]['containerId']; label: string }>[],
) {
  const bags = [
    ...castings.flatMap((one) => one.containers.map((bag) => ({ bag, castingId: one.castingId }))),
    ...containers.map((one) => ({ bag: { containerId: one.id, label: one.label }, castingId: null })),
  ];
  return [
    { kind: 'claim' as const, castingId: null, containerId: null, words: 'Claim ticket' },
    ...castings.map((one) => ({
      kind: 'traveller' as const,
      castingId: one.castingId,
      containerId: null,
      words: `Traveller ${one.tagNo}`,
    })),
    ...castings.map((one) => ({
      kind: 'casting-tag' as const,
      castingId: one.castingId,
      containerId: null,
      words: `Tag ${one.tagNo}`,
    })),
    ...bags.map(({ bag, castingId }) => ({
      kind: 'bag-tag' as const,
      castingId,
      containerId: bag.containerId,
      words: `Tag ${bag.label}`,
    })),
  ];
}

type Output = Readonly<{ castings: readonly Casting[]; promise: { words: string } | null; account: { words: string } }>;

function activityOf(ticket: Readonly<{ id: TicketId; number: number }>, input: Input, output: Output, who: Who) {
  const tags = output.castings.map((one) => one.tagNo).join(', ');
  const line = (words: string) => ({ subject: ['ticket', ticket.id] as const, ticket: ticket.id, words });
  const more = [
    ...(who.made === null
      ? []
      : [{ subject: ['customer', who.id] as const, ticket: ticket.id, words: `Added customer ${who.made}` }]),
    ...output.castings.map((one) => ({
      subject: ['casting', one.castingId] as const,
      ticket: ticket.id,
      words: `Tagged ${one.tagNo}: ${one.title}, ${one.metal.word}`,
    })),
    ...output.castings.flatMap((one) => (one.identityHold === null ? [] : [line(`Held: ${one.identityHold}`)])),
    ...(output.promise === null ? [] : [line(`Promised for ${output.promise.words}`)]),
    ...(input.signed === null ? [] : [line(signedWords(input.signed))]),
    ...(output.account.words === '' ? [] : [line(output.account.words)]),
  ];
  return [
    line(tags === '' ? `Checked in ticket ${ticket.number}` : `Checked in ticket ${ticket.number}: ${tags}`),
    ...more,
  ] as const;
}
