/** The order in which operations stand on the traveller, and whether rules can be obeyed at all. Pure. */
import {
  applies,
  type Gate,
  type Groups,
  holds,
  type OrderRule,
  type RuleCasting,
  type RuleKind,
} from './order-rules.ts';

/** One thing to be ordered; `key` is the caller's own (operation id, or code). */
export type Ordered = Readonly<{ key: number | string; kind: RuleKind }>;

/** Washing after assembly would undo it: the last wash, assembly and tests stand at the end. Common practice, no source. */
const PHASES: Readonly<Record<Gate, number>> = {
  strip: 0,
  clean: 1,
  crack: 2,
  machine: 3,
  none: 3,
  final_clean: 4,
  assemble: 5,
};
const PHASE_OF_SECTION: Readonly<Record<string, number>> = { strip: 0, clean: 1, assemble: 5, test: 6, wrap: 7 };

const phaseOf = (kind: RuleKind): number =>
  kind.gate === 'none' ? (PHASE_OF_SECTION[kind.section] ?? PHASES.none) : PHASES[kind.gate];

/**
 * Stable topological order by the rules that match, then by phase and place in the catalogue; equal ones keep the order
 * they came in. Rules that wait for each other are broken at the catalogue's place, never lost: every item comes out once.
 */
export function travellerOrder<T extends Ordered>(
  items: readonly T[],
  rules: readonly OrderRule[],
  groups: Groups,
  casting: RuleCasting,
): T[] {
  const befores = beforesOf(items, rules, groups, casting);
  const rest = items
    .map((item, index) => ({ item, index }))
    .sort((a, b) => rank(a.item) - rank(b.item) || a.index - b.index)
    .map(({ item }) => item);
  const placed = new Set<T>();
  const result: T[] = [];
  while (rest.length > 0) {
    const free = rest.findIndex((item) => [...(befores.get(item) ?? [])].every((before) => placed.has(before)));
    const [next] = rest.splice(Math.max(free, 0), 1);
    if (next === undefined) break;
    placed.add(next);
    result.push(next);
  }
  return result;
}

/** Catalogue places stay far below this many. */
const PLACES = 1_000_000;
const rank = (item: Ordered): number => phaseOf(item.kind) * PLACES + item.kind.position;

function beforesOf<T extends Ordered>(
  items: readonly T[],
  rules: readonly OrderRule[],
  groups: Groups,
  casting: RuleCasting,
): Map<T, Set<T>> {
  const befores = new Map<T, Set<T>>();
  for (const rule of rules) {
    if (!applies(rule, casting) || rule.first.startsWith('fact:') || rule.next.startsWith('step:')) continue;
    for (const after of items.filter((item) => holds(rule.next, item.kind, groups))) {
      const known = befores.get(after) ?? new Set();
      befores.set(after, known);
      for (const first of items) {
        if (first !== after && first.kind.code !== after.kind.code && holds(rule.first, first.kind, groups))
          known.add(first);
      }
    }
  }
  return befores;
}

/**
 * A circle of rules on one kind of casting: the codes in order, the first repeated at the end; undefined when there is
 * none. A rule that would make one is refused when it is saved.
 */
export function findCircle(
  kinds: readonly RuleKind[],
  rules: readonly OrderRule[],
  groups: Groups,
  casting: RuleCasting,
): string[] | undefined {
  const items = kinds.map((kind) => ({ key: kind.code, kind }));
  const befores = beforesOf(items, rules, groups, casting);
  const state = new Map<Ordered, 'open' | 'closed'>();
  const path: Ordered[] = [];
  const visit = (item: Ordered): string[] | undefined => {
    if (state.get(item) === 'closed') return undefined;
    if (state.get(item) === 'open') {
      return [...path.slice(path.indexOf(item)), item].map((step) => step.kind.code).reverse();
    }
    state.set(item, 'open');
    path.push(item);
    for (const before of befores.get(item as (typeof items)[number]) ?? []) {
      const circle = visit(before);
      if (circle) return circle;
    }
    path.pop();
    state.set(item, 'closed');
    return undefined;
  };
  for (const item of items) {
    const circle = visit(item);
    if (circle) return circle;
  }
  return undefined;
}
