/** Choices and tables that a metal does not have: what the bench never offers, whoever opens it. Pure data and its two readers. */
import { type Material, type MetalClass, metalClassOf } from './fit.ts';
import type { Quantity } from './quantity.ts';

type Only = Readonly<{ metals: readonly MetalClass[]; why: string }>;

/** By quantity. Not ferromagnetic, so blind: common practice, no source. */
const ONLY_ON: Readonly<Record<string, Only>> = {
  'magnet-method': {
    metals: ['iron'],
    why: 'Magnetic particles find nothing in a metal that no magnet holds: use dye or a pressure test.',
  },
};

/** By table: those of one metal. */
const TABLES_ONLY_ON: Readonly<Record<string, readonly MetalClass[]>> = {
  'crack-magnet': ['iron'],
  'block-crack-magnet': ['iron'],
};

const has = (metals: readonly MetalClass[], material: string): boolean =>
  metals.some((metal) => metal === metalClassOf(material as Material));

/** The words a person may choose on a casting of this material, or why there are none. A metal not known is no metal. */
export function choicesFor(
  quantity: Pick<Quantity, 'code' | 'choices'>,
  material: string,
): Readonly<{ choices: readonly string[]; why: string | null }> {
  const only = ONLY_ON[quantity.code];
  return only && !has(only.metals, material)
    ? { choices: [], why: only.why }
    : { choices: quantity.choices, why: null };
}

/** Whether a casting of this material has the table at all. */
export const isTableFor = (table: string, material: string): boolean => {
  const only = TABLES_ONLY_ON[table];
  return only === undefined || has(only, material);
};
