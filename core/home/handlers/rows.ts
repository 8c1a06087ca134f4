/** Rows of the counter's first page: each says what is the matter, and leads to where it is done. */
import { metalView } from '../../castings/compute.ts';
import type { QueryCtx } from '../../host/implement.ts';
import { type Day, daysBetween, type Moment } from '../../kernel/days.ts';
import { formatCount, formatDay, formatMoney } from '../../kernel/format.ts';

import { getShop, settingsOf } from '../../shop/store.ts';
import { HOLD_WORDS, type TicketWord } from '../../state/compute/words.ts';
import { goingWords, leftWords, minutesLeft, untilWords, whenWords } from '../compute.ts';
import type { HomeRow } from '../contract.ts';
import * as store from '../store.ts';

type Ticket = store.HomeTicket;
/** Tags printed on a row; the others are counted. */
const TAGS = 3;

/** Castings, people and places of all rows, read at once. */
export function lookUp(ctx: QueryCtx, tickets: readonly Ticket[]) {
  const ids = [...new Set(tickets.map((t) => t.ticket_id))];
  return {
    ctx,
    settings: settingsOf(getShop(ctx.db)),
    castings: Map.groupBy(store.listCastings(ctx.db, ids), (row) => row.ticket_id),
    people: new Map(store.listPeople(ctx.db, ids).map((row) => [row.ticket_id, row])),
    places: Map.groupBy(store.listPlaces(ctx.db, ids), (row) => row.ticket_id),
  };
}
export type Look = ReturnType<typeof lookUp>;

type Said = Readonly<{
  words: string;
  right: string;
  tone?: HomeRow['tone'];
  at?: Moment | null;
  screen?: HomeRow['target']['screen'];
  focus?: number | null;
}>;

/** The common part of every row of a ticket. */
function rowOf(look: Look, ticket: Ticket, said: Said): HomeRow {
  const castings = look.castings.get(ticket.ticket_id) ?? [];
  const person = look.people.get(ticket.ticket_id);
  return {
    target: {
      screen: said.screen ?? 'ticket',
      ticketId: ticket.ticket_id,
      customerId: ticket.customer_id,
      focus: said.focus ?? null,
    },
    ticketNumber: ticket.number,
    customer: ticket.short_name,
    person: person?.name ?? null,
    phone: person?.phone ?? null,
    tags: castings
      .slice(0, TAGS)
      .map((c) => ({ tag: c.tag_no, metal: metalView(c.material, c.metal_confirmed_at as Moment | null) })),
    moreTags: Math.max(0, castings.length - TAGS),
    words: said.words,
    right: said.right,
    tone: said.tone ?? 'plain',
    chips: chipsOf(ticket),
    at: said.at ?? null,
  };
}

function chipsOf(ticket: Ticket): HomeRow['chips'] {
  const chips: HomeRow['chips'] = [];
  if (ticket.rush === 1) chips.push({ chip: 'rush', words: 'RUSH', count: null });
  if (ticket.held > 0) chips.push({ chip: 'held', words: 'held', count: ticket.held });
  if (ticket.comeback === 1) chips.push({ chip: 'comeback', words: 'comeback', count: null });
  if (ticket.partly_out === 1) chips.push({ chip: 'partly out', words: 'partly out', count: null });
  return chips;
}

const timeOf = ({ ctx, settings }: Look, at: Moment): string => whenWords(ctx.local(at), ctx.today, settings);

/** Minutes until the promise. */
const leftOf = ({ ctx }: Look, ticket: Ticket): number =>
  minutesLeft(
    { day: ctx.today, minute: ctx.minute },
    { day: ticket.promised_on ?? ctx.today, minute: ticket.promised_minute ?? 0 },
  );

/** A promise and how it goes. */
export function promisedRow(look: Look, ticket: Ticket) {
  const left = leftOf(look, ticket);
  const going = goingWords({
    ready: ticket.ready === 1,
    told: ticket.told_at === null ? null : timeOf(look, ticket.told_at),
    blocked: ticket.stuck === 1,
    where: ticket.where_words,
    work: ticket.left_s,
    left,
  });
  return {
    ...rowOf(look, ticket, { words: going.words, right: leftWords(left), tone: going.tone }),
    word: ticket.word as TicketWord,
    day: ticket.promised_on ?? look.ctx.today,
    minute: ticket.promised_minute ?? 0,
    ownTime: ticket.own_time === 1,
    left,
    leftWords: leftWords(left),
    misses: going.misses,
  };
}

