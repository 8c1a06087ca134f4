/**
 * Readings of a casting as rows for other programs: what stands, what it was judged by, and what it replaced.
 *
 * The rows follow the tables; what was read outside every table comes last. A cell that stands in two tables is given once.
 */
import type { BenchTable } from '../../catalogue/compute/bench-table.ts';
import { otherDecimals, showExact, showTyped, showValue, typedDecimals } from '../../kernel/measure-show.ts';
import { type Family, otherUnit, type UnitCode, unitShape } from '../../kernel/measure-units.ts';
import { type Bench, openBench } from './bench.ts';
import { type CellPlace, cellAt } from './cells.ts';
import { columnsOf, type Placed } from './columns.ts';
import { cellKey } from './current.ts';
import { showDoubt } from './doubt.ts';
import type { ExportRow, ExportStatus } from './export-model.ts';
import { showLimit } from './limit-words.ts';
import type { Facts, Limit, Reading } from './model.ts';
import { placeAt } from './place.ts';
import { rowDecimals, showComputed } from './row-units.ts';
import type { Cell } from './sheet-model.ts';

/** What the facts of measuring do not say of a casting. */
export type ExportNames = Readonly<{ ticket: number; castingNumber: string | null }>;

/** Base unit of each family, as printed beside a whole number of them; null for words. */
const BASE_UNITS: Readonly<Record<Family, string | null>> = {
  length: 'nm',
  roughness: 'pm',
  force: 'uN',
  spring_rate: 'uN/m',
  pressure: 'mPa',
  volume: '1e-6 cc',
  angle: '1e-6 deg',
  temperature: '1e-3 degC',
  duration: 's',
  torque: 'uN.m',
  mass: 'g',
  count: '1',
  ratio: '1e-4',
  choice: null,
  text: null,
};

/** A figure of the screen as a program reads it. */
const plain = (text: string): string => text.replace('\u2212', '-').replace(/^(-?)\./, '$10.');

type Place = CellPlace & Readonly<{ table: string | null; column: Placed; shown: boolean }>;

/** Every row of a casting. @param tables its tables, rows switched on and off as kept for it */
export function exportRows(facts: Facts, tables: readonly BenchTable[], names: ExportNames): ExportRow[] {
  const bench = openBench(facts);
  const later = new Map(facts.readings.flatMap((it) => (it.supersedes === null ? [] : [[it.supersedes, it]])));
  const seen = new Set<string>();
  return placesOf(bench, tables).flatMap((place) => {
    const key = cellKey({ quantity: place.quantity.code, spot: place.spot?.id ?? null, ...place.at });
    if (seen.has(key)) return [];
    seen.add(key);
    return rowsOfCell(bench, place, names, later);
  });
}

type Addressed = Place & Readonly<{ at: Readonly<{ point: string | null; stage: CellPlace['stage'] }> }>;

function placesOf(bench: Bench, tables: readonly BenchTable[]): Addressed[] {
  const read = new Set(bench.facts.readings.map(({ quantity, stage }) => `${quantity}|${stage}`));
  const inTables = tables.flatMap((table) => {
    // What is missing is told of tables that somebody began.
    const isBegun = table.rows.some(({ quantity, stage }) => read.has(`${quantity}|${stage}`));
    return table.rows.flatMap((row) =>
      columnsOf(bench.facts.spots, table.spotKind).flatMap((column) => {
        const cell = { quantity: row.quantity, spot: column.spot?.id ?? null, point: row.point, stage: row.stage };
        return addressed(bench, cell, column, table.code, row.shown && isBegun);
      }),
    );
  });
  const outside = bench.facts.readings.flatMap((it) => {
    const spot = bench.facts.spots.find(({ id }) => id === it.spot) ?? null;
    const column = columnsOf(bench.facts.spots, spot?.kind ?? null).find((one) => one.spot === spot);
    return column ? addressed(bench, it, column, null, false) : [];
  });
  return [...inTables, ...outside];
}

function addressed(
  bench: Bench,
  cell: Pick<Reading, 'quantity' | 'spot' | 'point' | 'stage'>,
  column: Placed,
  table: string | null,
  shown: boolean,
): Addressed[] {
  const place = placeAt(bench, cell);
  return place ? [{ ...place, at: { point: cell.point, stage: cell.stage }, column, table, shown }] : [];
}

function rowsOfCell(
  bench: Bench,
  place: Addressed,
  names: ExportNames,
  later: ReadonlyMap<number, Reading>,
): ExportRow[] {
  const cell = cellAt(bench, place);
  const { current, choose, earlier } = bench.rows(place.quantity.code, place.spot, place.at.point, place.at.stage);
  const isBare = cell.state === 'not measured' && earlier.length === 0;
  if (isBare && !place.shown) return [];
  const head = headOf(bench, place, names);
  const standing =
    choose.length > 0
      ? choose.map((row) => ({ ...head, ...readingFields(bench, row), status: 'two readings' as const }))
      : [{ ...head, ...standingFields(bench, place, cell, current) }];
  const gone = earlier
    .filter((row) => row.kind !== 'taken_back')
    .map((row) => ({ ...head, ...readingFields(bench, row), ...goneFields(row, current, later) }));
  return [...standing, ...gone];
}

