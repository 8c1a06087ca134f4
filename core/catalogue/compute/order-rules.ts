/**
 * Which operation must wait for which: rules are data, this evaluates them.
 *
 * Pure and browser-safe, so that a bench without its host decides the same. Source of the rules: common practice, no
 * source. A rule names what comes first (an operation, a group, `gate:<gate>` or `fact:<name>`) and what comes then (an
 * operation, a group, a gate or `step:<name>`).
 */
import type { MetalClass } from './fit.ts';
import { FACT_WORDS, GATE_WORDS, GROUP_WORDS } from './rule-words.ts';

export const GATES = ['strip', 'clean', 'crack', 'machine', 'assemble', 'final_clean', 'none'] as const;
export type Gate = (typeof GATES)[number];
export const STEPS = ['approval', 'sign-off', 'ready', 'release'] as const;
export type Step = (typeof STEPS)[number];

export type OrderRule = Readonly<{
  id: number;
  /** Number shown to people; several rules may share it. */
  no: number;
  first: string;
  next: string;
  strength: 'hard' | 'soft';
  /** `must_exist`: not being on the ticket at all is unmet too. */
  need: 'if_present' | 'must_exist';
  scope: 'casting' | 'pair' | 'ticket';
  ifKind: string | null;
  ifMetal: MetalClass | null;
  ifCamLayout: string | null;
  ifFuel: string | null;
  waiver: 'none' | 'reason' | 'customer_signature';
  /** "seat pilot rides the guide". */
  why: string;
}>;

/** Codes of the operations in each group. */
export type Groups = ReadonlyMap<string, ReadonlySet<string>>;

/** What an operation is, for rules. */
export type RuleKind = Readonly<{
  code: string;
  gate: Gate;
  section: string;
  /** Shop's words. */
  words: string;
  /** Place in the catalogue. */
  position: number;
}>;

/** The casting, for conditions of rules. */
export type RuleCasting = Readonly<{ kind: string; metal: MetalClass | 'not_known'; camLayout: string; fuel: string }>;

/** One live operation: not declined, not marked not needed, last of its redo chain. */
export type RuleOperation = Readonly<{
  id: number;
  castingId: number;
  /** Castings of one pair on one ticket share it; null for none. */
  pair: number | null;
  kind: RuleKind;
  /** When finished; null while open. */
  doneAt: string | null;
}>;

export type Waiver = Readonly<{ ruleId: number; operationId: number; reason: string; by: string; at: string }>;

export type RuleResult = Readonly<{
  rule: OrderRule;
  /** `again`: a before was done once more after the target was done. */
  state: 'unmet' | 'again' | 'waived';
  strength: 'hard' | 'soft';
  /** A sentence: what is the matter. */
  words: string;
  /** A few words for the end of a row. */
  short: string;
  /** Open operations that are waited for; empty when none is on the ticket, or a fact is missing. */
  missing: readonly Readonly<{ operationId: number; castingId: number; words: string }>[];
  /** The fact that does not hold yet; null for rules about operations. */
  fact: string | null;
  /** What a person does about it. */
  todo: string;
  waiver: Waiver | null;
}>;

export type RuleInput = Readonly<{
  rules: readonly OrderRule[];
  groups: Groups;
  casting: RuleCasting;
  /** Live operations of the whole ticket. */
  operations: readonly RuleOperation[];
  /** Facts that hold for this casting. */
  facts: ReadonlySet<string>;
  waivers: readonly Waiver[];
  /** Codes and words of a group's operations, for "is not on the ticket". */
  wordsOf(code: string): string;
}>;

/** Does a group name (operation, group, gate) hold this kind? */
export function holds(name: string, kind: Pick<RuleKind, 'code' | 'gate'>, groups: Groups): boolean {
  if (name.startsWith('gate:')) return name.slice(5) === kind.gate;
  return name === kind.code || (groups.get(name)?.has(kind.code) ?? false);
}

/** Do a rule's conditions match this casting? */
export function applies(rule: OrderRule, casting: RuleCasting): boolean {
  return (
    (rule.ifKind === null || rule.ifKind === casting.kind) &&
    (rule.ifMetal === null || rule.ifMetal === casting.metal) &&
    (rule.ifCamLayout === null || rule.ifCamLayout === casting.camLayout) &&
    (rule.ifFuel === null || rule.ifFuel === casting.fuel)
  );
}

/** What stands before this operation: unmet, waived and "done again after" results, hard ones first, then by number. */
export function evaluateOperation(input: RuleInput, target: RuleOperation): RuleResult[] {
  return input.rules
    .filter((rule) => holds(rule.next, target.kind, input.groups) && applies(rule, input.casting))
    .flatMap((rule) => resultOf(input, rule, target) ?? [])
    .sort(byStrength);
}

