/** One cell of a sheet: what stands there, how it is judged, and what must be said beside it. */
import type { Stage } from '../../catalogue/compute/bench-table.ts';
import type { Quantity } from '../../catalogue/compute/quantity.ts';
import { showTyped, withMark } from '../../kernel/measure-show.ts';
import type { UnitCode } from '../../kernel/measure-units.ts';
import type { Bench } from './bench.ts';
import { type CellRows, isComputed } from './current.ts';
import { conformanceProbability } from './geometry/conformance.ts';
import type { Known } from './look.ts';
import type { Limit, Reading, Spot, Verdict } from './model.ts';
import { rowDecimals, showJudged } from './row-units.ts';
import type { Cell, CellState, ReadingShown } from './sheet-model.ts';
import { isWeakGauge, NOT_MEASURED, verdictWord } from './verdict.ts';

export type CellPlace = Readonly<{
  quantity: Quantity;
  spot: Spot | null;
  point: string | null;
  stage: Stage;
  /** The unit of the row's head. */
  unit: UnitCode | null;
}>;

/** Not applicable. */
export const DASH = '–';

/** Read and judge one cell. */
export function cellAt(bench: Bench, place: CellPlace): Cell {
  const { quantity, spot, point, stage, unit } = place;
  const rows = bench.rows(quantity.code, spot, point, stage);
  const known = bench.known(quantity.code, spot, point, stage);
  const state = stateOf(quantity, rows, known);
  const verdict = verdictAt(bench, place, state, known);
  const limit = bench.limit(quantity.code, stage, spot?.side ?? null)?.limit ?? null;
  return {
    state,
    text: textOf(place, { state, rows, known, limit }),
    value: known?.value ?? null,
    unit: rows.current?.unit ?? unit,
    verdict,
    word: verdict ? verdictWord(verdict, quantity) : '',
    limit: limit?.id ?? null,
    marks: marksOf(bench, place, known, verdict),
    reading: rows.current ? showReading(bench, rows.current) : null,
    earlier: rows.earlier.map((row) => showReading(bench, row)),
    choose: rows.choose.map((row) => showReading(bench, row)),
    decision: decisionAt(bench, place, known),
  };
}

function stateOf(quantity: Quantity, rows: CellRows, known: Known | null): CellState {
  const { current, choose } = rows;
  if (choose.length > 0) return 'two readings';
  if (current?.kind === 'not_applicable') return 'not applicable';
  if (isComputed(quantity, rows)) {
    return known?.value == null ? 'not measured' : known.planned ? 'planned' : 'computed';
  }
  return current ? 'read' : 'not measured';
}

/**
 * Words are not judged, nor what does not apply, nor a figure that only has a target (a step on the way). What is computed
 * says nothing without limit while it is not there, what is extra never does.
 */
function verdictAt(bench: Bench, place: CellPlace, state: CellState, known: Known | null): Verdict | null {
  const { quantity, stage, spot } = place;
  if (quantity.family === 'choice' || quantity.family === 'text' || state === 'not applicable') return null;
  const limit = bench.limit(quantity.code, stage, spot?.side ?? null)?.limit ?? null;
  const isJudged = limit !== null && (limit.low !== null || limit.high !== null);
  const isAsked = isJudged || (quantity.derived === null && !quantity.optional);
  if (known?.value == null) return isAsked ? NOT_MEASURED : null;
  if (!isJudged && (limit !== null || quantity.optional)) return null;
  return bench.verdict(quantity.code, stage, spot?.side ?? null, known);
}

type Standing = Readonly<{ state: CellState; rows: CellRows; known: Known | null; limit: Limit | null }>;

function textOf(place: CellPlace, { state, rows, known, limit }: Standing): string {
  if (state === 'not applicable') return DASH;
  const { quantity, unit } = place;
  const { current } = rows;
  if (current && !isComputed(quantity, rows)) return readingText(current, unit);
  if (known?.value == null || unit === null) return '';
  return showJudged(known.value, unit, rowDecimals(quantity, unit), limit);
}

/** As it was typed; with its unit where that is not the row's. */
function readingText(reading: Reading, rowUnit: UnitCode | null): string {
  if (reading.kind === 'not_applicable') return DASH;
  if (reading.kind === 'taken_back') return 'taken back';
  if (reading.kind !== 'number' || reading.value === null || reading.unit === null) return reading.typed;
  const text = showTyped(reading.typed, reading.value, reading.unit);
  return rowUnit === null || rowUnit === reading.unit ? text : withMark(text, reading.unit);
}

const READ_ON = { bare_pocket: 'on the bare pocket', cup: 'on the cup', cup_and_shim: 'on cup and shim' } as const;
/** How the fingers or a gauge gave a figure, as small print. */
export const FIT_WORDS = {
  implied: 'point set by the program',
  last_digits: 'last digits typed',
  compared: 'compared with a card',
  from_tool: 'sent by the gauge',
} as const;

function marksOf(bench: Bench, place: CellPlace, known: Known | null, verdict: Verdict | null): readonly string[] {
  const { current } = bench.rows(place.quantity.code, place.spot, place.point, place.stage);
  const marks = [...(known?.marks ?? [])];
  if (current?.readOn) marks.push(`read ${READ_ON[current.readOn]}`);
  if (current && current.mark !== 'entered') marks.push(FIT_WORDS[current.mark]);
  if (current?.note) marks.push(current.note);
  marks.push(...doubtMarks(bench, place, known, verdict));
  const isDoubtNeeded = bench.facts.guard && known?.value != null && known.uncertainty === null;
  if (isDoubtNeeded && verdict && verdict.name !== 'no limit known') marks.push('tool not named: no guard kept');
  return marks;
}

/** What the doubt of the gauge means for this figure: nothing where it is small or not known. */
function doubtMarks(bench: Bench, place: CellPlace, known: Known | null, verdict: Verdict | null): readonly string[] {
  const limit = bench.limit(place.quantity.code, place.stage, place.spot?.side ?? null)?.limit;
  if (!verdict || !limit || known?.value == null || !known.uncertainty) return [];
  const { low, high } = limit;
  const { value, uncertainty } = known;
  if (verdict.cannotProve) return ['this gauge cannot prove this tolerance'];
  // Where the maker of the gasket decides, no probability does.
  if (verdict.name === 'too close to call' && verdict.word === undefined) {
    const sure = conformanceProbability({ value, uncertainty, low, high });
    return [`within its limits with about ${Math.round(sure * 100)} % probability`];
  }
  return !bench.facts.guard && isWeakGauge({ low, high, uncertainty })
    ? ['gauge weaker than 4 to 1 for this tolerance']
    : [];
}

function decisionAt(bench: Bench, place: CellPlace, known: Known | null): Cell['decision'] {
  const found = bench.facts.decisions.findLast(
    (it) =>
      it.quantity === place.quantity.code &&
      it.spot === (place.spot?.id ?? null) &&
      it.point === place.point &&
      it.stage === place.stage,
  );
  // A decision is about the figure that was shown; another figure needs another one.
  if (!found || found.value !== (known?.value ?? null)) return null;
  return { accepted: found.accepted, words: found.words, by: found.by };
}

function showReading(bench: Bench, reading: Reading): ReadingShown {
  return {
    id: reading.id,
    text: readingText(reading, null),
    typed: reading.typed,
    unit: reading.unit,
    mark: reading.mark,
    readOn: reading.readOn,
    tool: bench.facts.tools.find((tool) => tool.id === reading.tool)?.name ?? null,
    by: reading.by,
    at: reading.at,
    reason: reading.reason,
  };
}
