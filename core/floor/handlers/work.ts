/** Start, stop, done: for one operation, or the same one on both castings of a pair. */
import type { z } from 'zod';
import { type ActivityLine, type Ctx, type Done, type Handlers, personOf } from '../../host/implement.ts';
import { ruleBroken } from '../../kernel/errors.ts';
import type { OperationId } from '../../kernel/ids.ts';
import { bowAdvice, bowOf } from '../../readings/compute/bow.ts';
import type { NeededReading } from '../../readings/compute/needed.ts';
import { readNeeded } from '../../readings/store/needed.ts';
import type { OperationFact, RunFact } from '../../state/compute/facts.ts';
import { know } from '../../state/compute/live.ts';
import { operationNow } from '../../state/compute/operations.ts';
import type { Reason } from '../../state/compute/reasons.ts';
import type { TicketNow } from '../../state/compute/tickets.ts';
import type { OperationWord } from '../../state/compute/words.ts';
import { keepWork } from '../../state/store/load-facts.ts';
import { capital } from '../compute/bench-words.ts';
import type { Acted, floorContract } from '../contract.ts';
import { pairWarnings } from '../store/pair-check.ts';
import { endRuns, finishOperation, insertRun, insertShown, needsReadings } from '../store.ts';
import { type Acting, dangers, named, readActing, refusalOf, refuseEnded, refuseStale } from './acting.ts';

type Answer = z.output<typeof Acted>;
type Work = Pick<
  Handlers<typeof floorContract>,
  'floor/start-operation' | 'floor/stop-operation' | 'floor/finish-operation' | 'floor/finish-down-to'
>;

export const work: Work = {
  'floor/start-operation': {
    run({ operations }, ctx) {
      const acted = operations.map(({ operationId }) => start(ctx, operationId));
      return answer(acted, 'started');
    },
  },
  'floor/stop-operation': {
    run({ operations }, ctx) {
      const acted = operations.map(({ operationId }) => stop(ctx, operationId));
      return answer(acted, 'stopped');
    },
  },
  'floor/finish-operation': {
    run({ operations }, ctx) {
      const acted = operations.map(({ operationId, seenVersion }) => finish(ctx, operationId, seenVersion));
      return answer(acted, 'done');
    },
  },
  'floor/finish-down-to': {
    run({ operationId, seenVersion, both }, ctx) {
      const target = readActing(ctx.db, operationId);
      refuseStale(target, seenVersion);
      const others = both ? pairOperations(target) : [];
      const acted = [operationId, ...others].flatMap((id) => finishDownTo(ctx, id));
      return answer(acted, 'done');
    },
  },
};

/** What one operation came to. */
export type Step = Readonly<{
  acting: Acting;
  soft: readonly Reason[];
  warnings: readonly string[];
  version: number;
  /** Its word once the command is kept. */
  word: OperationWord;
}>;

/** Begin a run. @throws AppError when anything stops it */
export function start(ctx: Ctx, id: OperationId): Step {
  const acting = readActing(ctx.db, id);
  const { operation, state, ticket } = acting;
  const who = personOf(ctx);
  refuseEnded(acting);
  if (state.running.some((run) => run.staffId === who)) {
    throw ruleBroken('floor/already-on-it', 'You are already on this operation.');
  }
  if (state.stops.length > 0) throw refusalOf(acting, state.stops, `Start of ${named(acting)}`);
  insertRun(ctx.db, { operation: id, ticket }, who, ctx.session.device, ctx.now);
  const run: RunFact = { operationId: id, staffId: who, startedAt: ctx.now, endedAt: null };
  return {
    acting,
    soft: showSoft(ctx, acting),
    warnings: [...tagWarnings(operation.kind.groups, acting), ...bendWarnings(ctx, acting)],
    version: operation.version,
    word: wordAfter(ctx, acting, { begun: run }),
  };
}

