/**
 * What lists read of a ticket and of its open operations: rows of `ticket_now` and `operation_now`.
 *
 * Nothing here depends on today; lists compare days when they are read.
 */
import type { Seconds } from '../../kernel/units.ts';
import { cents, seconds } from '../../kernel/units.ts';
import type { CastingNow } from './castings.ts';
import type { ContactFact, OperationFact, TicketFacts } from './facts.ts';
import type { OperationNow } from './operations.ts';
import { isPromiseOpen, type TicketNow } from './tickets.ts';
import { HOLD_WORDS, type TicketWord } from './words.ts';

const flag = (yes: boolean): 0 | 1 => (yes ? 1 : 0);

/** The row of a ticket. */
export function ticketRow(now: TicketNow) {
  const { facts } = now.known;
  const { ticket, money } = facts;
  return {
    ticket_id: ticket.id,
    number: ticket.number,
    customer_id: ticket.customerId,
    word: now.word,
    over: flag(now.over),
    ready: flag(STANDS_READY.has(now.word)),
    promise_open: flag(isPromiseOpen(now) && facts.promises.length > 0),
    stuck: flag(isStuck(now)),
    held: facts.holds.length,
    rush: flag(ticket.rush),
    comeback: flag(ticket.comeback),
    partly_out: flag(now.partlyOut),
    goods_here: flag(now.chips.some((chip) => chip.chip === 'goods still here')),
    arrived_at: ticket.arrivedAt,
    ...promiseColumns(facts),
    where_words: whereWords(now),
    left_s: secondsLeft(now),
    ...askedColumns(now),
    ...ringColumns(now),
    told_at: now.ready ? toldAt(facts) : null,
    tags: facts.castings.length,
    invoiced_cents: money.invoiced,
    balance_cents: money.balance,
    to_pay_cents: cents(money.balance + money.unbilled - money.held),
    due_on: money.dueOn,
    ...partColumns(facts),
  };
}

/** Words of a ticket that is ready and still here. */
const STANDS_READY: ReadonlySet<TicketWord> = new Set(['ready', 'invoiced', 'paid']);

/** Somebody waits for somebody, or nothing of a casting can be begun: a promise cannot be kept as it stands. */
const isStuck = (now: TicketNow): boolean =>
  isPromiseOpen(now) &&
  (now.castings.some(isBlocked) || now.known.facts.holds.length > 0 || now.known.unanswered.length > 0);

function promiseColumns({ promises }: TicketFacts) {
  const [first] = promises;
  const last = promises.at(-1);
  return {
    promised_on: last?.day ?? null,
    promised_minute: last?.minute ?? null,
    own_time: flag(last?.ownTime ?? false),
    first_promised_on: first?.day ?? null,
    depends_words: last?.dependsOn ?? null,
  };
}

/** The question that waits longest. */
function askedColumns({ known }: TicketNow) {
  const [asked] = [...known.unanswered].sort((a, b) => (a.askedAt < b.askedAt ? -1 : 1));
  return {
    unanswered: known.unanswered.length,
    asked_kind: asked?.kind ?? null,
    asked_id: asked?.id ?? null,
    asked_number: asked?.number ?? null,
    asked_at: asked?.askedAt ?? null,
    asked_end: asked?.until ?? null,
    asked_words: asked?.words ?? null,
  };
}

function ringColumns({ known, over }: TicketNow) {
  const ring = over ? undefined : notReached(known.facts.contacts);
  return { ring_at: ring?.at ?? null, ring_words: ring?.words ?? null };
}

function partColumns(facts: TicketFacts) {
  const part = nextPart(facts);
  return { parts_due_on: part?.expectedOn ?? null, parts_words: part?.words ?? null };
}

/** The rows of a ticket's open operations; none once it has ended or before it arrived. */
export function operationRows(now: TicketNow) {
  const { facts } = now.known;
  if (facts.ticket.arrivedAt === null || now.over) return [];
  return facts.operations.flatMap((operation, index) => {
    const state = now.operations[index];
    const gone = facts.castings.some((c) => c.id === operation.castingId && c.outAt !== null);
    return state?.live && operation.finishedAt === null && !gone ? [operationRow(facts, operation, state)] : [];
  });
}

