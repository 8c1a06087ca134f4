/**
 * The spring under one valve: what was measured of it where it was tested, else what the sheet says. A pair of springs is
 * tested as a pair; where only the sheets of both are known, or both were tested apart, their loads are added:
 * `F = F_outer(h) + F_inner(h - s)`, s the step between them.
 */
import { divideRounded } from '../../../kernel/units.ts';
import type { Look } from '../look.ts';
import { implausibleOf, loadAt, rateOf, type Spring, type SpringPoint, springOf } from '../spring.ts';

const NOMINAL_SPRING = 'calculated, nominal spring';
const OWN_SPRING = 'calculated, this spring as tested';
const ONE_LOAD = 'calculated, this spring tested at one height, rate of the sheet';
const FREE_LENGTH = 'calculated from free length and one load, rougher';

export type SpringHere = Readonly<{
  outer: Spring;
  /** Null for a single spring, or a pair that was tested as one. */
  inner: Readonly<{ spring: Spring; step: number }> | null;
  /** What stands beside every figure made of it. */
  marks: readonly string[];
}>;

/** Why no load can be said though something of the spring is known. */
export type SpringMissing = Readonly<{ missing: string }>;

type Which = 'spring' | 'inner';

/** Loads read on the bench, at the height read with them or of the sheet. */
function testedPoints(look: Look, which: Which): SpringPoint[] {
  return ([1, 2] as const).flatMap((n) => {
    const load = look.value(`${which}-load-${n}`, { stage: 'after' })?.value ?? null;
    const read = look.value(`${which}-height-${n}`, { stage: 'after' })?.value ?? null;
    const height = read ?? look.target(`${which}-height-${n}`);
    return load === null || height === null ? [] : [{ height, load }];
  });
}

/** What the sheet prints for a load: its figure, else the middle of its band. */
function printedLoad(look: Look, quantity: string): number | null {
  const [low, high] = [look.low(quantity), look.high(quantity)];
  const middle = low === null || high === null ? null : divideRounded(BigInt(low) + BigInt(high), 2n);
  return look.target(quantity) ?? middle;
}

function sheetPoints(look: Look, which: Which): SpringPoint[] {
  return ([1, 2] as const).flatMap((n) => {
    const [load, height] = [printedLoad(look, `${which}-load-${n}`), look.target(`${which}-height-${n}`)];
    return load === null || height === null ? [] : [{ height, load }];
  });
}

/** The spring of the sheet alone; null when two loads at two heights are not printed. */
export const sheetSpring = (look: Look, which: Which = 'spring'): Spring | null =>
  springOf(sheetPoints(look, which), false);

type Line = Readonly<{ spring: Spring; marks: readonly string[] }>;

/** One load of its own: the sheet's line moved to it, else the line from its free length. */
function lineOfOne(look: Look, point: SpringPoint, sheet: Spring | null): Line | null {
  const printed = sheet && loadAt(sheet, point.height);
  if (sheet && printed !== null) {
    const moved = sheet.points.map((it) => ({ height: it.height, load: it.load + point.load - printed }));
    const spring = springOf(moved, true);
    return spring && { spring, marks: [ONE_LOAD] };
  }
  const free = look.value('spring-free-length', { stage: 'after' })?.value ?? null;
  const spring = free === null || free <= point.height ? null : springOf([{ height: free, load: 0 }, point], true);
  return spring && { spring, marks: [FREE_LENGTH] };
}

/** Tested, else of the sheet. A weak spring is never hidden behind the sheet's figures. */
function lineOf(look: Look, which: Which): Line | null {
  const tested = testedPoints(look, which);
  const own = springOf(tested, true);
  if (own) return { spring: own, marks: [OWN_SPRING] };
  const sheet = sheetSpring(look, which);
  const [one] = tested;
  if (one) {
    const moved = lineOfOne(look, one, sheet);
    if (moved) return moved;
  }
  return (
    sheet && {
      spring: sheet,
      marks: [NOMINAL_SPRING, ...(implausibleOf(sheet) === null ? [] : ['loads of the sheet look wrong'])],
    }
  );
}

/** Something of an inner spring is known: one load, read or printed. */
const knowsInner = (look: Look): boolean =>
  printedLoad(look, 'inner-load-1') !== null ||
  (['inner-load-1', 'inner-load-2'] as const).some((it) => look.value(it, { stage: 'after' }) !== null);

/** @returns null when nothing of the spring is known. */
export function springHere(look: Look): SpringHere | SpringMissing | null {
  const outer = lineOf(look, 'spring');
  if (!outer) return null;
  if (!knowsInner(look)) return { outer: outer.spring, inner: null, marks: outer.marks };
  const inner = lineOf(look, 'inner');
  if (!inner) return { missing: 'the inner spring wants two loads at two heights' };
  if (outer.spring.tested && !inner.spring.tested)
    return { outer: outer.spring, inner: null, marks: [...outer.marks, 'tested as a pair'] };
  const step = look.figure('inner-step')?.value ?? null;
  if (step === null) return { missing: 'how much shorter the inner spring stands is wanted, 0 for alike' };
  return {
    outer: outer.spring,
    inner: { spring: inner.spring, step },
    marks: [...new Set([...outer.marks, ...inner.marks, 'outer and inner spring added'])],
  };
}

/** The spring where loads can be said of it. */
export function wholeSpring(look: Look): SpringHere | null {
  const found = springHere(look);
  return found && 'outer' in found ? found : null;
}

/** Load of the spring or of both at a height; null past what was ever measured of one of them. */
export function loadHere({ outer, inner }: SpringHere, height: number): number | null {
  const load = loadAt(outer, height);
  if (!inner || load === null) return load;
  const more = loadAt(inner.spring, height - inner.step);
  return more === null ? null : load + more;
}

/** Rate of the spring or of both at a height, or of the first stretch. */
export function rateHere({ outer, inner }: SpringHere, height?: number): number | null {
  const rate = rateOf(outer, height);
  if (!inner || rate === null) return rate;
  const more = rateOf(inner.spring, height === undefined ? undefined : height - inner.step);
  return more === null ? null : rate + more;
}
