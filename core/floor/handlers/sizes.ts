/** The limits line of a casting: what its operations are judged by, once a quantity and side. */
import type { QueryCtx } from '../../host/implement.ts';
import type { CastingId } from '../../kernel/ids.ts';
import { withMark } from '../../kernel/measure-show.ts';
import { type Bench, openBench } from '../../readings/compute/bench.ts';
import { showLimit } from '../../readings/compute/limit-words.ts';
import type { NeededReading } from '../../readings/compute/needed.ts';
import { readFacts } from '../../readings/store/facts.ts';

type Size = Readonly<{ quantity: string; words: string; text: string; source: string; checked: boolean }>;

/** Limits of everything the open work reads, in the order it is read. Empty when nothing is needed or no limit is known. */
export function sizesOf({ db, today }: QueryCtx, casting: CastingId, needed: readonly NeededReading[]): Size[] {
  if (needed.length === 0) return [];
  const bench = openBench(readFacts(db, casting, today));
  const asked = new Map(needed.map((n) => [`${n.quantity}|${n.stage}`, { quantity: n.quantity, stage: n.stage }]));
  const sizes = [...asked.values()].flatMap(({ quantity, stage }) => limitsOf(bench, quantity, stage));
  return [...new Map(sizes.map((size) => [`${size.words}|${size.text}`, size])).values()];
}

const SIDES = { I: 'intake', E: 'exhaust' } as const;

/** One line when both sides are judged alike, else one a side. */
function limitsOf(bench: Bench, code: string, stage: 'before' | 'after'): Size[] {
  const quantity = bench.quantity(code);
  if (!quantity) return [];
  const [intake, exhaust] = [bench.limit(code, stage, 'I'), bench.limit(code, stage, 'E')];
  const alike = intake?.limit.id === exhaust?.limit.id;
  const found = alike
    ? [{ resolved: intake ?? bench.limit(code, stage, null), side: null }]
    : [
        { resolved: intake, side: 'I' as const },
        { resolved: exhaust, side: 'E' as const },
      ];
  return found.flatMap(({ resolved, side }) => {
    if (!resolved) return [];
    const shown = showLimit(resolved, side ?? 'any');
    const figures = shown.text === '' ? shown.targetText : shown.text;
    if (!figures) return [];
    const words = side === null ? quantity.words : `${quantity.words}, ${SIDES[side]}`;
    return [
      { quantity: code, words, text: withMark(figures, shown.unit), source: shown.source, checked: shown.checked },
    ];
  });
}
