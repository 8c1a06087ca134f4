/** Limits that depend on a word of the casting: its metal, or a choice made at the bench or at check-in. */
import { type Material, metalClassOf } from '../../catalogue/compute/fit.ts';
import { type Doubtful, LIMITS_BY_WORD } from '../../catalogue/compute/limits-by-word.ts';
import type { Facts, Limit, Verdict } from './model.ts';
import { judge } from './verdict.ts';

/** Limits of a quantity, and the words they may depend on. */
export type WordLimitFinder = Readonly<{
  /** The word that decides for this quantity; null when it depends on none, or the word is not known. */
  wordFor(quantity: string): string | null;
  /** Every limit that could judge the quantity, those for its word too. */
  limitsOf(quantity: string): readonly Limit[];
  /** The band in which this figure must be asked about, when the limit in force is the one for its word. */
  doubtfulFor(quantity: string, limit: Limit | undefined): Doubtful | null;
}>;

/** @param chosen the word typed for a choice of the casting, at either stage; null when nobody typed one */
export function wordLimitsOf(
  facts: Pick<Facts, 'limits' | 'casting' | 'said'>,
  chosen: (quantity: string) => string | null,
): WordLimitFinder {
  const limits = Map.groupBy(facts.limits, (it) => it.quantity);
  const own = (quantity: string): readonly Limit[] => limits.get(quantity) ?? [];
  const wordFor = (quantity: string): string | null => {
    const by = LIMITS_BY_WORD[quantity]?.by;
    if (by === undefined) return null;
    if (by === 'metal') return metalClassOf(facts.casting.material as Material);
    if (by === 'kind') return facts.casting.kind;
    return chosen(by) ?? facts.said?.[by] ?? null;
  };
  return {
    wordFor,
    limitsOf(quantity) {
      const word = wordFor(quantity);
      const carrier = word === null ? undefined : LIMITS_BY_WORD[quantity]?.carriers[word];
      if (word === null || carrier === undefined) return own(quantity);
      return [...own(quantity), ...own(carrier).map((limit) => ({ ...limit, quantity, forWord: word }))];
    },
    doubtfulFor(quantity, limit) {
      const word = limit?.forWord;
      return word === undefined ? null : (LIMITS_BY_WORD[quantity]?.doubtful?.[word] ?? null);
    },
  };
}

/** A figure that passes and lies outside the narrower band stays open: somebody else must speak first. */
export function withDoubt(
  verdict: Verdict,
  value: number | null,
  doubtful: Doubtful,
  sure: Limit | undefined,
): Verdict {
  if (verdict.name !== 'pass' || sure === undefined) return verdict;
  const narrow = judge({ value, low: sure.low, high: sure.high, uncertainty: null, guard: false });
  return narrow.name === 'fail'
    ? { ...verdict, name: 'too close to call', direction: narrow.direction, word: doubtful.word }
    : verdict;
}
