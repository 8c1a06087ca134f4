/** What to do about springs that do not pass. Common practice, no source, unless said. */

import { withMark } from '../../../kernel/measure-show.ts';
import { sheetSpring } from '../formulas/spring-here.ts';
import type { Look } from '../look.ts';
import { showComputed } from '../row-units.ts';
import { implausibleOf } from '../spring.ts';
import type { Doing, Steps } from './step.ts';

const BIND: readonly string[] = [
  'Read the solid height: all coils together.',
  'Take shims out, as long as the seat load holds.',
  'A spring that is shorter when solid, or less lift.',
];

/** Further apart than this the sheet and the wire speak of different springs: one percent of wire is four of rate. */
const APART_PERCENT = 25n;

const isApart = (a: number, b: number): boolean => {
  const apart = BigInt(a) - BigInt(b);
  return (apart < 0n ? -apart : apart) * 100n > BigInt(b) * APART_PERCENT;
};

const inRate = (look: Look, value: number): string => {
  const unit = look.facts.system === 'inch' ? 'lbf/in' : 'N/mm';
  return withMark(showComputed(value, unit, 1), unit);
};

/** A printed pair of loads that cannot be of one spring, or that its own wire speaks against. */
function doubtOfRate(value: number, look: Look): Doing | null {
  const sheet = sheetSpring(look);
  const why = sheet && implausibleOf(sheet);
  const shown = inRate(look, value);
  if (why) {
    return {
      words: `spring rate ${shown} of the sheet looks wrong: ${why}`,
      steps: ['Look at the printed loads again: one of them must be wrong.', 'Test the spring at two heights.'],
    };
  }
  const wire = look.value('spring-rate-wire')?.value ?? null;
  if (wire === null || !isApart(value, wire)) return null;
  return {
    words: `spring rate ${shown}, its wire says ${inRate(look, wire)}: look again`,
    steps: ['Measure wire, outside and coils again.', 'Right sheet for this spring?'],
  };
}

export const SPRING_STEPS: Readonly<Record<string, Steps>> = {
  'spring-rate': { doubt: doubtOfRate },
  'coil-bind-clearance': { under: BIND },
  'seal-clearance': {
    under: [
      'Measure the gap again, valve closed and no spring.',
      'Lower the guide or its seal.',
      'A taller retainer, or less lift.',
    ],
  },
  'rocker-clearance': {
    under: ['A retainer that sits lower, or a rocker with more room.', 'Turn by hand through a whole lift.'],
  },
  'open-load': {
    over: ['Less shim, as long as the seat load holds.', 'A softer spring: what the cam asks for, no more.'],
    under: ['Test the spring.', 'Replace the spring: a shim does not mend it.'],
  },
  'spring-match': { under: ['Test the spring once more.', 'Replace the weak one, or the whole set.'] },
  'spring-set': { under: ['Test the weakest once more.', 'Replace the weak ones, or the whole set.'] },
  'spring-squareness': {
    over: [
      'Turn the spring on a flat plate and look again.',
      'Replace the spring: a leaning one wears guide and stem.',
    ],
  },
  'height-spread': { over: ['Look at the tallest and the shortest valve.', 'Shim each to the same height.'] },
  'tip-spread': { over: ['Look at the highest and the lowest tip.'] },
  'surge-margin': { under: ['A stiffer or lighter spring, or a damper, for this speed.'] },
};
