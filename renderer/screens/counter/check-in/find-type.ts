/** Finding a casting type by what is typed: every word must stand somewhere in its name, code, engine or number. */

type Findable = Readonly<{
  code: string;
  name: string;
  castingNumberPattern: string | null;
  engineType: Readonly<{ words: string }> | null;
}>;

/** At most eight, those whose name begins with the text first. Nothing typed finds nothing. */
export function foundTypes<T extends Findable>(types: readonly T[], text: string): readonly T[] {
  const asked = plain(text).split(' ').filter(Boolean);
  if (asked.length === 0) return [];
  const first = plain(text);
  return types
    .filter((type) => {
      const has = plain(`${type.code} ${type.name} ${type.castingNumberPattern ?? ''} ${type.engineType?.words ?? ''}`);
      return asked.every((word) => has.includes(word));
    })
    .toSorted((a, b) => Number(plain(b.name).startsWith(first)) - Number(plain(a.name).startsWith(first)))
    .slice(0, 8);
}

/** Lower case without accents, one space between words. */
export const plain = (text: string): string =>
  text
    .normalize('NFD')
    .replace(/\p{Mn}/gu, '')
    .toLowerCase()
    .replace(/ł/g, 'l')
    .replace(/\s+/g, ' ')
    .trim();
