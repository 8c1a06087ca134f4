/** Seats, faces, tips: widths along the seat, angles of a pair, what is left of a margin, how deep a valve sits. */
import { measureOf } from '../../../kernel/measure-units.ts';
import { divideRounded } from '../../../kernel/units.ts';
import { alongOf, axialOf, slopeOfAngle, slopeOfLength } from '../geometry/grinding.ts';
import { type Known, type Look, made, madeBy, unknown } from '../look.ts';
import { difference, type Formula, range } from './formula.ts';
import { sayLength } from './say.ts';

/** A right angle in millionths of a degree. */
const RIGHT = 90_000_000;

/**
 * Angle of a seat or a face from the plane of the head, whatever it was printed from; read, or of the sheet.
 *
 * @returns null when it is not known.
 */
function planeAngle(look: Look, quantity: 'seat-angle' | 'valve-angle'): Known | null {
  const angle = look.figure(quantity);
  if (angle?.value == null) return null;
  const reference = look.words(`${quantity}-from`, 'after') ?? look.words(`${quantity}-from`, 'before');
  const value = reference === 'stem axis' ? RIGHT - angle.value : angle.value;
  return value <= 0 || value >= RIGHT ? unknown('an angle between 0 and 90 degrees is wanted') : { ...angle, value };
}

const NO_ANGLE = 'the seat angle is wanted: measure it, or give it in the sheet';

/** Angle of the seat for sums that need one. Always a figure that can be said, with its reason where it cannot. */
const seatAngle = (look: Look): Known => planeAngle(look, 'seat-angle') ?? unknown(NO_ANGLE);

/**
 * What is ground square to a face, as it shortens the valve along its axis. Nothing ground needs no angle.
 */
export function axial(look: Look, stock: Known | null): Known | null {
  if (stock?.value == null || stock.value === 0) return stock;
  const angle = seatAngle(look);
  if (angle.value === null) return angle;
  return madeBy(
    [
      [stock, slopeOfLength(angle.value)],
      [angle, slopeOfAngle(stock.value, angle.value)],
    ],
    axialOf(stock.value, angle.value),
  );
}

/** Along the seat, from the width measured flat or from both diameters. */
function seatWidth(look: Look): Known | null {
  const flat = look.value('seat-width-flat');
  if (flat?.value != null) return along(look, flat, 'reckoned from the width measured flat');
  const across = difference(look.value('seat-outer'), look.value('seat-inner'));
  if (across?.value == null) return null;
  const half = madeBy([[across, 1 / 2]], divideRounded(BigInt(across.value), 2n));
  return along(look, half, 'reckoned from both diameters');
}

function along(look: Look, flat: Known, words: string): Known {
  const angle = seatAngle(look);
  if (flat.value === null || angle.value === null) return angle;
  const slopes = [
    [flat, slopeOfLength(angle.value)],
    [angle, slopeOfAngle(flat.value, angle.value)],
  ] as const;
  return madeBy(slopes, alongOf(flat.value, angle.value), [words]);
}

/** Half of a full swing; the offset itself. */
function eccentricity(look: Look): Known | null {
  const swing = look.value('seat-runout');
  return swing?.value == null ? null : madeBy([[swing, 1 / 2]], divideRounded(BigInt(swing.value), 2n));
}

/** The less of both sides; nothing while one is not measured. */
function leastFree(look: Look): Known | null {
  const [outer, inner] = [look.value('seat-free-outer'), look.value('seat-free-inner')];
  if (outer?.value == null || inner?.value == null) return null;
  return outer.value <= inner.value ? outer : inner;
}

/**
 * A figure less the mean of those at all places.
 *
 * @param all every place's figure, this one among them; fewer than two have no mean to speak of
 */
export function fromMean(here: Known | null, all: readonly Known[]): Known | null {
  if (here?.value == null || all.length < 2) return null;
  const count = BigInt(all.length);
  const sum = all.reduce((total, it) => total + BigInt(it.value ?? 0), 0n);
  return made([here], divideRounded(BigInt(here.value) * count - sum, count));
}

/** The margin that was found less what the face lost or is to lose; once it is measured again, that stands. */
function marginLeft(look: Look): Known | null {
  const { stage } = look.place;
  const measured = stage === 'after' ? look.value('margin') : null;
  if (measured?.value != null) return { ...measured, marks: [...measured.marks, 'measured'] };
  const off = axial(look, look.value('face-stock'));
  if (off?.value === null) return off;
  const found = stage === 'before' ? look.either('margin') : look.value('margin', { stage: 'before' });
  const left = difference(found, off);
  return left && { ...left, planned: stage === 'before' };
}

/** Taken off the deck, a valve stands less deep. It is a reckoning until somebody measures again. */
function recessionSurfaced(look: Look): Known | null {
  const left = difference(
    look.value('recession', { stage: 'before' }),
    look.value('stock-removed', { stage: 'after' }),
  );
  return left && { ...left, marks: [...left.marks, 'reckoned: measure again after surfacing'] };
}

/** Hydraulic lifters without adjustment often take no more either way; from memory. */
const LIFTER_TRAVEL = measureOf('0.020', 'in');

function tipChange(look: Look): Known | null {
  const change = difference(
    look.value('tip-height', { stage: 'after' }),
    look.value('tip-height', { stage: 'before' }),
  );
  const isMuch = change?.value != null && Math.abs(change.value) > LIFTER_TRAVEL;
  if (!change || !isMuch || look.facts.casting.camLayout !== 'ohv') return change;
  return {
    ...change,
    marks: [...change.marks, `more than ${sayLength(look, LIFTER_TRAVEL)}: inside the travel of the lifters?`],
  };
}

const knownAt = (look: Look, quantity: string): Known[] => look.all(quantity).map((it) => it.known);

export const SEAT_FORMULAS: Readonly<Record<string, Formula>> = {
  'seat-width': seatWidth,
  'angle-difference': (look) => difference(planeAngle(look, 'valve-angle'), planeAngle(look, 'seat-angle')),
  'seat-eccentricity': eccentricity,
  'seat-free': leastFree,
  'margin-left': marginLeft,
  'tip-from-mean': (look) => fromMean(look.value('tip-height'), knownAt(look, 'tip-height')),
  'tip-change': tipChange,
  'tip-spread': (look) => range(knownAt(look, 'tip-height')),
  'recession-surfaced': recessionSurfaced,
};