/** Soft rules are shown once: written down as shown. */
function showSoft({ db }: Ctx, { operation, state, ticket }: Acting): readonly Reason[] {
  insertShown(
    db,
    { operation: operation.id, ticket },
    state.soft.flatMap((reason) => (reason.rule ? [reason.rule.id] : [])),
  );
  return state.soft;
}

/** Paper does not survive a wash. */
const tagWarnings = (groups: readonly string[], { casting }: Acting): string[] =>
  groups.includes('clean') && casting.metalTagOnAt === null
    ? [`${casting.tag}: take the card tag off and wire the metal tag on before the wash.`]
    : [];

/** Before anything is bent: deck and cam line decide together. */
function bendWarnings({ db, today }: Ctx, { operation, casting }: Acting): string[] {
  if (operation.kind.code !== 'straighten') return [];
  const needed = readNeeded(db, casting.id, [operation.id], today);
  const advice = bowAdvice(bowOf('deck-flatness', needed), bowOf('cam-line', needed));
  return advice === null ? [] : [advice];
}

function stop(ctx: Ctx, id: OperationId): Step {
  const acting = readActing(ctx.db, id);
  refuseEnded(acting);
  const ended = endRuns(ctx.db, id, { at: ctx.now, kind: 'stopped', who: personOf(ctx) });
  if (ended === 0) {
    throw ruleBroken('floor/not-on-it', `You are not on ${acting.operation.kind.words}. Whoever started it stops it.`);
  }
  const { operation, now } = acting;
  const open = now.known.facts.runs.filter((run) => run.operationId === id && run.endedAt === null);
  const own = open.filter((run) => run.staffId === personOf(ctx)).map((run) => ({ ...run, endedAt: ctx.now }));
  const word = wordAfter(ctx, acting, { ended: own });
  return { acting, soft: [], warnings: [], version: operation.version, word };
}

/** Close an operation. @throws AppError when a rule, a danger or a reading stops it */
export function finish(ctx: Ctx, id: OperationId, seen: number): Step {
  const acting = readActing(ctx.db, id);
  refuseEnded(acting);
  const { operation, state, casting } = acting;
  // Done without a start is allowed; then what would stop the start stops it.
  const stops = state.begun ? dangers(state) : state.stops;
  if (stops.length > 0) throw refusalOf(acting, stops, `Done without start: ${named(acting)}`);
  const needs = needsReadings(ctx.db, operation.kind.id) ? readNeeded(ctx.db, casting.id, [id], ctx.today) : [];
  refuseUnmeasured(needs);
  const soft = state.begun ? [] : showSoft(ctx, acting);
  const version = finishOperation(ctx.db, id, seen, ctx.now, personOf(ctx));
  endRuns(ctx.db, id, { at: ctx.now, kind: 'finished' });
  const word = wordAfter(ctx, acting, {
    operation: { ...operation, version, finishedAt: ctx.now, finishedBy: personOf(ctx) },
    ended: state.running.map((run) => ({ ...run, endedAt: ctx.now })),
  });
  return {
    acting,
    soft,
    version,
    word,
    warnings: [...laterReadings(needs), ...washWarnings(acting), ...pairWarnings(ctx, acting)],
  };
}

/** Readings before the work can never be taken afterwards. */
function refuseUnmeasured(needs: readonly NeededReading[]): void {
  const missing = needs.filter((need) => need.required && need.stage === 'before' && !need.isMet);
  if (missing.length === 0) return;
  throw ruleBroken('floor/not-measured', `Not measured: ${listed(missing)}. It cannot be read after the work.`, {
    facts: { missing: missing.map((need) => need.words) },
  });
}

const laterReadings = (needs: readonly NeededReading[]): string[] => {
  const missing = needs.filter((need) => need.required && need.stage === 'after' && !need.isMet);
  return missing.length === 0 ? [] : [`Still to read before signing: ${listed(missing)}.`];
};

