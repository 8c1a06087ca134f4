/** Limits as people read them: the figures as their source prints them, the source beside them, and what was set aside. */
import { showExact } from '../../kernel/measure-show.ts';
import { type UnitCode, unitShape } from '../../kernel/measure-units.ts';
import { twinWarnings } from './limit-twins.ts';
import type { Limit, ResolvedLimit } from './model.ts';
import type { LimitShown } from './sheet-model.ts';

/** A figure of a limit: as typed, else with the decimals of its unit. */
const figure = (typed: string | null, value: number | null, unit: UnitCode): string | null =>
  value === null ? null : (typed ?? showExact(value, unit, unitShape(unit).decimals)).replace(/^-/, '\u2212');

/** `1.690 – 1.710`, `at least 0.050`, `at most 0.0040`; empty when there is a target only. */
export function limitText(limit: Limit): string {
  const low = figure(limit.typedLow, limit.low, limit.unit);
  const high = figure(limit.typedHigh, limit.high, limit.unit);
  if (low !== null && high !== null) return isBothWays(limit) ? `± ${high}` : `${low} – ${high}`;
  if (low !== null) return `at least ${low}`;
  return high === null ? '' : `at most ${high}`;
}

/** As far one way as the other, as from a mean. */
const isBothWays = ({ low, high }: Limit): boolean => low !== null && high !== null && high > 0 && low === -high;

/** Nobody but its typist has compared it with its source. */
export const NOT_CHECKED = 'not checked';

/** `engine data`, as in "customer's figure 1.720 set aside: engine data used". */
const SAID: Readonly<Record<Limit['forWhat'], string>> = {
  casting_type: 'casting type data',
  engine_type: 'engine data',
  this_job: 'the figure typed for this job',
  customer_instruction: 'the customer’s instruction',
  shop: 'the shop default',
};

function notesOf({ limit, setAside, chosen }: ResolvedLimit): string[] {
  const notes: string[] = [];
  if (setAside) {
    const text = limitText(setAside) || figure(setAside.typedTarget, setAside.target, setAside.unit) || '';
    notes.push(`customer’s figure ${text} set aside: ${SAID[limit.forWhat]} used`);
  }
  if (chosen) notes.push(`${SAID[limit.forWhat]} chosen by ${chosen.by}: ${chosen.reason}`);
  notes.push(...twinWarnings({ ...limit, low: limit.typedLow, high: limit.typedHigh, target: limit.typedTarget }));
  if (!limit.checked) notes.push(NOT_CHECKED);
  return notes;
}

/** Everything a screen or a sheet prints of a limit. */
export function showLimit(resolved: ResolvedLimit, side: 'I' | 'E' | 'any'): LimitShown {
  const { limit } = resolved;
  const tag = limit.sourceTag && !limit.sourceWords.includes(limit.sourceTag) ? ` ${limit.sourceTag}` : '';
  return {
    id: limit.id,
    side,
    low: limit.low,
    high: limit.high,
    target: limit.target,
    unit: limit.unit,
    text: limitText(limit),
    targetText: figure(limit.typedTarget, limit.target, limit.unit),
    source: `${limit.forWord === undefined ? '' : `${limit.forWord}: `}${limit.sourceWords}${tag}`,
    forWhat: limit.forWhat,
    checked: limit.checked,
    notes: notesOf(resolved),
  };
}
