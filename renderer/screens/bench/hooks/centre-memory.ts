/** Which bench this tablet stands at, kept over a restart. */
const NAME = 'benchtag-centre';

/** Id of the work centre, or null. */
export function rememberedCentre(): number | null {
  try {
    const text = localStorage.getItem(NAME);
    return text !== null && /^[1-9]\d*$/.test(text) ? Number(text) : null;
  } catch {
    return null;
  }
}

/** Remembers it; a tablet that keeps nothing asks again. */
export function rememberCentre(centre: number): void {
  try {
    localStorage.setItem(NAME, String(centre));
  } catch {
    // Chosen again after a restart.
  }
}
