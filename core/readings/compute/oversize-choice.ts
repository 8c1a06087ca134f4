/** Every oversize of the list with both rules beside each other; the machinist chooses. Pure. */
import { OVERSIZES, type Oversize, STANDARD } from '../../catalogue/compute/oversizes.ts';
import type { SpotId } from '../../kernel/ids.ts';
import { otherDecimals, showValue, withMark } from '../../kernel/measure-show.ts';
import { type Bench, openBench } from './bench.ts';
import type { Facts } from './model.ts';
import { type BoreFacts, boringSize, deepest, finishedSize, neededSize } from './oversize.ts';
import {
  boreFactsOf,
  cylindersOf,
  type PistonKnown,
  pistonOf,
  pistonsByCylinder,
  type ReadBore,
  readBoreAt,
  type Sourced,
  sourcedFigures,
} from './oversize-facts.ts';
import type { LargestBore, OversizeCandidate, OversizeChoice, OversizeRule, SizeShown } from './oversize-model.ts';
import { type Case, judgeSize } from './oversize-verdict.ts';
import { chosenSizes, depthsWords, oversizeWarnings } from './oversize-words.ts';
import { showComputed } from './row-units.ts';
import { systemOfCasting } from './system.ts';

/** Who is bored: `only` these cylinders, or all; of them `sleeves` get a sleeve first. */
export type OversizeAsked = Readonly<{ only: readonly SpotId[] | null; sleeves: readonly SpotId[] }>;

type Show = Case['show'];
type Task = Readonly<{
  bench: Bench;
  unit: 'in' | 'mm';
  decimals: number;
  show: Show;
  figures: readonly Sourced[];
  facts: (BoreFacts & Readonly<{ standard: number }>) | null;
  bores: readonly ReadBore[];
  sleeves: readonly ReadBore[];
}>;

/** @returns the answer; candidates are empty while the standard bore is not known. */
export function oversizeChoiceOf(factsOfCasting: Facts, asked: OversizeAsked): OversizeChoice {
  const task = taskOf(openBench(factsOfCasting), asked);
  const { bench, show, bores, sleeves, figures } = task;
  const candidates = candidatesOf(task);
  const unread = bores.filter((it) => it.missing.length > 0);
  return {
    unit: task.unit,
    decimals: task.decimals,
    cylinders: bores.map(({ spot }) => ({ spot: spot.id, label: spot.label })),
    sleeves: sleeves.map(({ spot }) => ({ spot: spot.id, label: spot.label })),
    which: whichWords(bench, bores),
    figures: figures.map(({ value, ...it }) => ({ ...it, size: value === null ? null : show(value) })),
    pistons: pistonsWords(candidates),
    depths: depthsWords(bench, task.unit),
    largest: largestOf(task),
    unread: unread.map(({ spot, missing }) => ({
      spot: spot.id,
      label: spot.label,
      words: `cylinder ${spot.label}: ${missing.join('; ')}`,
    })),
    rules: (['centred', 'original'] as const).map((rule) => ruleOf(rule, task, candidates)),
    candidates,
    chosen: chosenSizes(bench, show, candidates),
    warnings: oversizeWarnings(bench, { ...task, candidates }),
    missing: missingOf(task),
  };
}

function taskOf(bench: Bench, { only, sleeves }: OversizeAsked): Task {
  const unit = systemOfCasting(bench) === 'inch' ? 'in' : 'mm';
  const decimals = unit === 'in' ? 4 : 3;
  const other = unit === 'in' ? 'mm' : 'in';
  const show: Show = (value, sign = false): SizeShown => ({
    value,
    text: sign ? showValue(value, unit, decimals, { sign }) : showComputed(value, unit, decimals),
    other: withMark(showValue(value, other, otherDecimals(unit, decimals), { sign }), other),
  });
  const figures = sourcedFigures(bench);
  const asked = cylindersOf(bench, only).map((spot) => readBoreAt(bench, spot));
  return {
    bench,
    unit,
    decimals,
    show,
    figures,
    facts: boreFactsOf(bench, figures),
    bores: asked.filter(({ spot }) => !sleeves.includes(spot.id)),
    sleeves: cylindersOf(bench, sleeves).map((spot) => readBoreAt(bench, spot)),
  };
}

function candidatesOf(task: Task): readonly OversizeCandidate[] {
  const { bench, facts, bores, sleeves } = task;
  if (facts === null) return [];
  const set = pistonsByCylinder(
    bench,
    [...bores, ...sleeves].map(({ spot }) => spot),
  );
  return OVERSIZES.flatMap((size) => {
    const piston = pistonOf(bench, size, facts, set?.largest ?? null);
    return isListed(size, piston, task) ? [{ size, piston }] : [];
  })
    .toSorted((a, b) => a.size.over - b.size.over)
    .map(({ size, piston }) => candidateOf(size, piston, task, facts));
}

/** Sizes of the unit the job is worked in; others, and standard, only when their pistons are here or a sleeve asks for it. */
const isListed = (size: Oversize, piston: PistonKnown, { unit, sleeves }: Task): boolean =>
  piston.measured || (size === STANDARD ? sleeves.length > 0 : size.unit === unit);

