/** What a signature waits for, and who may give it. Pure. */
import { evaluateStep } from '../catalogue/compute/order-rules.ts';
import type { StaffId } from '../kernel/ids.ts';
import { type NeededReading, stopsSigning } from '../readings/compute/needed.ts';
import type { Cell } from '../readings/compute/sheet-model.ts';
import type { CastingFact } from '../state/compute/facts.ts';
import type { Known } from '../state/compute/live.ts';
import { type Reason, reason, ruleInput } from '../state/compute/reasons.ts';
import { signaturesNeeded, signaturesOf } from '../state/compute/signed.ts';
import { HOLD_WORDS } from '../state/compute/words.ts';

/** A reading that does not simply pass. */
export type OpenReading = Readonly<{
  quantity: string;
  spot: number | null;
  stage: 'before' | 'after';
  point: string | null;
  words: string;
  verdict: 'not measured' | 'no limit known' | 'fail' | 'too close to call';
  value: string;
  limit: string;
  decision: Cell['decision'];
  stops: boolean;
}>;

/** Needed readings that are missing, fail, are too close, or are judged by nothing. */
export function openReadings(needed: readonly NeededReading[]): OpenReading[] {
  return needed.flatMap((it) => {
    const verdict = verdictOf(it);
    if (verdict === null) return [];
    const { quantity, spot, stage, point, words, value, limit, cell } = it;
    return [
      { quantity, spot, stage, point, words, verdict, value, limit, decision: cell.decision, stops: stopsSigning(it) },
    ];
  });
}

function verdictOf({ isMet, required, cell }: NeededReading): OpenReading['verdict'] | null {
  if (!isMet) return required || cell.state === 'two readings' ? 'not measured' : null;
  const name = cell.verdict?.name;
  return name === 'fail' || name === 'too close to call' || name === 'no limit known' ? name : null;
}

/** Pieces counted when it was taken apart and again when it was put together. */
export type PieceCounts = Readonly<{ words: string; out: number | null; back: number | null; explained: boolean }>;

/** "2 plugs out, 1 back." for each count that does not agree and is not explained. */
export const countsApart = (pieces: readonly PieceCounts[]): string[] =>
  pieces
    .filter((p) => p.out !== null && p.back !== null && p.out !== p.back && !p.explained)
    .map((p) => `${p.out} ${p.words} out, ${p.back} back. Find the rest before signing.`);

export type SignInput = Readonly<{
  known: Known;
  casting: CastingFact;
  readings: readonly OpenReading[];
  counts: readonly string[];
}>;

/** Everything that stops the signature, one sentence each, in the order a person works them off. */
export function signingStops({ known, casting, readings, counts }: SignInput): Reason[] {
  const live = known.live.filter((o) => o.castingId === casting.id);
  const missing = readings.filter((r) => r.stops && r.verdict === 'not measured');
  const bad = readings.filter((r) => r.stops && r.verdict !== 'not measured');
  // Missing readings are named one by one; the rule about them says nothing more.
  const rules = evaluateStep(ruleInput(known, casting, ['required-readings']), 'sign-off', casting.id);
  return [
    ...goneReasons(casting),
    ...known.facts.holds
      .filter((h) => h.reason !== 'money' && isOn(h, known, casting))
      .map((h) => reason('hold', `On hold: ${HOLD_WORDS[h.reason]}. Close the hold first.`, HOLD_WORDS[h.reason])),
    ...(live.length === 0
      ? [reason('operation', 'No work is on it: send it home unworked, or add work.', 'no work')]
      : []),
    ...live
      .filter((o) => o.finishedAt === null)
      .map((o) => reason('operation', `Not done: ${o.kind.words}.`, `${o.kind.words} not done`)),
    ...missing.map((r) => reason('reading', `Not measured: ${r.words}. Measure or mark it not applicable.`, r.words)),
    ...bad.map((r) =>
      reason('reading', `${r.words} reads ${r.value}, ${r.limit}: ${r.verdict}. A lead decides.`, r.words),
    ),
    ...counts.map((words) => reason('items', words, 'count differs')),
    ...rules
      .filter((r) => r.state === 'unmet' && r.strength === 'hard')
      .map((r) => ({
        ...reason('rule', r.words, r.short, wayOn(r.fact, casting)),
        rule: { id: r.rule.id, no: r.rule.no, waiver: r.rule.waiver },
      })),
  ];
}

const wayOn = (fact: string | null, casting: CastingFact) =>
  fact === null ? null : { words: 'Tick it', request: 'floor/tick-fact', input: { castingId: casting.id, fact } };

function goneReasons(casting: CastingFact): Reason[] {
  if (casting.outAt !== null) return [reason('operation', 'This casting has left the shop.', 'left the shop')];
  if (casting.scrapAt !== null) return [reason('operation', 'This casting was declared scrap.', 'scrap')];
  return [];
}

type Hold = Known['facts']['holds'][number];

const isOn = (hold: Hold, { facts }: Known, casting: CastingFact): boolean =>
  hold.reason === 'identity' ||
  hold.castingId === casting.id ||
  (hold.castingId === null && hold.operationId === null) ||
  facts.operations.some((o) => o.id === hold.operationId && o.castingId === casting.id);

/** The place that is signed next; null when all that are needed stand. */
export function nextPlace(known: Known, castingId: number): 'first' | 'second' | null {
  const places = new Set(signaturesOf(known, castingId).map((s) => s.place));
  if (!places.has('first')) return 'first';
  return signaturesNeeded(known, castingId) === 2 && !places.has('second') ? 'second' : null;
}

/** Why this person may not sign; null when they may. The owner's setting lets one person do both. */
export function whyNotSigner(
  known: Known,
  castingId: number,
  staff: StaffId | null,
  sameAllowed: boolean,
): string | null {
  if (staff === null) return 'Nobody is signed in here. Tap your name and type your PIN.';
  if (sameAllowed) return null;
  if (workedOn(known, castingId, staff)) return 'You worked on this one. Another person signs.';
  return signaturesOf(known, castingId).some((s) => s.staffId === staff)
    ? 'You signed the first place. Another person signs the second.'
    : null;
}

/** Did any of its operations, or was on one. */
export function workedOn({ facts }: Known, castingId: number, staff: StaffId): boolean {
  const own = new Map(facts.operations.filter((o) => o.castingId === castingId).map((o) => [o.id as number, o]));
  return (
    [...own.values()].some((o) => o.finishedBy === staff) ||
    facts.runs.some((run) => run.staffId === staff && own.has(run.operationId))
  );
}
