/** The rules, groups and operations that the program brings, in the shape the computes read. */
import { readFileSync } from 'node:fs';
import type { FitKind, FitRow } from '#core/catalogue/compute/fit.ts';
import type { Gate, OrderRule, RuleKind } from '#core/catalogue/compute/order-rules.ts';

const read = <T>(name: string): T =>
  JSON.parse(readFileSync(new URL(`../../../../assets/catalogue/${name}.json`, import.meta.url), 'utf8')) as T;

type RuleFile = Readonly<{
  groups: Readonly<Record<string, readonly string[]>>;
  rules: readonly (Omit<OrderRule, 'id' | 'next'> & Readonly<{ before: string }>)[];
}>;
type OperationFile = Readonly<{
  operations: readonly Readonly<{
    code: string;
    shopWords: string;
    section: string;
    gate: Gate;
    fits: readonly FitRow[];
    uses: readonly Readonly<{ castingKind: string; countFrom: string }>[];
  }>[];
}>;

const rulesFile = read<RuleFile>('order-rules');
const { operations } = read<OperationFile>('operations');

export const GROUPS: ReadonlyMap<string, ReadonlySet<string>> = new Map(
  Object.entries(rulesFile.groups).map(([code, members]) => [code, new Set(members)]),
);

export const RULES: readonly OrderRule[] = rulesFile.rules.map(({ before, ...rule }, index) => ({
  ...rule,
  id: index + 1,
  next: before,
}));

export const KINDS: readonly RuleKind[] = operations.map((o, index) => ({
  code: o.code,
  gate: o.gate,
  section: o.section,
  words: o.shopWords,
  position: index,
}));

/** An operation of the catalogue. */
export function kindOf(code: string): RuleKind {
  const found = KINDS.find((kind) => kind.code === code);
  if (!found) throw new Error(`no operation ${code}`);
  return found;
}

export const wordsOf = (code: string): string => kindOf(code).words;

/** Operations done on a kind of casting. */
export const kindsOn = (castingKind: string): RuleKind[] =>
  operations.filter((o) => o.uses.some((use) => use.castingKind === castingKind)).map((o) => kindOf(o.code));

/** An operation as the fit rule sees it on one kind of casting. */
export function fitKindOf(code: string, castingKind: string): FitKind {
  const found = operations.find((o) => o.code === code);
  if (!found) throw new Error(`no operation ${code}`);
  return {
    code,
    words: found.shopWords,
    section: found.section,
    fits: found.fits,
    countFrom: found.uses.find((use) => use.castingKind === castingKind)?.countFrom ?? null,
    groups: [...GROUPS].filter(([, members]) => members.has(code)).map(([group]) => group),
  };
}

export const fitKindsOn = (castingKind: string): FitKind[] => operations.map((o) => fitKindOf(o.code, castingKind));