function headOf(bench: Bench, place: Addressed, names: ExportNames): ExportRow {
  const { quantity, spot } = place;
  const resolved = bench.limit(quantity.code, place.at.stage, spot?.side ?? null);
  return {
    tag: bench.facts.casting.tag,
    ...names,
    table: place.table,
    place: spot === null ? null : place.column.label,
    placeWords: spot === null ? null : place.column.words,
    quantity: quantity.code,
    words: quantity.words,
    point: place.at.point,
    stage: place.at.stage,
    ...EMPTY,
    ...(resolved && { ...limitFields(resolved.limit), source: showLimit(resolved, 'any').source }),
  };
}

/** What a row says when it says nothing. */
const EMPTY = {
  status: 'not measured',
  measured: true,
  typed: null,
  value: null,
  unit: null,
  otherValue: null,
  otherUnit: null,
  base: null,
  baseUnit: null,
  said: null,
  low: null,
  high: null,
  target: null,
  limitUnit: null,
  source: null,
  verdict: null,
  direction: null,
  marks: [],
  decision: null,
  gauge: null,
  gaugeSerial: null,
  uncertainty: null,
  by: null,
  at: null,
  replacedWhy: null,
  replacedBy: null,
  replacedAt: null,
} as const;

function limitFields(limit: Limit): Partial<ExportRow> {
  const figure = (typed: string | null, value: number | null) =>
    value === null
      ? null
      : plain(
          typed === null
            ? showExact(value, limit.unit, unitShape(limit.unit).decimals)
            : showTyped(typed, value, limit.unit),
        );
  return {
    low: figure(limit.typedLow, limit.low),
    high: figure(limit.typedHigh, limit.high),
    target: figure(limit.typedTarget, limit.target),
    limitUnit: limit.unit,
  };
}

/** The cell as it stands: read, computed, planned, not applicable or empty. */
function standingFields(bench: Bench, place: Addressed, cell: Cell, current: Reading | null): Partial<ExportRow> {
  const known = bench.known(place.quantity.code, place.spot, place.at.point, place.at.stage);
  const isComputed =
    cell.state === 'computed' || cell.state === 'planned' || (!current && place.quantity.derived !== null);
  const read = current && !isComputed ? readingFields(bench, current) : {};
  const unit = place.unit;
  const figure =
    isComputed && known?.value != null && unit !== null
      ? figureFields(known.value, unit, showComputed(known.value, unit, rowDecimals(place.quantity, unit)))
      : {};
  const { decision, verdict } = cell;
  return {
    ...read,
    ...figure,
    ...(known && uncertaintyFields(known.uncertainty, cell.unit)),
    measured: !isComputed,
    status: STATUS[cell.state],
    verdict: verdict?.name ?? null,
    direction: verdict?.direction ?? null,
    marks: cell.marks,
    decision:
      decision === null ? null : `${decision.accepted ? 'accepted' : 'refused'} by ${decision.by}: ${decision.words}`,
  };
}

const STATUS: Readonly<Record<Cell['state'], ExportStatus>> = {
  read: 'stands',
  computed: 'stands',
  planned: 'planned',
  'not measured': 'not measured',
  'not applicable': 'not applicable',
  'two readings': 'two readings',
};

function figureFields(value: number, unit: UnitCode, text: string): Partial<ExportRow> {
  const other = otherUnit(unit);
  return {
    value: plain(text),
    unit,
    otherValue: other && plain(showValue(value, other, otherDecimals(unit, typedDecimals(text)))),
    otherUnit: other,
    base: value,
    baseUnit: BASE_UNITS[unitShape(unit).family],
  };
}

function uncertaintyFields(uncertainty: number | null, unit: UnitCode | null): Partial<ExportRow> {
  return uncertainty === null || unit === null ? {} : { uncertainty: showDoubt(uncertainty, unit, DOUBT_DIGITS) };
}

/** Enough for a program; a paper shows two. */
const DOUBT_DIGITS = 3;

function readingFields(bench: Bench, row: Reading): Partial<ExportRow> {
  const tool = bench.facts.tools.find(({ id }) => id === row.tool);
  const figure =
    row.kind === 'number' && row.value !== null && row.unit !== null
      ? figureFields(row.value, row.unit, decimalText(row.typed, row.value, row.unit))
      : {};
  return {
    ...figure,
    typed: row.typed,
    said: row.kind === 'choice' || row.kind === 'text' ? row.typed : null,
    gauge: tool?.name ?? null,
    gaugeSerial: tool?.serial ?? null,
    by: row.by,
    at: row.at,
  };
}

/** A typed fraction is given as the decimal it is. */
const decimalText = (typed: string, value: number, unit: UnitCode): string =>
  typed.includes('/') ? showExact(value, unit, typedDecimals(typed)) : showTyped(typed, value, unit);

function goneFields(row: Reading, current: Reading | null, later: ReadonlyMap<number, Reading>): Partial<ExportRow> {
  const by = later.get(row.id);
  const isFirst = current !== null && current.operation !== null && row.operation !== current.operation;
  if (!by) return { status: isFirst ? 'earlier operation' : 'read again' };
  return { status: 'replaced', replacedWhy: by.reason, replacedBy: by.by, replacedAt: by.at };
}
