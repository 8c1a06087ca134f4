/**
 * Lash shims of bucket engines: new = old + measured lash - wanted lash, all exact.
 *
 * Which sizes a shop or a maker has is said by figures of the sheet: smallest and largest as limits of the lash shim, and the
 * step between sizes. Without a step the exact thickness is named.
 */
import { divideRounded } from '../../../kernel/units.ts';
import { type Known, type Look, made, unknown } from '../look.ts';
import type { Formula } from './formula.ts';

/** What is aimed at: the target, else the middle of the limits. */
function wantedLash(look: Look): number | null {
  const [low, high] = [look.low('lash'), look.high('lash')];
  return look.target('lash') ?? (low === null || high === null ? null : divideRounded(BigInt(low) + BigInt(high), 2n));
}

/** Lash with no shim at all: what every choice starts from. */
function roomOf(look: Look): Known | null {
  const old = look.value('lash-shim', { stage: 'before' });
  const lash = look.value('lash', { stage: 'before' });
  return old?.value == null || lash?.value == null ? null : made([old, lash], old.value + lash.value);
}

function shimWanted(look: Look): Known | null {
  const room = roomOf(look);
  if (room?.value == null) return null;
  const lash = wantedLash(look);
  return lash === null
    ? unknown('no wanted lash is known: set its target or its limits')
    : made([room], room.value - lash);
}

/** Sizes as far as the sheet says them. */
function sizesOf(look: Look) {
  const known = look.figure('lash-shim-step');
  if (known?.value == null || known.value <= 0) return null;
  return { known, step: known.value, low: look.low('lash-shim'), high: look.high('lash-shim') };
}

/** The size nearest to a thickness; of two alike the thinner one: a valve without lash burns. */
function nearest(wanted: number, { step, low, high }: NonNullable<ReturnType<typeof sizesOf>>): number {
  const from = low ?? 0;
  const last = high === null ? Number.POSITIVE_INFINITY : Math.floor((high - from) / step);
  const below = Math.floor((wanted - from) / step);
  const index = wanted - (from + below * step) <= from + (below + 1) * step - wanted ? below : below + 1;
  return from + Math.min(Math.max(index, 0), last) * step;
}

function shimChosen(look: Look): Known | null {
  const wanted = look.value('lash-shim-wanted');
  if (wanted?.value == null) return wanted;
  const sizes = sizesOf(look);
  if (!sizes) return { ...made([wanted], wanted.value, ['exact: no list of sizes known']), planned: true };
  return { ...made([wanted], nearest(wanted.value, sizes), sizes.known.marks), planned: true };
}

/** With the shim that is in, else with the one to fit; once it is measured again, that stands. */
function lashWithShim(look: Look): Known | null {
  const measured = look.value('lash', { stage: 'after' });
  if (measured?.value != null) return { ...measured, marks: [...measured.marks, 'measured'] };
  const room = roomOf(look);
  const shim = look.value('lash-shim', { stage: 'after' }) ?? look.value('lash-shim-chosen');
  return room?.value == null || shim?.value == null ? null : made([room, shim], room.value - shim.value);
}

export const LASH_FORMULAS: Readonly<Record<string, Formula>> = {
  'lash-shim-wanted': shimWanted,
  'lash-shim-chosen': shimChosen,
  'lash-with-shim': lashWithShim,
};
