/** Lines as screens and papers show them: every word and figure ready, nothing left to compute. */
import type { Cents } from '../../kernel/units.ts';
import type { Draft } from './book.ts';
import { factorWords, type LineFactor, lineWorking, PER_PIECE, type PriceTerms } from './line.ts';
import { factorText, priceText, quantityText } from './working.ts';

/** The figures of one line beside its amount. */
export type LineWords = Readonly<{
  /** "8 valves", "1.5 h", "2"; "1" for one piece. */
  quantityWords: string;
  /** "45.00 × 1.15". */
  priceWords: string;
  /** "aluminium 1.15"; empty for none. */
  factorWords: string;
  working: string;
}>;

/** Words of a priced line. @param unit the charge unit, `each` for pieces */
export function lineWords(terms: PriceTerms, unit: string): LineWords {
  return {
    quantityWords: quantityText(terms.quantity, terms.per, unit) || '1',
    priceWords: [priceText(terms.unitPrice), ...terms.factors.map((f: LineFactor) => factorText(f.factor))].join(' × '),
    factorWords: factorWords(terms.factors),
    working: lineWorking(terms, unit),
  };
}

/** A draft as a line of a quote. */
export const draftView = (
  draft: Draft,
): LineWords & Readonly<{ words: string; shopWords: string; amount: Cents; inside: string[]; unit: string }> => ({
  words: draft.words,
  shopWords: draft.shopWords,
  unit: draft.offer.unit,
  amount: draft.offer.amount,
  inside: draft.operations.map((step) => step.kind.words),
  ...lineWords(draft.offer, draft.offer.unit),
});

/** The unit of a line that no operation of the catalogue names. */
export const plainUnit = (per: number): string => (per === PER_PIECE ? 'each' : 'hour');
