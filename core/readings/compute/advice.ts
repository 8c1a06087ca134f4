/**
 * What to do about a valve that no shim puts right. The order matters: look before you cut.
 *
 * Source: common practice, no source; the order is the shop handbook's. A spring pocket in aluminium with a steel cup is
 * never cut without the lead.
 */

/** Too short even without a shim: the load is too high and the coils may bind. */
export function stepsTooShort(aluminium: boolean): readonly string[] {
  return [
    'Locks and cup seated?',
    'Old shim or burr under the cup or spring?',
    'Valve fully closed?',
    'Proud seat or new valve: compare with the others.',
    'Cut the seat, within tip height and lash limits.',
    aluminium
      ? 'Spring pocket last, and only with the lead: aluminium under a steel cup.'
      : 'Cut the spring pocket last.',
  ];
}

/** Too tall with the thickest stack allowed: the load is too low. */
export const STEPS_TOO_TALL: readonly string[] = [
  'Height read on the right surface, locks pulled tight?',
  'New seat insert.',
  'Offset lock, or a retainer that sits lower.',
  'Spring cup under the spring.',
];

/** The height is right and the spring is not. */
export const STEPS_WEAK: readonly string[] = [
  'Test the spring once more.',
  'Replace the spring: a shim does not mend it.',
];

export type ShortOrTall = 'too short' | 'too tall' | null;

/**
 * Whether shims can help at all.
 *
 * @param need Height less target, all old shims out.
 * @param tolerance Distance from target to the nearer limit.
 */
export function shortOrTall(need: number, maxStack: number, tolerance: number): ShortOrTall {
  if (need < -tolerance) return 'too short';
  return need > maxStack + tolerance ? 'too tall' : null;
}
