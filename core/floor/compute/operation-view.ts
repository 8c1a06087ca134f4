/** One operation as bench and ticket page show it, from the state of its ticket. Pure; decides nothing of its own. */
import type { RuleResult } from '../../catalogue/compute/order-rules.ts';
import { findQuantity } from '../../catalogue/compute/quantities.ts';
import type { Moment } from '../../kernel/days.ts';
import { minutesBetween } from '../../kernel/format.ts';
import type { OperationId, ReadingId, StaffId } from '../../kernel/ids.ts';
import type { NeededReading } from '../../readings/compute/needed.ts';
import type { OperationFact } from '../../state/compute/facts.ts';
import type { OperationNow } from '../../state/compute/operations.ts';
import type { TicketNow } from '../../state/compute/tickets.ts';
import type { OperationWord } from '../../state/compute/words.ts';
import type { OperationRow } from '../../state/contract.ts';
import { capital, piecesWords, unitWords } from './bench-words.ts';

/** What the rows say of an operation beside its state. */
export type OperationMore = Readonly<{
  chargeUnit: string | null;
  centreCode: string;
  redoCause: string | null;
  notNeededWhy: string | null;
  cautions: string | null;
}>;

/** A result as an operation gave it. */
export type Given = Readonly<{ operation: OperationId; quantity: string; typed: string; reading: ReadingId }>;

export type ViewInput = Readonly<{
  now: TicketNow;
  /** Everybody by id. */
  people: ReadonlyMap<number, Readonly<{ initials: string; name: string }>>;
  more: ReadonlyMap<number, OperationMore>;
  /** Everything the live operations of the casting need. */
  needed: readonly NeededReading[];
  /** Bench table by operation code, and by quantity for the others. */
  tableOf(kindCode: string, quantity: string | null): string | null;
  /** Whether a table of the casting's kind takes this quantity. */
  inTable(quantity: string): boolean;
  /** What operations found, as it stands: one row an operation and quantity. */
  given: readonly Given[];
  /** The asking person; null when nobody is signed in. */
  me: StaffId | null;
}>;

/** The operations of one casting in traveller order. */
export function operationViews(input: ViewInput, castingId: number): OperationRow[] {
  const { facts } = input.now.known;
  const own = facts.operations.filter((o) => o.castingId === castingId);
  const rows = own.flatMap((operation) => {
    const state = input.now.operations.find((s) => s.id === operation.id);
    return state ? [viewOf(input, operation, state, own)] : [];
  });
  const next =
    rows.find((row) => row.mine !== null) ??
    rows.find((row) => row.running.length > 0) ??
    rows.find((row) => row.mayStart);
  return rows.map((row) => ({ ...row, next: row === next }));
}

function viewOf(
  input: ViewInput,
  operation: OperationFact,
  state: OperationNow,
  own: readonly OperationFact[],
): OperationRow {
  const { now } = input;
  const open = state.live && operation.finishedAt === null;
  return {
    ...plainOf(input, operation, state),
    ...movesOf(input, state, open),
    next: false,
    stops: [...state.stops],
    soft: [...state.soft],
    waived: state.waived.flatMap(waivedView),
    minutes: minutesOf(now, operation.id),
    before: neededView(input, operation, 'before'),
    after: neededView(input, operation, 'after'),
    results: resultsOf(input, operation.id),
    both: open ? pairView(now, operation) : null,
    downTo: open ? downToView(now, operation, own) : [],
  };
}

type Plain = Omit<OperationRow, keyof ReturnType<typeof movesOf> | Computed>;
type Computed = 'next' | 'stops' | 'soft' | 'waived' | 'minutes' | 'before' | 'after' | 'results' | 'both' | 'downTo';

/** What the rows say. */
function plainOf(input: ViewInput, operation: OperationFact, state: OperationNow): Plain {
  const more = input.more.get(operation.id) ?? NOTHING_MORE;
  const { units, kind, finishedAt, finishedBy, notNeededAt, redoOf } = operation;
  return {
    id: operation.id,
    version: operation.version,
    castingId: operation.castingId,
    kindCode: kind.code,
    words: capital(kind.words),
    second: [piecesWords(units, more.chargeUnit), operation.setUp, operation.instruction].filter(Boolean).join(', '),
    units,
    unitWords: unitWords(units, more.chargeUnit),
    instruction: operation.instruction,
    centre: { id: operation.centreId, code: more.centreCode, name: operation.centreName },
    gate: kind.gate,
    word: state.word,
    mark: MARKS[state.word],
    right: rightWords(operation, state, (id) => personOf(input, id).initials),
    covered: state.covered,
    plannedSeconds: operation.plannedSeconds,
    finished:
      finishedAt === null ? null : { at: finishedAt, by: finishedBy === null ? null : personOf(input, finishedBy) },
    notNeeded: notNeededAt === null ? null : { at: notNeededAt, why: more.notNeededWhy ?? '' },
    redoOf: redoOf === null ? null : { operationId: redoOf, cause: more.redoCause ?? '' },
    twoSignatures: kind.twoSignatures,
    cautions: more.cautions,
  };
}

const NOTHING_MORE: OperationMore = {
  chargeUnit: null,
  centreCode: '',
  redoCause: null,
  notNeededWhy: null,
  cautions: null,
};