function operationRow(facts: TicketFacts, operation: OperationFact, state: OperationNow) {
  const promise = facts.promises.at(-1);
  const held = state.stops.find((stop) => stop.kind === 'hold' || stop.kind === 'identity');
  const hold = held && facts.holds.find((h) => HOLD_WORDS[h.reason] === held.short);
  const slot = slotOf(state);
  return {
    operation_id: operation.id,
    ticket_id: facts.ticket.id,
    casting_id: operation.castingId,
    work_centre_id: operation.centreId,
    word: state.word,
    slot,
    right_words: slot === 'running' ? '' : (state.stops[0]?.short ?? ''),
    hold_reason: hold?.reason ?? null,
    set_up: operation.setUp,
    position: operation.position,
    rank: operation.rank,
    planned_s: operation.plannedSeconds,
    promised_on: promise?.day ?? null,
    promised_minute: promise?.minute ?? null,
    own_time: flag(promise?.ownTime ?? false),
    rush: flag(facts.ticket.rush),
    arrived_at: facts.ticket.arrivedAt,
  };
}

export type Slot = 'running' | 'next' | 'waiting' | 'held' | 'asked';

/** Where an open operation stands in its queue. */
export function slotOf(state: OperationNow): Slot {
  if (state.running.length > 0) return 'running';
  if (state.stops.some((stop) => stop.kind === 'hold' || stop.kind === 'identity')) return 'held';
  if (!state.covered) return 'asked';
  return state.stops.length === 0 ? 'next' : 'waiting';
}

/** Open work on it, and nothing of it can be begun. */
function isBlocked(casting: CastingNow): boolean {
  if (casting.settled) return false;
  const open = openOf(casting);
  return open.length > 0 && open.every((o) => o.running.length === 0 && o.stops.length > 0);
}

const openOf = (casting: CastingNow): readonly OperationNow[] =>
  casting.operations.filter((o) => o.live && o.word !== 'done' && o.word !== 'signed');

/** Work left on the slowest casting. */
function secondsLeft({ castings, known }: TicketNow): Seconds {
  const operations = new Map<number, OperationFact>(known.facts.operations.map((o) => [o.id, o]));
  const sums = castings
    .filter((casting) => !casting.settled)
    .map((casting) =>
      openOf(casting).reduce((sum, o) => {
        const fact = operations.get(o.id);
        return sum + (fact ? fact.plannedSeconds + fact.unattendedSeconds : 0);
      }, 0),
    );
  return seconds(Math.max(0, ...sums));
}

/** A few words for the counter: what it waits for, or where it is. */
function whereWords({ known, castings, ready, word }: TicketNow): string {
  const { facts, unanswered } = known;
  if (ready || facts.ticket.arrivedAt === null) return ready ? 'ready' : 'not here yet';
  if (word === 'declined' || word === 'abandoned' || word === 'collected' || word === 'closed') return word;
  const [hold] = facts.holds;
  if (hold) return HOLD_WORDS[hold.reason];
  if (unanswered.length > 0) return 'no answer yet';
  const open = castings.filter((c) => !c.settled).flatMap(openOf);
  const named = (state: OperationNow) => facts.operations.find((o) => o.id === state.id);
  const running = open.find((o) => o.running.length > 0);
  if (running) return `${named(running)?.kind.words ?? ''} now`;
  const next = open.find((o) => o.stops.length === 0);
  if (next) return `at ${named(next)?.centreName ?? ''}`;
  const stop = open.flatMap((o) => o.stops)[0];
  if (stop) return stop.short;
  return castings.some((c) => !c.settled) ? 'to be signed off' : 'to be put away';
}

/** The first call in vain since somebody was last reached. */
function notReached(contacts: readonly ContactFact[]): ContactFact | undefined {
  const last = contacts.findLastIndex((contact) => contact.reached);
  return contacts.slice(last + 1).find((contact) => !contact.reached);
}

/** When they were told it is ready; a signature later than that must be told anew. */
export function toldAt({ contacts, signOffs }: TicketFacts): ContactFact['at'] | null {
  const told = contacts.findLast((contact) => contact.about === 'ready' && contact.reached);
  const signed = signOffs.filter((s) => !s.reopened).map((s) => s.at);
  return told && signed.every((at) => at <= told.at) ? told.at : null;
}

/** The part that is expected first. */
function nextPart({ parts }: TicketFacts) {
  return parts
    .filter((p) => p.expectedOn !== null && p.hereAt === null && p.fittedAt === null && p.returnedAt === null)
    .sort((a, b) => ((a.expectedOn ?? '') < (b.expectedOn ?? '') ? -1 : 1))[0];
}