/** "3E1 installed height, 3E2 installed height and 6 more". */
function listed(needs: readonly NeededReading[]): string {
  const shown = needs.slice(0, 3).map((need) => need.words);
  const more = needs.length - shown.length;
  return more > 0 ? `${shown.join(', ')} and ${more} more` : shown.join(', ');
}

const washWarnings = ({ operation, casting }: Acting): string[] =>
  operation.kind.groups.includes('clean')
    ? [`${casting.tag}: read the number and the side back from the casting.`]
    : [];

/** Close what is open down to this operation, in order. The first that is stopped stops the whole. */
function finishDownTo(ctx: Ctx, id: OperationId): Step[] {
  const target = readActing(ctx.db, id);
  refuseEnded(target);
  return downTo(target.now, id).map((operation) => finish(ctx, operation.id, operation.version));
}

/** Open operations of its casting that stand before it, and itself, in traveller order. */
function downTo(now: TicketNow, id: OperationId): OperationFact[] {
  const { facts, live } = now.known;
  const target = facts.operations.find((o) => o.id === id);
  const own = facts.operations.filter((o) => o.castingId === target?.castingId);
  return own.slice(0, own.findIndex((o) => o.id === id) + 1).filter((o) => live.includes(o) && o.finishedAt === null);
}

/** The same operation on the other castings of the pair, while it is open there. */
function pairOperations({ operation, casting, now }: Acting): OperationId[] {
  const { facts, castings, live } = now.known;
  if (casting.pair === null) return [];
  return facts.operations
    .filter((o) => o.castingId !== casting.id && o.kind.code === operation.kind.code && o.finishedAt === null)
    .filter((o) => live.includes(o) && castings.get(o.castingId)?.pair === casting.pair)
    .map((o) => o.id);
}

type Change = Readonly<{ operation?: OperationFact; begun?: RunFact; ended?: readonly RunFact[] }>;

/** The word the change leaves, by the one rule of states; the facts are kept for the rest of the request. */
function wordAfter({ db }: Ctx, { operation, now }: Acting, change: Change): OperationWord {
  const { facts } = now.known;
  const { ended = [], begun } = change;
  const changed = change.operation ?? operation;
  const others = facts.runs.filter((run) => !ended.some((e) => isSameRun(e, run)));
  const after = keepWork(db, facts, {
    operations: facts.operations.map((o) => (o.id === operation.id ? changed : o)),
    runs: [...others, ...ended, ...(begun ? [begun] : [])],
  });
  return operationNow(know(after), changed).word;
}

const isSameRun = (a: RunFact, b: RunFact): boolean =>
  a.operationId === b.operationId && a.staffId === b.staffId && a.startedAt === b.startedAt;

function answer(steps: readonly Step[], did: string): Done<Answer> {
  const [first] = steps;
  if (!first) throw ruleBroken('floor/nothing-open', 'Nothing is open down to here.');
  const tickets = [...new Set(steps.map((step) => step.acting.ticket))];
  const lines = steps.map(
    ({ acting }): ActivityLine => ({
      subject: ['operation', acting.operation.id],
      ticket: acting.ticket,
      words: `${named(acting)} ${did}`,
      before: { word: acting.state.word },
    }),
  );
  return {
    output: {
      words: sentence(steps, did),
      operations: steps.map(({ acting, version, word }) => ({ operationId: acting.operation.id, version, word })),
      soft: steps.flatMap((step) => step.soft),
      warnings: [...new Set(steps.flatMap((step) => step.warnings))],
    },
    activity: [lines[0] as ActivityLine, ...lines.slice(1)],
    touched: tickets,
  };
}

/** "Seat cut done on 41234 and 41235." or "4 operations done on 41234." */
function sentence(steps: readonly Step[], did: string): string {
  const words = [...new Set(steps.map((step) => step.acting.operation.kind.words))];
  const tags = [...new Set(steps.map((step) => step.acting.casting.tag))].join(' and ');
  const what = words.length === 1 ? capital(words[0] ?? '') : `${steps.length} operations`;
  return `${what} ${did} on ${tags}.`;
}