/** What stands before a step of one casting (`sign-off`) or its ticket (`ready`, `release`). */
export function evaluateStep(input: RuleInput, step: Step, castingId: number): RuleResult[] {
  const target = { id: 0, castingId, pair: null, doneAt: null };
  return input.rules
    .filter((rule) => rule.next === `step:${step}` && applies(rule, input.casting))
    .flatMap((rule) => resultOf(input, rule, { ...target, kind: stepKind(step) }) ?? [])
    .sort(byStrength);
}

const stepKind = (step: Step): RuleKind => ({
  code: `step:${step}`,
  gate: 'none',
  section: '',
  words: step,
  position: 0,
});

const byStrength = (a: RuleResult, b: RuleResult): number =>
  a.strength === b.strength ? a.rule.no - b.rule.no || a.rule.id - b.rule.id : a.strength === 'hard' ? -1 : 1;

/** One rule against one operation; undefined when it is met. */
function resultOf(input: RuleInput, rule: OrderRule, target: RuleOperation): RuleResult | undefined {
  const waiver = input.waivers.find((w) => w.ruleId === rule.id && w.operationId === target.id) ?? null;
  const found = rule.first.startsWith('fact:') ? factResult(input, rule, target) : operationResult(input, rule, target);
  if (!found) return undefined;
  const state = found.state === 'unmet' && waiver ? 'waived' : found.state;
  return { rule, waiver, ...found, state };
}

type Found = Omit<RuleResult, 'rule' | 'waiver'>;

function factResult(input: RuleInput, rule: OrderRule, target: RuleOperation): Found | undefined {
  const fact = rule.first.slice(5);
  if (input.facts.has(fact)) return undefined;
  const said = FACT_WORDS[fact] ?? {
    words: `${capital(rule.why)}.`,
    short: `waits for ${fact}`,
    todo: `See to it: ${fact}`,
  };
  // The target of a fact is said by the fact's own sentence; a step names itself in its rule's reason.
  const words =
    target.kind.code.startsWith('step:') || fact in FACT_WORDS ? said.words : `${target.kind.words}: ${said.words}`;
  return { state: 'unmet', strength: rule.strength, words, short: said.short, missing: [], fact, todo: said.todo };
}

function operationResult(input: RuleInput, rule: OrderRule, target: RuleOperation): Found | undefined {
  const befores = input.operations.filter(
    (o) => o.id !== target.id && inScope(rule, o, target) && holds(rule.first, o.kind, input.groups),
  );
  const common = { fact: null, missing: [] as RuleResult['missing'] };
  if (befores.length === 0) {
    if (rule.need === 'if_present') return undefined;
    const name = nameOf(input, rule.first);
    return {
      ...common,
      state: 'unmet',
      strength: rule.strength,
      words: `${capital(target.kind.words)} needs ${name} first: it is not on the ticket (${rule.why}).`,
      short: `no ${name} on the ticket`,
      todo: `Ask the counter to add ${name}`,
    };
  }
  const open = befores.filter((o) => o.doneAt === null);
  if (open.length > 0) {
    const names = [...new Set(open.map((o) => o.kind.words))].join(', ');
    return {
      ...common,
      state: 'unmet',
      strength: rule.strength,
      missing: open.map((o) => ({ operationId: o.id, castingId: o.castingId, words: o.kind.words })),
      words: afterWords(target.kind.words, nameOf(input, rule.first), names, rule.why),
      short: `waits for ${names}`,
      todo: `Do ${names} first`,
    };
  }
  const { doneAt } = target;
  const again = doneAt === null ? [] : befores.filter((o) => o.doneAt !== null && o.doneAt > doneAt);
  if (again.length === 0) return undefined;
  const names = [...new Set(again.map((o) => o.kind.words))].join(', ');
  return {
    ...common,
    state: 'again',
    strength: 'soft',
    words: `${capital(names)} was done again after ${target.kind.words}. Look whether it still holds.`,
    short: `${names} done again after`,
    todo: `Check ${target.kind.words} again`,
  };
}

/** "Seat cut comes after guide work: size guides is not done (seat pilot rides the guide)." */
function afterWords(target: string, before: string, missing: string, why: string): string {
  const what = before === missing ? `${before}, which is not done` : `${before}: ${missing} not done`;
  return `${capital(target)} comes after ${what} (${why}).`;
}

function inScope(rule: OrderRule, before: RuleOperation, target: RuleOperation): boolean {
  if (rule.scope === 'ticket' || before.castingId === target.castingId) return true;
  return rule.scope === 'pair' && before.pair !== null && before.pair === target.pair;
}

/** "guide work": a group in words, or the operation's own. */
function nameOf(input: RuleInput, name: string): string {
  if (name.startsWith('gate:')) return GATE_WORDS[name.slice(5)] ?? name.slice(5);
  return input.groups.has(name) ? (GROUP_WORDS[name] ?? name.replaceAll('-', ' ')) : input.wordsOf(name);
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