function candidateOf(size: Oversize, piston: PistonKnown, task: Task, facts: BoreFacts): OversizeCandidate {
  const { show } = task;
  const finished = piston.size === null || facts.clearance === null ? null : finishedSize(piston.size, facts.clearance);
  const boring = finished === null || facts.hone === null ? null : boringSize(finished, facts.hone);
  const asked = { finished, boring, made: piston.made, unknown: unknownWords(facts) };
  const byRule = (rule: OversizeRule) => judgeSize(asked, caseOf(rule, task, facts));
  return {
    code: size.code,
    over: size === STANDARD || size.unit === task.unit ? size.text : withMark(size.text, size.unit),
    words: size.words,
    piston: piston.size === null ? null : show(piston.size),
    measured: piston.measured,
    pistonWords: piston.words,
    finished: finished === null ? null : show(finished),
    boring: boring === null ? null : show(boring),
    centred: byRule('centred'),
    original: byRule('original'),
    ask: piston.measured || piston.size === null ? null : askWords(show(piston.size).text),
  };
}

const askWords = (nominal: string): string =>
  `No piston of this set was measured. The nominal size ${nominal} is only what it should be. Bore to it all the same?`;

const unknownWords = ({ clearance, hone }: BoreFacts): string =>
  [
    ...(clearance === null ? ['The clearance wanted between piston and bore is not known.'] : []),
    ...(hone === null ? ['What is left for the hone is not known.'] : []),
  ].join(' ');

function caseOf(rule: OversizeRule, { bench, bores, show }: Task, facts: BoreFacts): Case {
  const top = deepest(bores);
  const uncertainty = bores.find((it) => it === top)?.largest?.uncertainty ?? null;
  return {
    rule,
    facts,
    bores,
    reach: top?.reach == null ? null : { value: top.reach, uncertainty },
    unread: bores.filter((it) => it.missing.length > 0).map((it) => `${it.label}: ${it.missing.join(', ')}`),
    guard: bench.facts.guard,
    show,
  };
}

function largestOf({ bores, show }: Task): LargestBore | null {
  const top = bores.find((it) => it === deepest(bores));
  if (top?.reach == null || top.largest?.value == null) return null;
  return {
    spot: top.spot.id,
    label: top.spot.label,
    words: `${top.label}, ${top.at}`,
    size: show(top.largest.value),
    score: top.score === null ? null : show(top.score),
    reach: show(top.reach),
  };
}

const RULE_WORDS = { centred: 'Centred on wear', original: 'Kept on centre' } as const;

function ruleOf(
  rule: OversizeRule,
  task: Task,
  candidates: readonly OversizeCandidate[],
): OversizeChoice['rules'][number] {
  const { facts, bores, show } = task;
  const reach = deepest(bores)?.reach ?? null;
  const best = candidates.find((it) => it[rule].name === 'pass' && it.measured);
  return {
    rule,
    words: RULE_WORDS[rule],
    need: facts === null || reach === null ? null : show(neededSize(rule, reach, facts)),
    best: best?.code ?? null,
    why: best ? '' : whyNone(rule, candidates),
  };
}

function whyNone(rule: OversizeRule, candidates: readonly OversizeCandidate[]): string {
  if (candidates.length === 0) return 'The standard bore is not known.';
  const open = candidates.find((it) => it[rule].name !== 'fail');
  if (!open) return 'No size of the list will do: sleeve the bores, or ask for another size of piston.';
  if (open[rule].name === 'pass') return `${open.words} would do. Measure a piston of the set first.`;
  return open[rule].reason;
}

/** `all 8`, `cylinder 3`, `all but cylinder 3`. */
function whichWords(bench: Bench, bores: readonly ReadBore[]): string {
  const all = cylindersOf(bench, null);
  if (bores.length === 0) return 'none';
  if (bores.length === all.length) return `all ${all.length}`;
  const left = all.filter((it) => !bores.some(({ spot }) => spot.id === it.id));
  const [one] = left;
  if (left.length === 1 && one && bores.length > 1) return `all but cylinder ${one.label}`;
  return `${bores.length === 1 ? 'cylinder' : 'cylinders'} ${bores.map(({ spot }) => spot.label).join(', ')}`;
}

function pistonsWords(candidates: readonly OversizeCandidate[]): string {
  const here = candidates.filter((it) => it.measured);
  return here.length === 0 ? 'not measured' : `measured: ${here.map((it) => it.over).join(', ')}`;
}

/** Wall, greatest bore and clean-up do not stop a choice; they are warned of. */
function missingOf({ facts, figures, bores }: Task): readonly string[] {
  const isRead = bores.length === 0 || bores.some((it) => it.reach !== null);
  const known = (quantity: string) => figures.find((it) => it.quantity === quantity)?.value !== null;
  return [
    ...(facts === null ? ['Type the standard bore as a limit of this job, with where it comes from.'] : []),
    ...(known('piston-clearance') ? [] : ['Type the piston clearance wanted as a limit of this job.']),
    ...(known('hone-allowance') ? [] : ['Type what is left for the hone.']),
    ...(isRead ? [] : ['Read the bores.']),
  ];
}
