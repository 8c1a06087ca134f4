/** Leak tests: how fast the pressure falls, whatever time it was watched. */
import { divideRounded } from '../../../kernel/units.ts';
import { type Known, type Look, made, unknown } from '../look.ts';
import { difference, type Formula } from './formula.ts';

/** Falls are compared over this time, in seconds. */
const OVER = 600n;

/** Fall of pressure in ten minutes, as if it went on as it did. */
function fall(look: Look): Known | null {
  const fell = difference(look.value('pressure-held'), look.value('pressure-end'));
  if (fell?.value == null) return null;
  const time = look.value('leak-minutes');
  if (time?.value == null || time.value <= 0) return unknown('say how long it stood under pressure');
  const seconds = BigInt(time.value);
  const doubt = fell.uncertainty;
  return {
    ...made([fell], meeting(look.high('pressure-fall'), divideRounded(BigInt(fell.value) * OVER, seconds), seconds)),
    uncertainty: doubt === null ? null : Number((BigInt(doubt) * OVER + seconds - 1n) / seconds),
  };
}

/**
 * Pressures are kept in whole base units, so that three rounded figures of one unit may miss each other by a hair: a fall that
 * meets its limit within that rounding meets it.
 */
function meeting(limit: number | null, value: number, seconds: bigint): number {
  const slack = divideRounded(2n * OVER, seconds) + 1;
  return limit !== null && Math.abs(value - limit) <= slack ? limit : value;
}

export const LEAK_FORMULAS: Readonly<Record<string, Formula>> = { 'pressure-fall': fall };
