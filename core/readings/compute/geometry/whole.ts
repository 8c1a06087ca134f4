/**
 * The way back from geometry to exact figures. Roots, angles and circles are the one place where floats are allowed; what
 * they give is rounded once to the base unit before anybody shows or judges it.
 */

/**
 * Round to a whole base unit, half away from zero.
 *
 * @throws RangeError when the figure is not finite or too large to be exact: the caller checks its inputs first
 */
export function wholeOf(figure: number): number {
  const whole = Math.sign(figure) * Math.round(Math.abs(figure));
  if (!Number.isSafeInteger(whole)) throw new RangeError(`no whole base unit: ${figure}`);
  return whole === 0 ? 0 : whole;
}

/** Radians of an angle kept in millionths of a degree. */
export const radiansOf = (microdegrees: number): number => (microdegrees / 180_000_000) * Math.PI;
