/** What the choice of an oversize stands on, read from a casting: sizes, walls, pistons in the hand, and what is missing. */
import type { Oversize } from '../../catalogue/compute/oversizes.ts';
import type { SpotId } from '../../kernel/ids.ts';
import type { Bench } from './bench.ts';
import { OPTIONAL } from './formulas/bores.ts';
import { readPoints } from './formulas/points.ts';
import type { Known } from './look.ts';
import type { Spot } from './model.ts';
import type { BoreFacts, WornBore } from './oversize.ts';

/** A figure with the words that say where it comes from. */
export type Sourced = Readonly<{ quantity: string; words: string; value: number | null; source: string }>;

/** A bore with what was read in it. */
export type ReadBore = WornBore &
  Readonly<{
    spot: Spot;
    /** Where the largest reading is: `thrust, top`; empty when nothing was read. */
    at: string;
    largest: Known | null;
    score: number | null;
    missing: readonly string[];
  }>;

const BEFORE = 'before' as const;

/** What was typed at either stage, with who typed it. */
function typed(bench: Bench, quantity: string): Omit<Sourced, 'quantity' | 'words'> | null {
  for (const stage of [BEFORE, 'after'] as const) {
    const { current } = bench.rows(quantity, null, null, stage);
    if (current?.kind === 'number' && current.value !== null)
      return { value: current.value, source: `typed by ${current.by}` };
  }
  return null;
}

type Wanted = 'target' | 'low' | 'high';

/** The figure of the limit in force at either stage, with its source. */
function fromLimit(bench: Bench, quantity: string, which: Wanted): Omit<Sourced, 'quantity' | 'words'> | null {
  for (const stage of [BEFORE, 'after'] as const) {
    const limit = bench.limit(quantity, stage, null)?.limit;
    const value = limit?.[which] ?? null;
    if (limit && value !== null)
      return { value, source: limit.checked ? limit.sourceWords : `${limit.sourceWords}, not checked` };
  }
  return null;
}

const NONE = { value: null, source: 'not known' } as const;

/** The six figures, in the order they are shown. */
export function sourcedFigures(bench: Bench): readonly Sourced[] {
  const engine = bench.facts.engine?.bore ?? null;
  const nominal = engine === null ? null : { value: engine, source: 'nominal bore of the engine' };
  const given = (quantity: string) => typed(bench, quantity) ?? fromLimit(bench, quantity, 'target') ?? NONE;
  return [
    { quantity: 'bore', words: 'standard bore', ...(fromLimit(bench, 'bore', 'target') ?? nominal ?? NONE) },
    {
      quantity: 'piston-clearance',
      words: 'piston clearance',
      ...(fromLimit(bench, 'piston-clearance', 'target') ?? NONE),
    },
    { quantity: 'hone-allowance', words: 'left for the hone', ...given('hone-allowance') },
    { quantity: 'clean-up', words: 'clean-up', ...given('clean-up') },
    {
      quantity: 'bore-greatest',
      words: 'greatest bore',
      ...(typed(bench, 'bore-greatest') ??
        fromLimit(bench, 'bore-greatest', 'target') ??
        fromLimit(bench, 'bore-greatest', 'high') ??
        NONE),
    },
    { quantity: 'wall-thickness', words: 'least wall', ...(fromLimit(bench, 'wall-thickness', 'low') ?? NONE) },
  ];
}

/** The figures as the arithmetic wants them; null while the standard bore is not known. `standard` is the size pistons count from. */
export function boreFactsOf(
  bench: Bench,
  figures: readonly Sourced[],
): (BoreFacts & Readonly<{ standard: number }>) | null {
  const [standard, clearance, hone, cleanUp, greatest, leastWall] = figures.map(({ value }) => value);
  if (standard == null) return null;
  const start = typed(bench, 'bore-present')?.value ?? standard;
  return {
    standard,
    start,
    clearance: clearance ?? null,
    hone: hone ?? null,
    cleanUp: cleanUp ?? null,
    greatest: greatest ?? null,
    leastWall: leastWall ?? null,
  };
}

/** One cylinder as found. */
export function readBoreAt(bench: Bench, spot: Spot): ReadBore {
  const look = bench.look({ spot, stage: BEFORE });
  const { read, missing } = readPoints(look, 'bore', OPTIONAL);
  const top = read.toSorted((a, b) => b.value - a.value)[0];
  const score = look.either('score-depth')?.value ?? null;
  return {
    spot,
    label: `cylinder ${spot.label}`,
    at: top?.words ?? '',
    largest: top?.known ?? null,
    score,
    reach: top ? top.value + 2 * (score ?? 0) : null,
    wall: look.value('wall-thickness')?.value ?? null,
    shift: look.either('centre-shift')?.value ?? null,
    missing,
  };
}

/** Pistons of one size, as far as they are in the hand. */
export type PistonKnown = Readonly<{ size: number | null; measured: boolean; made: boolean; words: string }>;

/** Farther from every size of the list than this, a set belongs to none: half of the smallest step. */
const NEAR = 127_000;

/** The largest piston that was measured cylinder by cylinder, and how far the set lies apart; null for none. */
export function pistonsByCylinder(
  bench: Bench,
  spots: readonly Spot[],
): Readonly<{ largest: number; apart: number }> | null {
  const sizes = spots.flatMap((spot) => bench.look({ spot, stage: BEFORE }).either('piston-size')?.value ?? []);
  return sizes.length === 0 ? null : { largest: Math.max(...sizes), apart: Math.max(...sizes) - Math.min(...sizes) };
}

/** What is known of the pistons of a size: measured for it, or measured one by one and nearest to it, or only its nominal size. */
export function pistonOf(
  bench: Bench,
  size: Oversize,
  facts: Readonly<{ standard: number; clearance: number | null }>,
  byCylinder: number | null,
): PistonKnown {
  const { current } = bench.rows('piston-offered', null, size.code, BEFORE);
  if (current?.kind === 'not_applicable') return { size: null, measured: false, made: false, words: 'not made' };
  if (current?.kind === 'number' && current.value !== null) {
    return { size: current.value, measured: true, made: true, words: 'measured' };
  }
  const nominal = facts.clearance === null ? null : facts.standard + size.over - facts.clearance;
  if (byCylinder !== null && nominal !== null && Math.abs(byCylinder - nominal) < NEAR) {
    return { size: byCylinder, measured: true, made: true, words: 'largest of the set, measured' };
  }
  return { size: nominal, measured: false, made: true, words: 'not measured' };
}

/** Cylinders by id, in bench order: those asked, or all. */
export const cylindersOf = (bench: Bench, only: readonly SpotId[] | null): Spot[] =>
  bench.facts.spots
    .filter((it) => it.kind === 'cylinder' && (only === null || only.includes(it.id)))
    .toSorted((a, b) => a.row - b.row || a.benchOrder - b.benchOrder);
