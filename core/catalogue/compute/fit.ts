/**
 * Does an operation fit a casting: by its kind, metal, cam layout, fuel, guides, water jacket and counts. Pure.
 *
 * Caustic and the magnet are refused from the metal alone, whatever the catalogue's rows say, and nobody can override it.
 * Source: common practice, no source, for which operation suits which metal; hot caustic dissolves aluminium and gives off
 * hydrogen (any safety data sheet of sodium hydroxide; from memory).
 */

export type Material = 'iron_grey' | 'iron_ductile' | 'steel' | 'aluminium' | 'other' | 'not_known';
export type MetalClass = 'iron' | 'aluminium' | 'other';

/** The class rules go by. `not_known` is no class: nothing that needs one may be done. */
export function metalClassOf(material: Material): MetalClass | 'not_known' {
  switch (material) {
    case 'iron_grey':
    case 'iron_ductile':
    case 'steel':
      return 'iron';
    default:
      return material;
  }
}

export const METAL_WORDS = {
  iron: 'IRON',
  aluminium: 'ALUMINIUM',
  other: 'OTHER METAL',
  not_known: 'METAL NOT KNOWN',
} as const;
/** The second sign beside the word. */
export const METAL_OUTLINES = { iron: 'filled', aluminium: 'open', other: 'dashed', not_known: 'dashed' } as const;

export type FitFact = 'metal' | 'cam_layout' | 'fuel' | 'guide_style' | 'water_jacket';
export type FitRow = Readonly<{ fact: FitFact; value: string; fit: 'normal' | 'special' | 'refused' }>;

/** An operation as the catalogue keeps it, for one kind of casting. */
export type FitKind = Readonly<{
  code: string;
  /** Shop's words. */
  words: string;
  section: string;
  fits: readonly FitRow[];
  /** Count it is charged by on this kind of casting; null when it is not done on this kind. */
  countFrom: string | null;
  /** Groups it is in (`caustic`, `magnet`, `clean` ...). */
  groups: readonly string[];
}>;

/** The casting's facts. `counts` by count name, `valves` included. */
export type FitCasting = Readonly<{
  kind: string;
  material: Material;
  camLayout: string;
  fuel: string;
  guideStyle: string;
  waterJacket: boolean;
  counts: Readonly<Record<string, number>>;
}>;

export type Fit = Readonly<{
  fit: 'normal' | 'special' | 'refused' | 'does not arise';
  /** The sentence; empty when normal. */
  words: string;
}>;

const NORMAL: Fit = { fit: 'normal', words: '' };
const FACT_ORDER: readonly FitFact[] = ['metal', 'cam_layout', 'fuel', 'guide_style', 'water_jacket'];

/** The worst of all facts: refused before does not arise before special. */
export function fitOf(kind: FitKind, casting: FitCasting): Fit {
  const forbidden = metalForbids(kind, metalClassOf(casting.material));
  if (forbidden) return { fit: 'refused', words: forbidden };
  if (kind.countFrom === null) {
    return { fit: 'does not arise', words: `${capital(kind.words)} is not done on a ${kindWord(casting.kind)}.` };
  }
  const answers = [countFit(kind, casting), ...FACT_ORDER.map((fact) => factFit(kind, fact, casting))];
  for (const fit of ['refused', 'does not arise', 'special'] as const) {
    const found = answers.find((answer) => answer.fit === fit);
    if (found) return found;
  }
  return NORMAL;
}

/** The sentence of a metal that forbids this group; undefined when it may be done. No override. */
export function metalForbids(kind: Pick<FitKind, 'groups'>, metal: MetalClass | 'not_known'): string | undefined {
  const has = (group: string) => kind.groups.includes(group);
  if (metal === 'iron') return undefined;
  if (metal === 'not_known') {
    if (has('magnet')) return 'METAL NOT KNOWN: confirm the metal before a magnetic check. Does a magnet stick?';
    return has('caustic') || has('clean')
      ? 'METAL NOT KNOWN: no wash until a person confirms the metal. Does a magnet stick?'
      : undefined;
  }
  const name = METAL_WORDS[metal];
  if (has('caustic')) return `${name}: no caustic. Use the aluminium-safe wash.`;
  if (!has('magnet')) return undefined;
  return metal === 'aluminium'
    ? 'The magnet shows nothing in aluminium. Use penetrant or pressure test.'
    : `${name}: a magnetic check is for iron and steel only. Use penetrant or pressure test.`;
}

/** What does fit instead, same section first refused: codes in the order given. */
export function fitsInstead(refused: FitKind, others: readonly FitKind[], casting: FitCasting): string[] {
  return others
    .filter(
      (other) => other.code !== refused.code && other.section === refused.section && sharesPurpose(refused, other),
    )
    .filter((other) => ['normal', 'special'].includes(fitOf(other, casting).fit))
    .map((other) => other.code);
}

/** A wash for a wash, a crack check for a crack check: some group in common besides the dangerous one. */
const sharesPurpose = (a: FitKind, b: FitKind): boolean => a.groups.some((group) => b.groups.includes(group));

function countFit(kind: FitKind, casting: FitCasting): Fit {
  const count = kind.countFrom;
  if (count === null || count === 'one' || count === 'ask') return NORMAL;
  if ((casting.counts[count] ?? 0) > 0) return NORMAL;
  return { fit: 'does not arise', words: `This casting has no ${count.replaceAll('_', ' ')}.` };
}

function factFit(kind: FitKind, fact: FitFact, casting: FitCasting): Fit {
  const rows = kind.fits.filter((row) => row.fact === fact);
  const value = factValue(fact, casting);
  if (rows.length === 0 || value === null) return NORMAL;
  if (fact === 'metal' && (value === 'other' || value === 'not_known')) {
    return { fit: 'special', words: `${METAL_WORDS[value]}: ask a lead before ${kind.words}.` };
  }
  const row = rows.find((r) => r.value === value);
  const where = factWords(fact, value);
  if (!row) return { fit: 'does not arise', words: `${capital(kind.words)} does not arise on ${where}.` };
  if (row.fit === 'refused') return { fit: 'refused', words: `${capital(kind.words)} is not done on ${where}.` };
  if (row.fit === 'special') return { fit: 'special', words: `${capital(kind.words)} is unusual on ${where}.` };
  return NORMAL;
}

/** Null: the fact is not asked of this casting. */
function factValue(fact: FitFact, casting: FitCasting): string | null {
  switch (fact) {
    case 'metal':
      return metalClassOf(casting.material);
    case 'cam_layout':
      return casting.camLayout === 'none' ? null : casting.camLayout;
    case 'fuel':
      return casting.fuel;
    case 'guide_style':
      return casting.guideStyle;
    case 'water_jacket':
      return casting.waterJacket ? '1' : '0';
  }
}

function factWords(fact: FitFact, value: string): string {
  switch (fact) {
    case 'metal':
      return value;
    case 'cam_layout':
      return `a ${value.toUpperCase()} casting`;
    case 'fuel':
      return `a ${value} engine`;
    case 'guide_style':
      return `${value} guides`;
    case 'water_jacket':
      return value === '1' ? 'a casting with a water jacket' : 'a casting without a water jacket';
  }
}

const kindWord = (kind: string): string => kind.replaceAll('_', ' ');
const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