const personOf = ({ people }: ViewInput, id: StaffId) => ({
  staff: id,
  initials: people.get(id)?.initials ?? '',
  name: people.get(id)?.name ?? '',
});

/** Who is on it, and what the asking person may do. */
function movesOf(input: ViewInput, state: OperationNow, open: boolean) {
  const mine = state.running.find((run) => run.staffId === input.me)?.startedAt ?? null;
  const dangers = state.stops.filter((s) => s.kind === 'metal' || s.kind === 'items' || s.kind === 'identity');
  return {
    running: state.running.map((run) => ({ ...personOf(input, run.staffId), at: run.startedAt })),
    mine,
    mayStart: open && mine === null && state.stops.length === 0,
    mayStop: mine !== null,
    mayFinish: open && (state.begun ? dangers : state.stops).length === 0,
  };
}

const MARKS: Readonly<Record<OperationWord, OperationRow['mark']>> = {
  'not needed': 'off',
  redone: 'off',
  declined: 'off',
  signed: 'done',
  done: 'done',
  started: 'running',
  stopped: 'open',
  'ready to start': 'open',
  approved: 'open',
  quoted: 'uncovered',
  requested: 'uncovered',
};

function rightWords(operation: OperationFact, state: OperationNow, initials: (id: StaffId) => string): string {
  switch (state.word) {
    case 'done':
    case 'signed':
      return operation.finishedBy === null ? 'done' : `done ${initials(operation.finishedBy)}`;
    case 'started':
      return state.running.map((run) => initials(run.staffId)).join(', ');
    case 'ready to start':
      return '';
    case 'stopped':
    case 'approved':
      return state.stops[0]?.short ?? state.word;
    case 'quoted':
    case 'requested':
      return (
        state.stops.find((stop) => stop.kind !== 'approval' && stop.kind !== 'rule')?.short ??
        'not approved, do not start'
      );
    default:
      return state.word;
  }
}

/** Minutes of closed runs; null when nobody ever started it. */
function minutesOf({ known }: TicketNow, operation: OperationId): number | null {
  const closed = known.facts.runs.filter((run) => run.operationId === operation && run.endedAt !== null);
  if (closed.length === 0) return null;
  return closed.reduce((sum, run) => sum + minutesBetween(run.startedAt, run.endedAt as Moment), 0);
}

const waivedView = ({ rule, words, waiver }: RuleResult): OperationRow['waived'] =>
  waiver ? [{ no: rule.no, words, reason: waiver.reason, by: waiver.by, at: waiver.at as Moment }] : [];

function neededView(input: ViewInput, operation: OperationFact, stage: 'before' | 'after'): OperationRow['before'] {
  const own = input.needed.filter((n) => n.operation === operation.id && n.stage === stage);
  const required = own.filter((n) => n.required);
  const missing = required.filter((n) => !n.isMet);
  const done = required.length - missing.length;
  const table = own.length === 0 ? null : input.tableOf(operation.kind.code, own[0]?.quantity ?? null);
  return { done, of: required.length, words: neededWords(required.length, missing), table };
}

/** What is found once and stands in no table; each operation gives its own, though the casting may have been checked before. */
function resultsOf(input: ViewInput, operation: OperationId): OperationRow['results'] {
  return input.needed
    .filter((n) => n.operation === operation && n.stage === 'after' && n.spot === null && !input.inTable(n.quantity))
    .map(({ quantity, words, required }) => {
      const given = input.given.find((one) => one.operation === operation && one.quantity === quantity);
      return {
        quantity,
        words,
        choices: [...(findQuantity(quantity)?.choices ?? [])],
        value: given?.typed ?? '',
        reading: given?.reading ?? null,
        required,
      };
    });
}

/** "Not measured: 3E1 installed height and 22 more" while some are missing. */
function neededWords(of: number, missing: readonly NeededReading[]): string {
  if (of === 0) return '';
  const [first] = missing;
  if (!first) return `${of} of ${of} read`;
  const more = missing.length - 1;
  return `Not measured: ${first.words}${more > 0 ? ` and ${more} more` : ''}`;
}

/** The same operation on the other casting of the pair. */
function pairView({ known }: TicketNow, operation: OperationFact): OperationRow['both'] {
  const pair = known.castings.get(operation.castingId)?.pair ?? null;
  if (pair === null) return null;
  const other = known.live.find(
    (o) =>
      o.castingId !== operation.castingId &&
      o.kind.code === operation.kind.code &&
      o.finishedAt === null &&
      known.castings.get(o.castingId)?.pair === pair,
  );
  const tag = other && known.castings.get(other.castingId)?.tag;
  return other && tag !== undefined ? { operationId: other.id, version: other.version, tag } : null;
}

/** What "Done down to here" would close; empty when it would close only this one. */
function downToView(
  { known }: TicketNow,
  operation: OperationFact,
  own: readonly OperationFact[],
): OperationRow['downTo'] {
  const upTo = own.slice(0, own.indexOf(operation) + 1).filter((o) => o.finishedAt === null && known.live.includes(o));
  return upTo.length < 2 ? [] : upTo.map((o) => ({ operationId: o.id, words: capital(o.kind.words) }));
}
