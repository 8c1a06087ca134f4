/**
 * Bend or not: deck and cam line decide together. A head that was skimmed while it was bowed has a bowed deck over a straight
 * cam line; bending it would bend the cam line. Common practice, no source.
 */

/** What the readings say of one line: past its limit, within it, or nothing. */
export type Bow = 'bowed' | 'straight' | 'not read';

/** The sentence for a head with its camshaft in the head; null when nothing is bowed, or nothing was read. */
export function bowAdvice(deck: Bow, cam: Bow): string | null {
  if (deck !== 'bowed') return null;
  switch (cam) {
    case 'bowed':
      return 'Deck and cam line are both bowed: straighten before surfacing.';
    case 'straight':
      return 'The deck is bowed and the cam line is straight, as after an earlier skim: do not bend it. Surface it if the thickness allows.';
    case 'not read':
      return 'The deck is bowed. Measure cam line before anything is bent or cut.';
  }
}

/** A figure that was read or computed, with how it is judged. */
export type Judged = Readonly<{
  quantity: string;
  stage: 'before' | 'after';
  isMet: boolean;
  cell: Readonly<{ verdict: Readonly<{ name: string }> | null }>;
}>;

/** What stands for a line now: what was read after the work, else before it. Too close to call is no answer. */
export function bowOf(quantity: string, readings: readonly Judged[]): Bow {
  const read = readings.filter((r) => r.quantity === quantity && r.isMet);
  const last = read.find((r) => r.stage === 'after') ?? read[0];
  const verdict = last?.cell.verdict?.name;
  if (verdict === 'fail') return 'bowed';
  return verdict === 'pass' ? 'straight' : 'not read';
}
