/** Limits in both units: the one of its source, and the other worked out from the exact value. */
import { showBoth, typedDecimals } from '../../kernel/measure-show.ts';
import { unitShape } from '../../kernel/measure-units.ts';
import type { LimitShown } from '../../readings/compute/sheet-model.ts';

export type Both = Readonly<{
  /** `1.690 – 1.710 in`, `target 35.00 mm`. */
  first: string;
  /** `42.93 – 43.43 mm`; empty where both systems use one unit. */
  second: string;
}>;

/** A limit, or its target where it has no other figure. */
export function bothUnits(limit: LimitShown): Both {
  const mark = unitShape(limit.unit).mark;
  const text = limit.text === '' ? `target ${limit.targetText ?? ''}` : limit.text;
  // A row in another unit than its limit says the unit already.
  const isMarked = mark !== '' && text.endsWith(mark);
  const first = isMarked ? text : [text, mark].filter(Boolean).join(mark === '°' ? '' : ' ');
  const decimals = typedDecimals(limit.targetText ?? limit.text.match(/[\d.,]*\d/g)?.at(-1) ?? '');
  const figures = [limit.low, limit.high].filter((value) => value !== null);
  const values = figures.length === 0 && limit.target !== null ? [limit.target] : figures;
  const others = values.flatMap((value) => showBoth(value, limit.unit, decimals).second ?? []);
  const second = others.length === 2 ? `${figureOf(others[0])} – ${others[1]}` : (others[0] ?? '');
  return { first, second };
}

const figureOf = (text: string | undefined): string => text?.split(' ')[0] ?? '';

const SIDES = { I: 'I ', E: 'E ', any: '' };

/** All limits of a row, each side on a line of its own. */
export function bothOf(limits: readonly LimitShown[]): Readonly<{ limit: string; other: string }> {
  const texts = limits.map((limit) => ({ side: SIDES[limit.side], ...bothUnits(limit) }));
  return {
    limit: texts.map(({ side, first }) => `${side}${first}`).join('\n'),
    other: texts.flatMap(({ side, second }) => (second === '' ? [] : [`${side}${second}`])).join('\n'),
  };
}
