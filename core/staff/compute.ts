/** What makes a PIN too easy. Pure. */

/** The practice shop's PINs stand in its printed guide, so a real shop may not use them. */
const PRACTICE_PINS = ['740101', '740102', '740103', '740104', '740105', '740106', '740107', '740108'];

/**
 * Why this PIN is refused, as a sentence; undefined when it is good.
 *
 * @param digits the length the shop has chosen, 4 to 8
 * @param practice true in the practice shop, where its printed PINs are allowed
 */
export function pinFault(pin: string, digits: number, practice: boolean): string | undefined {
  if (!/^\d+$/.test(pin)) return 'A PIN is digits only.';
  if (pin.length !== digits) return `This shop uses ${digits} digits; this is ${pin.length}.`;
  const steps = [...pin].slice(1).map((digit, index) => Number(digit) - Number(pin[index]));
  if (steps.every((step) => step === 0)) return 'All digits alike are guessed first. Choose another PIN.';
  if (steps.every((step) => step === 1) || steps.every((step) => step === -1)) {
    return 'A run of digits is guessed first. Choose another PIN.';
  }
  if (!practice && PRACTICE_PINS.includes(pin)) return 'This PIN is printed in the practice shop. Choose another one.';
  return undefined;
}

/** Wrong tries on one device for one person before it waits. */
export const MOST_TRIES = 5;
/** Minutes that a device waits for that person after too many wrong tries. */
export const WAIT_MINUTES = 5;
/** Minutes for which a PIN just typed on the same device need not be typed again. */
export const FRESH_MINUTES = 2;
