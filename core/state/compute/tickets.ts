/** The state of a ticket: its word, its chips, and what is still missing before it is ready. */
import type { Day } from '../../kernel/days.ts';
import { type CastingNow, castingNow } from './castings.ts';
import type { TicketFacts } from './facts.ts';
import { looseGoods } from './goods.ts';
import { type Known, know } from './live.ts';
import { type OperationNow, operationNow } from './operations.ts';
import type { Chip, TicketWord } from './words.ts';

export type TicketNow = Readonly<{
  known: Known;
  word: TicketWord;
  /** Those that do not depend on today. */
  chips: readonly Chip[];
  castings: readonly CastingNow[];
  operations: readonly OperationNow[];
  ready: boolean;
  /** Sentences: what is missing before it is ready; empty when it is. */
  missing: readonly string[];
  /** Nothing is left to do on it for anybody. */
  over: boolean;
  partlyOut: boolean;
}>;

/** Everything computed of one ticket, once. */
export function ticketNow(facts: TicketFacts): TicketNow {
  const known = know(facts);
  const operations = facts.operations.map((o) => operationNow(known, o));
  const castings = facts.castings.map((c) => castingNow(known, c, operations));
  const missing = missingForReady(known, castings, operations);
  const ready = facts.ticket.arrivedAt !== null && missing.length === 0;
  const word = wordOf(known, operations, ready);
  const goods = goodsHere(facts);
  const partlyOut = isPartlyOut(facts);
  return {
    known,
    word,
    chips: chipsOf(known, word, goods, partlyOut),
    castings,
    operations,
    ready,
    missing,
    over: word === 'closed' || ((word === 'declined' || word === 'abandoned') && !goods),
    partlyOut,
  };
}

/** Something of it stands in the shop. */
const goodsHere = ({ castings, containers, disposed, ticket }: TicketFacts): boolean =>
  ticket.arrivedAt !== null && !disposed && [...castings, ...containers].some((thing) => thing.outAt === null);

function isPartlyOut({ castings, containers }: TicketFacts): boolean {
  const things = [...castings, ...containers];
  const out = things.filter((thing) => thing.outAt !== null).length;
  return out > 0 && out < things.length;
}

function wordOf(known: Known, operations: readonly OperationNow[], ready: boolean): TicketWord {
  const { facts } = known;
  const { ticket } = facts;
  if (ticket.abandonedAt !== null) return 'abandoned';
  if (ticket.declinedAt !== null) return 'declined';
  if (ticket.arrivedAt === null) return 'enquiry';
  const settled = doneWord(facts, ready);
  if (settled) return settled;
  if (operations.some((o) => o.begun)) return 'in work';
  const lineApproved = facts.lines.some((line) => line.answer === 'yes');
  if (known.unanswered.length > 0 && !lineApproved) return 'waiting approval';
  return facts.authorised > 0 ? 'approved' : 'checked in';
}

/** The words after the work: from ready on. */
function doneWord(facts: TicketFacts, ready: boolean): TicketWord | undefined {
  const { money } = facts;
  const billed = money.unbilledLines === 0;
  if (isCollected(facts, billed)) {
    return billed && money.balance <= 0 && money.openCores === 0 ? 'closed' : 'collected';
  }
  if (!ready) return undefined;
  // Without any invoice there is nothing that could be called invoiced, even when nothing is to be charged.
  if (!billed || money.invoices === 0) return 'ready';
  return money.invoiced > 0 && money.balance <= 0 ? 'paid' : 'invoiced';
}

/** Everything is out or disposed of; a ticket that never had anything: invoiced. */
function isCollected({ castings, containers, disposed, money }: TicketFacts, billed: boolean): boolean {
  const things = [...castings, ...containers];
  if (things.length === 0) return money.invoices > 0 && billed;
  return disposed || things.every((thing) => thing.outAt !== null);
}

function missingForReady(known: Known, castings: readonly CastingNow[], operations: readonly OperationNow[]): string[] {
  const { facts } = known;
  const missing: string[] = [];
  if (castings.length === 0 && !facts.ticket.quick) missing.push('No casting is on the ticket.');
  for (const casting of castings) {
    if (!casting.settled) missing.push(`${casting.tag} is not signed off.`);
  }
  for (const container of facts.containers) {
    if (container.outAt === null && container.standsAt !== 'ready')
      missing.push('A bag or box is not put away as ready.');
  }
  if (facts.holds.some((hold) => hold.reason !== 'money')) missing.push('A hold is open.');
  for (const question of known.unanswered) missing.push(`${question.words}: no answer yet.`);
  if (operations.some((o) => o.running.length > 0 || (o.live && o.word === 'stopped'))) {
    missing.push('An operation is begun and not done.');
  }
  return [...new Set([...missing, ...looseGoods(facts)])];
}

function chipsOf(known: Known, word: TicketWord, goods: boolean, partlyOut: boolean): Chip[] {
  const { ticket, holds } = known.facts;
  const asked = known.unanswered.length;
  const chips: (Chip | false)[] = [
    holds.length > 0 && {
      chip: 'held',
      words: holds.length === 1 ? 'held' : `held (${holds.length})`,
      count: holds.length,
    },
    asked > 0 && { chip: 'unanswered', words: asked === 1 ? 'unanswered' : `unanswered (${asked})`, count: asked },
    ticket.rush && { chip: 'rush', words: 'RUSH', count: null },
    ticket.comeback && { chip: 'comeback', words: 'comeback', count: null },
    partlyOut && { chip: 'partly out', words: 'partly out', count: null },
    goods &&
      (word === 'declined' || word === 'abandoned') && {
        chip: 'goods still here',
        words: 'goods still here',
        count: null,
      },
  ];
  return chips.filter((chip) => chip !== false);
}

export type Today = Readonly<{ day: Day; minute: number }>;

/** The promise in force was not kept: it is over and the ticket is not ready (nor gone). */
export function isLate(
  promise: Readonly<{ day: Day; minute: number }> | null,
  now: Readonly<{ word: TicketWord; ready: boolean }>,
  today: Today,
): boolean {
  if (promise === null || !isPromiseOpen(now)) return false;
  return promise.day < today.day || (promise.day === today.day && promise.minute <= today.minute);
}

/** The work is not ready: a promise is still to be kept. */
export const isPromiseOpen = ({ word, ready }: Readonly<{ word: TicketWord; ready: boolean }>): boolean =>
  !ready && LATE_WORDS.has(word);

const LATE_WORDS: ReadonlySet<TicketWord> = new Set(['in work', 'waiting approval', 'approved', 'checked in']);

/** `late` and `overdue`, which depend on today. */
export function chipsOfToday(now: TicketNow, today: Today): Chip[] {
  const { promises, money } = now.known.facts;
  const promise = promises.at(-1) ?? null;
  const overdue = money.dueOn !== null && money.balance > 0 && today.day > money.dueOn;
  const chips: Chip[] = [];
  if (isLate(promise, now, today)) chips.push({ chip: 'late', words: 'late', count: null });
  if (overdue) chips.push({ chip: 'overdue', words: 'overdue', count: null });
  return chips;
}
