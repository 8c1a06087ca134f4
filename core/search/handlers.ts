/** The find box: one text, every kind of thing, by what the person may see. */
import { implement, type QueryCtx } from '../host/implement.ts';
import { readCode } from '../kernel/codes.ts';
import { formatCount } from '../kernel/format.ts';
import type { CustomerId, TicketId } from '../kernel/ids.ts';
import { getShop, settingsOf } from '../shop/store.ts';
import { readTyped, type Typed } from './compute/typed.ts';
import { searchContract } from './contract.ts';
import * as find from './store/find.ts';
import {
  castingViews,
  customerView,
  type FoundCasting,
  type FoundTicket,
  type Looking,
  ticketViews,
} from './store/views.ts';

export const search = implement(searchContract, {
  'search/find-anything': {
    run({ text, limit }, ctx) {
      const typed = readTyped(codeText(text) ?? text);
      const looking: Looking = {
        db: ctx.db,
        today: ctx.today,
        minute: ctx.minute,
        settings: settingsOf(getShop(ctx.db)),
        typed,
        local: ctx.local,
      };
      const seesPeople = ctx.session.may.has('tickets:see');
      if (typed.text === '')
        return { text: '', words: '', customers: [], tickets: [], castings: [], more: false, call: null };
      const people = seesPeople ? findPeople(looking, limit) : NOBODY;
      const found = seesPeople ? findTickets(looking, people.ids, limit) : [];
      const castings = findCastings(ctx, typed, limit, seesPeople);
      const customers = people.ids.slice(0, Math.min(limit, MOST_PEOPLE)).map((id) =>
        customerView(
          looking,
          id,
          people.phones.find((one) => one.customer === id),
        ),
      );
      const tickets = ticketViews(looking, found.slice(0, limit));
      const shown = castingViews(looking, castings.slice(0, limit));
      return {
        text: typed.text,
        words: summary(
          typed.text,
          customers.length,
          tickets.filter((one) => one.open).length,
          tickets.length,
          shown.length,
        ),
        customers,
        tickets,
        castings: shown,
        more: people.ids.length > customers.length || found.length > limit || castings.length > limit,
        call: callOf(customers, tickets),
      };
    },
  },
});

/** More people than a caller waits for: type more of the name. */
const MOST_PEOPLE = 8;

/** What a code reader typed: the number printed beside the code. */
const codeText = (text: string): string | undefined => readCode(text)?.number;

type People = Readonly<{ ids: readonly CustomerId[]; phones: readonly find.ByPhone[] }>;
const NOBODY: People = { ids: [], phones: [] };

/** Customers by telephone first, then by name. */
function findPeople({ db, typed }: Looking, limit: number): People {
  const phones = find.findPhones(db, typed, limit + 1);
  const byName =
    typed.phoneDigits !== null && phones.length > 0 ? [] : find.findCustomersByWords(db, typed.words, limit + 1);
  return { ids: [...new Set([...phones.map((one) => one.customer), ...byName])], phones };
}

/** The number itself, then open tickets of found customers, then other words; each ticket once, by its best reason. */
function findTickets({ db, typed }: Looking, customers: readonly CustomerId[], limit: number): FoundTicket[] {
  const found: FoundTicket[] = [];
  const add = (id: TicketId | undefined, foundBy: FoundTicket['foundBy']) => {
    if (id !== undefined) found.push({ id, foundBy });
  };
  if (typed.number !== null) {
    add(find.findTicketByNumber(db, typed.number), 'ticket');
    add(find.findTicketByInvoice(db, typed.number), 'invoice');
  }
  // A caller is one customer; for many the name itself is the answer.
  const few = customers.slice(0, 3);
  for (const customer of few) for (const id of find.openTicketsOf(db, customer, limit)) add(id, 'customer');
  const columns = { orders: 'order number', engine: 'engine', rest: 'words' } as const;
  for (const { ticket, column } of find.findTicketsByWords(db, typed.words, limit + 1)) add(ticket, columns[column]);
  const box = find.findContainer(db, typed.text.toUpperCase());
  if (box) add(box.ticket, 'container');
  return [...new Map([...found].reverse().map((one) => [one.id, one])).values()].reverse();
}

function findCastings({ db }: QueryCtx, typed: Typed, limit: number, seesPeople: boolean): FoundCasting[] {
  const found: FoundCasting[] = [];
  const tag = typed.number === null ? undefined : find.findCastingByTag(db, typed.number);
  if (tag !== undefined) found.push({ id: tag, foundBy: 'tag' });
  const box = find.findContainer(db, typed.text.toUpperCase());
  if (box?.casting) found.push({ id: box.casting, foundBy: 'container', matched: box.label });
  for (const id of find.findStamps(db, typed.text, limit + 1)) found.push({ id, foundBy: 'stamp' });
  if (typed.key !== null)
    for (const id of find.findNumbers(db, typed.key, limit + 1)) found.push({ id, foundBy: 'casting number' });
  if (!seesPeople)
    for (const id of find.findCastingsByShortName(db, typed.words, limit + 1)) found.push({ id, foundBy: 'customer' });
  return [...new Map([...found].reverse().map((one) => [one.id, one])).values()].reverse();
}

/** "1 customer, 3 open tickets"; what to do when nothing is found. */
function summary(text: string, customers: number, open: number, tickets: number, castings: number): string {
  const parts = [
    customers > 0 ? formatCount(customers, 'customer') : '',
    open > 0 ? formatCount(open, 'open ticket') : '',
    tickets - open > 0 ? formatCount(tickets - open, 'closed ticket') : '',
    castings > 0 ? formatCount(castings, 'casting') : '',
  ].filter((part) => part !== '');
  return parts.length > 0 ? parts.join(', ') : `Nothing under ${text}. Check the digits, or check in castings.`;
}

type Call = Readonly<{ customers: ReturnType<typeof customerView>[]; tickets: ReturnType<typeof ticketViews> }>;

/** What a call is logged against: the first customer with their newest ticket, else the first ticket. */
function callOf(customers: Call['customers'], tickets: Call['tickets']) {
  const [customer] = customers;
  const ticket = tickets.find((one) => customer === undefined || one.customerId === customer.customerId);
  const id = customer?.customerId ?? ticket?.customerId;
  if (id === undefined) return null;
  return {
    customerId: id,
    personId: customer?.person?.personId ?? null,
    ticketId: ticket?.ticketId ?? null,
    number: customer?.phone ?? null,
  };
}
