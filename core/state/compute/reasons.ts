/** Why an operation cannot start, in sentences, with the way on. Guards, benches and ticket pages read the same list. */
import { metalClassOf, metalForbids } from '../../catalogue/compute/fit.ts';
import {
  evaluateOperation,
  type RuleInput,
  type RuleOperation,
  type RuleResult,
} from '../../catalogue/compute/order-rules.ts';
import type { CastingFact, OperationFact } from './facts.ts';
import type { Known } from './live.ts';
import { HOLD_WORDS, TICKED_FACTS } from './words.ts';

export type WayOn = Readonly<{ words: string; request: string | null; input?: unknown }>;

export type Reason = Readonly<{
  kind: 'rule' | 'approval' | 'hold' | 'part' | 'metal' | 'items' | 'fit' | 'reading' | 'identity' | 'operation';
  strength: 'hard' | 'soft';
  words: string;
  short: string;
  wayOn: WayOn | null;
  rule: Readonly<{ id: number; no: number; waiver: 'none' | 'reason' | 'customer_signature' }> | null;
}>;

/** A reason that is no order rule. */
export const reason = (kind: Reason['kind'], words: string, short: string, wayOn: WayOn | null = null): Reason => ({
  kind,
  strength: 'hard',
  words,
  short,
  wayOn,
  rule: null,
});

export type RuleSplit = Readonly<{ hard: readonly Reason[]; soft: readonly Reason[]; waived: readonly RuleResult[] }>;

/** Order rules of an operation, split into what stops, what is shown and what a lead let pass. */
export function ruleReasons(known: Known, operation: OperationFact): RuleSplit {
  const casting = known.castings.get(operation.castingId);
  if (!casting) return { hard: [], soft: [], waived: [] };
  const results = evaluateOperation(ruleInput(known, casting), asRuleOperation(known, operation));
  const open = results.filter((result) => result.state !== 'waived');
  const asReason = (result: RuleResult): Reason => ({
    kind: 'rule',
    strength: result.strength,
    words: result.words,
    short: result.short,
    wayOn: wayOnOf(result, casting),
    rule: { id: result.rule.id, no: result.rule.no, waiver: result.rule.waiver },
  });
  return {
    hard: open.filter((r) => r.strength === 'hard').map(asReason),
    soft: open
      .filter((r) => r.strength === 'soft' && !(r.state === 'unmet' && isShown(known, operation, r)))
      .map(asReason),
    waived: results.filter((result) => result.state === 'waived'),
  };
}

/** A soft rule warns once. */
const isShown = (known: Known, operation: OperationFact, result: RuleResult): boolean =>
  known.facts.shown.has(`${operation.id}:${result.rule.id}`);

/** What the rules of one casting are evaluated on. */
export function ruleInput(known: Known, casting: CastingFact, more: readonly string[] = []): RuleInput {
  const { facts } = known;
  return {
    rules: facts.rules,
    groups: facts.groups,
    casting: {
      kind: casting.kind,
      metal: metalClassOf(casting.material),
      camLayout: casting.camLayout,
      fuel: casting.fuel,
    },
    operations: known.live.map((o) => asRuleOperation(known, o)),
    facts: new Set([...factsOf(known, casting), ...more]),
    waivers: facts.waivers,
    wordsOf: (code) => facts.kindWords.get(code) ?? code,
  };
}

const asRuleOperation = (known: Known, o: OperationFact): RuleOperation => ({
  id: o.id,
  castingId: o.castingId,
  pair: known.castings.get(o.castingId)?.pair ?? null,
  kind: o.kind,
  doneAt: o.finishedAt,
});

/** Facts that hold: ticked by a person, or known from what was recorded. */
function factsOf(known: Known, casting: CastingFact): string[] {
  const held = [...casting.ticked];
  if (casting.arrivalPhotos > 0) held.push('tag-and-photos');
  if (casting.metalConfirmedAt !== null) held.push('metal-confirmed');
  if (casting.thicknessAt !== null) held.push('thickness-before');
  if (casting.pistonSizeAt !== null) held.push('piston-size');
  if (known.unanswered.length === 0) held.push('added-work-answered');
  return held;
}

