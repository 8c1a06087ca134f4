/** The state of one casting. First match from the top wins; computed from the done operations, holds and places. */
import type { CastingFact } from './facts.ts';
import type { Known } from './live.ts';
import type { OperationNow } from './operations.ts';
import { isSigned } from './signed.ts';
import type { CastingWord } from './words.ts';

export type CastingNow = Readonly<{
  id: number;
  tag: number;
  word: CastingWord;
  signed: boolean;
  /** It needs nothing more before it can leave: signed, scrap agreed, out, or going home unworked. */
  settled: boolean;
  operations: readonly OperationNow[];
}>;

export function castingNow(known: Known, casting: CastingFact, operations: readonly OperationNow[]): CastingNow {
  const own = operations.filter((o) => o.castingId === casting.id);
  const signed = isSigned(known, casting.id);
  const scrap = casting.scrapAt !== null && casting.scrapAgreed;
  return {
    id: casting.id,
    tag: casting.tag,
    word: wordOf(known, casting, own, signed),
    signed,
    settled: signed || scrap || casting.outAt !== null || casting.unworkedWhy !== null,
    operations: own,
  };
}

function wordOf(known: Known, casting: CastingFact, own: readonly OperationNow[], signed: boolean): CastingWord {
  if (casting.outAt !== null) return 'released';
  if (casting.scrapAt !== null) return casting.scrapAgreed ? 'scrap' : 'on hold';
  if (isHeld(known, casting, own)) return 'on hold';
  if (signed) return isStaged(known, casting) ? 'staged' : 'signed off';
  return workWord(known, casting);
}

/** An open hold on it, on its ticket, or on one of its operations that would otherwise be ready. */
function isHeld(known: Known, casting: CastingFact, own: readonly OperationNow[]): boolean {
  return known.facts.holds.some((hold) => {
    if (hold.operationId === null) return hold.castingId === null || hold.castingId === casting.id;
    const operation = own.find((o) => o.id === hold.operationId);
    return (
      operation?.live === true && operation.stops.every((stop) => stop.kind === 'hold' || stop.kind === 'identity')
    );
  });
}

/** It and all its bags and boxes stand in a place for goods that are ready. */
function isStaged(known: Known, casting: CastingFact): boolean {
  const own = known.facts.containers.filter((c) => c.castingId === casting.id && c.outAt === null);
  return casting.standsAt === 'ready' && own.every((c) => c.standsAt === 'ready');
}

function workWord(known: Known, casting: CastingFact): CastingWord {
  const live = known.live.filter((o) => o.castingId === casting.id);
  const done = live.filter((o) => o.finishedAt !== null);
  const has = (gate: string) => done.some((o) => o.kind.gate === gate);
  if (has('assemble')) return 'assembled';
  if (live.length > 0 && done.length === live.length && !live.some((o) => o.kind.gate === 'assemble'))
    return 'work done';
  const begun = new Set<number>(known.facts.runs.map((run) => run.operationId));
  if (live.some((o) => o.kind.gate === 'machine' && (o.finishedAt !== null || begun.has(o.id))))
    return 'in machine work';
  if (passedCrackCheck(known, casting)) return 'passed crack check';
  if (has('clean')) return 'clean';
  return has('strip') || casting.bare ? 'stripped' : 'received';
}

/** The last finished check found nothing; after a repair the re-test is the last one. */
function passedCrackCheck(known: Known, casting: CastingFact): boolean {
  const checks = known.live
    .filter((o) => o.castingId === casting.id && o.kind.gate === 'crack' && o.finishedAt !== null)
    .sort((a, b) => ((a.finishedAt ?? '') < (b.finishedAt ?? '') ? -1 : 1));
  const last = checks.at(-1);
  return last !== undefined && casting.crackResults.get(last.id) === 'none found';
}