/** Ready to be told, or told and still here. */
export function readyRow(look: Look, ticket: Ticket) {
  const { told_at: told } = ticket;
  const places = (look.places.get(ticket.ticket_id) ?? []).map((p) => p.code).join(', ');
  const pieces = formatCount(look.castings.get(ticket.ticket_id)?.length ?? 0, 'casting');
  const said: Said = {
    words: [places === '' ? 'not put away' : places, pieces].join(', '),
    right: told === null ? 'tell them' : `told ${timeOf(look, told)}`,
    tone: told === null ? 'hold' : 'plain',
    at: told,
  };
  return { ...rowOf(look, ticket, said), toPay: ticket.to_pay_cents };
}

/** An estimate or added work without an answer. */
export function askedRow(look: Look, ticket: Ticket): HomeRow {
  const { asked_at: asked, asked_end: end, asked_kind: kind, asked_number: number } = ticket;
  const until = end === null ? '' : untilWords(end, look.ctx.local, look.ctx.today, look.settings);
  const isAdded = kind === 'added work';
  return rowOf(look, ticket, {
    words: isAdded ? `${ticket.asked_words ?? ''} A${number ?? ''}` : (ticket.asked_words ?? ''),
    right: [asked === null ? null : `asked ${timeOf(look, asked)}`, until].filter(Boolean).join(', '),
    tone: isOver(look, end) ? 'hold' : 'plain',
    at: asked,
    screen: isAdded ? 'added-work' : 'estimate',
    focus: ticket.asked_id,
  });
}

function isOver({ ctx }: Look, end: string | null): boolean {
  if (end === null) return false;
  return end.length === 10 ? end < ctx.today : end < ctx.now;
}

/** Somebody of a ticket was not reached. */
export const ringRow = (look: Look, ticket: Ticket): HomeRow =>
  rowOf(look, ticket, {
    words: ticket.ring_words ?? '',
    right: ticket.ring_at === null ? '' : `called ${timeOf(look, ticket.ring_at)}`,
    at: ticket.ring_at,
  });

/** A call in vain that belongs to no ticket. */
export const callRow = (look: Look, call: ReturnType<typeof store.listCallsInVain>[number]): HomeRow => ({
  target: { screen: 'customer', ticketId: null, customerId: call.customer_id, focus: call.id },
  ticketNumber: null,
  customer: call.short_name,
  person: call.person,
  phone: call.number_or_address,
  tags: [],
  moreTags: 0,
  words: call.words,
  right: `called ${timeOf(look, call.created_at)}`,
  tone: 'plain',
  chips: [],
  at: call.created_at,
});

/** A hold whose day has come, or that nobody looks after. */
export function holdRow(look: Look, ticket: Ticket, hold: store.HeldRow) {
  const days = daysBetween(look.ctx.local(hold.created_at).day, look.ctx.today);
  const owner = hold.owner_id === null ? ', owner not named' : '';
  return {
    ...rowOf(look, ticket, {
      words: `${HOLD_WORDS[hold.reason]}${hold.words === null ? '' : `, ${hold.words}`}${owner}`,
      right: days === 0 ? 'since today' : formatCount(days, 'day'),
      tone: 'hold',
      at: hold.created_at,
      screen: 'hold',
      focus: hold.id,
    }),
    reason: hold.reason,
    days,
  };
}

/** A part that was expected by now. */
export const partRow = (look: Look, ticket: Ticket): HomeRow =>
  rowOf(look, ticket, {
    words: `Part: ${ticket.parts_words ?? ''}`,
    right: expectedWords(look, ticket.parts_due_on),
    tone: isPast(look, ticket.parts_due_on) ? 'close' : 'plain',
  });

/** Outside work that should be back. */
export const outsideRow = (
  look: Look,
  ticket: Ticket,
  outside: ReturnType<typeof store.listOutsideDue>[number],
): HomeRow =>
  rowOf(look, ticket, {
    words: `${outside.shop_words} at ${outside.supplier_words}`,
    right: expectedWords(look, outside.expected_on),
    tone: isPast(look, outside.expected_on) ? 'close' : 'plain',
  });

const isPast = ({ ctx }: Look, day: Day | null): boolean => day !== null && day < ctx.today;
const expectedWords = ({ ctx }: Look, day: Day | null): string =>
  day === null ? '' : day === ctx.today ? 'expected today' : `expected ${formatDay(day)}`;

/** An enquiry's estimate shows its amount. */
export const quoteRow = (look: Look, ticket: Ticket): HomeRow => {
  const row = askedRow(look, ticket);
  return { ...row, words: `${row.words}, ${formatMoney(ticket.to_pay_cents, look.settings)}` };
};