function wayOnOf(result: RuleResult, casting: CastingFact): WayOn {
  const { fact, todo } = result;
  if (fact === 'metal-confirmed') return confirmMetal(casting);
  if (fact !== null && (TICKED_FACTS as readonly string[]).includes(fact)) {
    return { words: todo, request: 'floor/tick-fact', input: { castingId: casting.id, fact } };
  }
  if (fact !== null) return { words: todo, request: 'readings/list-tables', input: { casting: casting.id } };
  return { words: todo, request: null };
}

const confirmMetal = (casting: CastingFact): WayOn => ({
  words: 'Confirm the metal',
  request: 'castings/confirm-metal',
  input: { castingId: casting.id },
});

/**
 * What the metal and the pieces still on the casting forbid. Never waived, whatever the rules say.
 *
 * A wash waits until every piece that does not bear it is off; caustic waits until a person confirmed the metal.
 */
export function dangerReasons(known: Known, operation: OperationFact): Reason[] {
  const casting = known.castings.get(operation.castingId);
  if (!casting) return [];
  const { groups } = operation.kind;
  const forbidden = metalForbids(operation.kind, metalClassOf(casting.material));
  if (forbidden !== undefined) {
    const wayOn = casting.material === 'not_known' ? confirmMetal(casting) : null;
    return [reason('metal', forbidden, casting.material === 'not_known' ? 'metal not known' : 'wrong metal', wayOn)];
  }
  const reasons: Reason[] = [];
  if (groups.includes('caustic') && casting.metalConfirmedAt === null) {
    const words = 'Confirm the metal first: does a magnet stick?';
    reasons.push(reason('metal', words, 'metal not confirmed', confirmMetal(casting)));
  }
  if (groups.includes('clean')) reasons.push(...onCasting(known, casting));
  return reasons;
}

function onCasting(known: Known, casting: CastingFact): Reason[] {
  return known.facts.items
    .filter((item) => item.castingId === casting.id && item.removeBeforeWash && !item.missing && item.counted !== 0)
    .filter((item) => item.removedAt === null && item.fate === null && !(casting.bare && item.inside))
    .map((item) =>
      reason('items', `Take off before the wash: ${item.words}.`, `${item.words} still on`, {
        words: `${item.words} is off`,
        request: 'floor/remove-item',
        input: { itemId: item.id },
      }),
    );
}

/** Open holds on the operation, its casting and its ticket; identity in doubt anywhere on the ticket stops everything. */
export function holdReasons(known: Known, operation: OperationFact): Reason[] {
  return known.facts.holds
    .filter(
      (hold) =>
        hold.reason === 'identity' ||
        hold.operationId === operation.id ||
        hold.castingId === operation.castingId ||
        (hold.castingId === null && hold.operationId === null),
    )
    .map((hold) => ({
      ...reason(
        hold.reason === 'identity' ? 'identity' : 'hold',
        hold.reason === 'identity'
          ? 'Which casting is this? Clear the identity question first.'
          : `On hold: ${HOLD_WORDS[hold.reason]}${hold.words === null ? '' : ` (${hold.words})`}.`,
        HOLD_WORDS[hold.reason],
        { words: 'Close the hold', request: 'floor/close-hold', input: { holdId: hold.id } },
      ),
    }));
}

/** Parts that hold this operation up and are not here. */
export function partReasons(known: Known, operation: OperationFact): Reason[] {
  return known.facts.parts
    .filter(
      (part) =>
        part.blocks === operation.kind.id && (part.castingId === null || part.castingId === operation.castingId),
    )
    .filter((part) => part.hereAt === null && part.fittedAt === null && part.returnedAt === null)
    .map((part) => reason('part', `Waits for a part: ${part.words}.`, `waits for ${part.words}`));
}
