/** Which person acts in this tab, kept over a reload. Signing in itself is kept by the host. */
const NAME = 'benchtag-person';

/** The id, or null. */
export function rememberedPerson(): number | null {
  try {
    const text = sessionStorage.getItem(NAME);
    return text !== null && /^\d+$/.test(text) ? Number(text) : null;
  } catch {
    return null;
  }
}

/** Remembers, or forgets with null. */
export function rememberPerson(person: number | null): void {
  try {
    if (person === null) sessionStorage.removeItem(NAME);
    else sessionStorage.setItem(NAME, String(person));
  } catch {
    // Without storage the person taps the name again after a reload.
  }
}
