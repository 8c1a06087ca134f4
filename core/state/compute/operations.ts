/** The state of one operation: its word, what stops it, what starting it shows. First match from the top wins. */
import type { OperationFact, RunFact } from './facts.ts';
import { isDeclined, type Known } from './live.ts';
import {
  dangerReasons,
  holdReasons,
  partReasons,
  type Reason,
  type RuleSplit,
  reason,
  ruleReasons,
} from './reasons.ts';
import { isSigned } from './signed.ts';
import type { OperationWord } from './words.ts';

export type OperationNow = Readonly<{
  id: number;
  castingId: number;
  word: OperationWord;
  live: boolean;
  covered: boolean;
  /** What stops it, hard ones only: danger, holds, the customer's answer, rules, parts. Empty when it may start. */
  stops: readonly Reason[];
  /** Shown once when it is started. */
  soft: readonly Reason[];
  waived: RuleSplit['waived'];
  /** Open runs. */
  running: readonly RunFact[];
  /** Started at any time, or done without a start. */
  begun: boolean;
}>;

const NOTHING: RuleSplit = { hard: [], soft: [], waived: [] };

/** The state of an operation. */
export function operationNow(known: Known, operation: OperationFact): OperationNow {
  const runs = known.facts.runs.filter((run) => run.operationId === operation.id);
  const live = known.live.includes(operation);
  const covered = isCovered(known, operation);
  // Rules of a done operation matter too: a before done again later is shown beside it.
  const rules = live ? ruleReasons(known, operation) : NOTHING;
  const open = live && operation.finishedAt === null;
  const stops = open ? stopsOf(known, operation, rules) : [];
  return {
    id: operation.id,
    castingId: operation.castingId,
    word: wordOf(known, operation, { runs, covered, stops }),
    live,
    covered,
    stops,
    soft: rules.soft,
    waived: rules.waived,
    running: runs.filter((run) => run.endedAt === null),
    begun: runs.length > 0 || operation.finishedAt !== null,
  };
}

/** May the customer's money carry it? Work that is charged to nobody (rework of ours) needs no answer. */
export function isCovered(known: Known, operation: OperationFact): boolean {
  return operation.lineId === null || (known.lines.get(operation.lineId)?.covered ?? false);
}

function stopsOf(known: Known, operation: OperationFact, rules: RuleSplit): Reason[] {
  const danger = dangerReasons(known, operation);
  const saidAlready = new Set(danger.map((r) => r.words));
  return [
    ...leftReasons(known, operation),
    ...holdReasons(known, operation),
    ...danger,
    ...approvalReasons(known, operation),
    ...rules.hard.filter((r) => !saidAlready.has(r.words)),
    ...partReasons(known, operation),
  ];
}

/** Nothing is worked on that left the shop, is scrap or goes home as it came; nor on a ticket that ended. */
function leftReasons(known: Known, operation: OperationFact): Reason[] {
  const casting = known.castings.get(operation.castingId);
  const { ticket } = known.facts;
  if (ticket.declinedAt !== null || ticket.abandonedAt !== null) {
    return [reason('operation', 'The ticket was declined. No work is done on it.', 'ticket declined')];
  }
  if (ticket.arrivedAt === null)
    return [reason('operation', 'It has not arrived yet: this is an enquiry.', 'not here yet')];
  if (!casting) return [];
  if (casting.outAt !== null) return [reason('operation', 'This casting has left the shop.', 'left the shop')];
  if (casting.scrapAt !== null) return [reason('operation', 'This casting was declared scrap.', 'scrap')];
  if (casting.unworkedWhy !== null)
    return [reason('operation', 'This casting goes home unworked.', 'goes home unworked')];
  if (isSigned(known, casting.id)) {
    return [reason('operation', 'This casting is signed off. A lead must reopen it first.', 'signed off')];
  }
  return [];
}

function approvalReasons(known: Known, operation: OperationFact): Reason[] {
  if (isCovered(known, operation)) return [];
  const line = operation.lineId === null ? undefined : known.lines.get(operation.lineId);
  const words = line?.coverWords ?? 'Not approved yet. Ask the customer.';
  return [reason('approval', words, 'not approved, do not start', { words: 'Ask the customer', request: null })];
}

type ForWord = Readonly<{ runs: readonly RunFact[]; covered: boolean; stops: readonly Reason[] }>;

function wordOf(known: Known, operation: OperationFact, { runs, covered, stops }: ForWord): OperationWord {
  if (operation.notNeededAt !== null) return 'not needed';
  if (known.redoneBy.has(operation.id)) return 'redone';
  if (operation.finishedAt !== null) return isSigned(known, operation.castingId) ? 'signed' : 'done';
  if (runs.length > 0) return runs.some((run) => run.endedAt === null) ? 'started' : 'stopped';
  if (isDeclined(operation, known)) return 'declined';
  if (stops.length === 0) return 'ready to start';
  if (covered) return 'approved';
  const line = operation.lineId === null ? undefined : known.lines.get(operation.lineId);
  return line?.asked ? 'quoted' : 'requested';
}
