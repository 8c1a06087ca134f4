/** What the customer said, in the shop's words; and the sentence about an account. Pure and browser-safe. */
import { foldText } from '../customers/compute.ts';
import { type FormatSettings, formatMoney, formatPercent } from '../kernel/format.ts';
import type { BasisPoints, Cents } from '../kernel/units.ts';

/** Something the catalogue sells. */
export type Sold = Readonly<{ what: 'operation' | 'package'; id: number; names: readonly string[] }>;

/**
 * The one thing of the catalogue that goes by these words; undefined when none or several do.
 *
 * A whole name counts before a beginning; "hot tank the head" is found by its first words.
 */
export function findSold(said: string, all: readonly Sold[]): Sold | undefined {
  const wanted = foldText(said);
  if (wanted === '') return undefined;
  const named = all.map((sold) => ({ sold, names: sold.names.map(foldText) }));
  const exact = named.filter(({ names }) => names.includes(wanted));
  if (exact.length > 0) return exact[0]?.sold;
  const begins = named
    .flatMap(({ sold, names }) => names.map((name) => ({ sold, name })))
    .filter(
      ({ name }) =>
        name.length >= 4 && (wanted.startsWith(`${name} `) || (wanted.length >= 4 && name.startsWith(wanted))),
    );
  const ids = new Set(begins.map(({ sold }) => `${sold.what} ${sold.id}`));
  return ids.size === 1 ? begins[0]?.sold : undefined;
}

export type AccountFacts = Readonly<{
  /** The stop as a sentence; null when not on stop. */
  stopWords: string | null;
  use: Readonly<{ used: Cents; limit: Cents | null; bp: BasisPoints | null; state: 'none' | 'ok' | 'warn' | 'over' }>;
}>;

export type AccountState = Readonly<{
  state: 'none' | 'ok' | 'warn' | 'over' | 'on stop';
  words: string;
  used: Cents;
  limit: Cents | null;
  waitsForYes: boolean;
}>;

/** An account on stop or over its limit never stops the tag; work, ordering and release wait for a named yes. */
export function accountState(
  { stopWords, use }: AccountFacts,
  settings: Pick<FormatSettings, 'language'>,
): AccountState {
  const limited = { used: use.used, limit: use.limit };
  if (stopWords !== null) return { state: 'on stop', words: stopWords, ...limited, waitsForYes: true };
  const share =
    use.limit === null || use.bp === null
      ? ''
      : `${formatMoney(use.used, settings)} of ${formatMoney(use.limit, settings)} used, ${formatPercent(use.bp, settings)}.`;
  if (use.state === 'over') {
    return {
      state: 'over',
      words: `Over the limit: ${share} Tag it; work waits for a named yes.`,
      ...limited,
      waitsForYes: true,
    };
  }
  return {
    state: use.state,
    words: use.state === 'warn' ? `Near the limit: ${share}` : '',
    ...limited,
    waitsForYes: false,
  };
}
