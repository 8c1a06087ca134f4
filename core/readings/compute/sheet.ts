/**
 * A bench table of one casting, filled in and judged: the one answer that the screen, the verdict list, the build sheet and
 * the export read. Pure; a table is data, so nothing here knows a quantity by name except the shims.
 */
import { applies } from '../../catalogue/compute/applies.ts';
import type { BenchTable } from '../../catalogue/compute/bench-table.ts';
import { findBenchTable } from '../../catalogue/compute/bench-tables.ts';
import { choicesFor } from '../../catalogue/compute/choices-by-metal.ts';
import type { Quantity } from '../../catalogue/compute/quantity.ts';
import { withMark } from '../../kernel/measure-show.ts';
import { type UnitCode, unitShape } from '../../kernel/measure-units.ts';
import { type Bench, openBench } from './bench.ts';
import { cellAt } from './cells.ts';
import { columnsOf, type Placed } from './columns.ts';
import { NOT_CHECKED, showLimit } from './limit-words.ts';
import type { Facts, Limit } from './model.ts';
import { isReplaced } from './replaced.ts';
import { entryRuleOf, rowDecimals, rowUnit } from './row-units.ts';
import type { Column, LimitShown, Sheet, SheetRow } from './sheet-model.ts';
import { pickingOf, shimPlanOf, spreadOf } from './shim-plan.ts';
import { systemOfCasting } from './system.ts';
import { toDoOf } from './to-do.ts';
import { countVerdicts, NOT_MEASURED, summaryOf, verdictWord, worry } from './verdict.ts';

type RowAsked = BenchTable['rows'][number];

/** Fill in a table. `table.rows` as the casting has them switched on or off. */
export function composeSheet(facts: Facts, table: BenchTable): Sheet {
  const bench = openBench(facts);
  const places = columnsOf(facts.spots, table.spotKind);
  const system = systemOfCasting(bench);
  const rows = table.rows.flatMap((row) => rowOf(bench, row, places, system));
  const withShims = table.rows.some((row) => row.quantity === 'height-with-shim');
  const columns = places.map((place, index) => columnOf(bench, place, rows, index, withShims));
  const counts = countVerdicts(columns.map((column) => column.verdict.name));
  const picking = withShims ? pickingOf(columns, facts.shims, bench, places) : [];
  return {
    casting: facts.casting,
    table: { code: table.code, words: table.words, spotKind: table.spotKind },
    columns,
    rows,
    summary: summaryOf(counts),
    counts,
    toDo: toDoOf(bench, columns, rows, places),
    picking,
    pickingText: picking.map(({ text, count }) => `${count} × ${text}`).join(', '),
    spread: withShims ? spreadOf(rows) : null,
    tools: facts.tools.filter((tool) => !tool.retired),
    notes: [...notesOf(facts, rows), ...(findBenchTable(table.code)?.notes ?? [])],
    guard: facts.guard,
    locked: facts.lockedSince !== null,
  };
}

type Sided = Readonly<{ side: 'I' | 'E' | 'any'; limit: Limit; shown: LimitShown }>;

/** One limit for both sides, or one for each where they differ. */
function limitsOf(bench: Bench, row: RowAsked): Sided[] {
  const sides = (['I', 'E'] as const).map((side) => ({ side, found: bench.limit(row.quantity, row.stage, side) }));
  const [intake, exhaust] = sides;
  const isSame = intake?.found?.limit.id === exhaust?.found?.limit.id;
  const asked = isSame
    ? [{ side: 'any' as const, found: intake?.found ?? bench.limit(row.quantity, row.stage, null) }]
    : sides;
  return asked.flatMap(({ side, found }) =>
    found ? [{ side, limit: found.limit, shown: showLimit(found, side) }] : [],
  );
}

function rowOf(bench: Bench, row: RowAsked, places: readonly Placed[], system: 'inch' | 'metric'): SheetRow[] {
  const quantity = bench.quantity(row.quantity);
  if (!quantity || !arises(bench, quantity)) return [];
  const limits = limitsOf(bench, row);
  const read = places.flatMap(({ spot }) => {
    const unit = bench.rows(row.quantity, spot, row.point, row.stage).current?.unit;
    return unit ? [unit] : [];
  });
  const own = limits.filter((it) => it.limit.forWhat !== 'shop').map((it) => it.limit.unit);
  const unit = rowUnit(quantity, own, read, system);
  const cells = places.map(({ spot }) => cellAt(bench, { quantity, spot, point: row.point, stage: row.stage, unit }));
  return [
    {
      key: `${row.quantity}|${row.point ?? ''}|${row.stage}`,
      quantity: row.quantity,
      words: quantity.words,
      point: row.point,
      pointWords: quantity.points.find((point) => point.code === row.point)?.words ?? null,
      stage: row.stage,
      derived: quantity.derived !== null && !quantity.orTyped,
      family: quantity.family,
      unit,
      unitMark: unit === null ? '' : unitShape(unit).mark,
      decimals: rowDecimals(quantity, unit),
      shown: row.shown,
      entry: entryRuleOf(quantity, unit),
      choices: choicesFor(quantity, bench.facts.casting.material).choices,
      limits: limits.map(({ shown }) => ({ ...shown, text: withOtherUnit(shown.text, shown.unit, unit) })),
      cells,
    },
  ];
}

/** A row that this engine cannot have is no empty row. What somebody read of it is shown all the same. */
function arises(bench: Bench, { code, onlyFor }: Quantity): boolean {
  const { casting, engine, pair, readings, spots } = bench.facts;
  const hasBanks = spots.some((spot) => spot.kind === 'deck_corner' && spot.bank !== 'none');
  const known = { ...casting, layout: engine?.layout ?? null, hasPair: pair.length > 0, hasBanks };
  return applies(onlyFor, known) || readings.some((reading) => reading.quantity === code);
}

/** A limit in another unit than its row says so. */
const withOtherUnit = (text: string, unit: UnitCode, row: UnitCode | null): string =>
  text === '' || unit === row ? text : withMark(text, unit);

function columnOf(bench: Bench, place: Placed, rows: readonly SheetRow[], index: number, withShims: boolean): Column {
  const { verdict, row } = worstOf(rows, index);
  const quantity = row && bench.quantity(row.quantity);
  const lead = rows.find((it) => isLead(it, index) && !isReplaced(rows, it, index));
  return {
    spot: place.spot?.id ?? null,
    label: place.label,
    words: place.words,
    group: place.group,
    side: place.spot?.side ?? null,
    cylinder: place.spot?.cylinder ?? null,
    bank: place.spot?.bank ?? 'none',
    row: place.spot?.row ?? 1,
    benchOrder: place.spot?.benchOrder ?? 1,
    verdict,
    word: quantity ? verdictWord(verdict, quantity) : verdict.name,
    because: row && row !== lead && verdict.name !== 'pass' ? row.words : null,
    shims: withShims ? shimPlanOf(bench, place.spot) : null,
  };
}

/** The row that the column is first of all about: the first one with limits. */
const isLead = (row: SheetRow, index: number): boolean =>
  row.shown && row.limits.some((limit) => limit.text !== '') && row.cells[index]?.verdict != null;

/**
 * The worst verdict of a column. What is hidden and not measured does not count, nor a computed figure that is not there yet
 * unless the column is about it: its own cell says so.
 */
function worstOf(rows: readonly SheetRow[], index: number) {
  const lead = rows.find((row) => isLead(row, index) && !isReplaced(rows, row, index));
  const judged = rows.flatMap((row) => {
    const verdict = row.cells[index]?.verdict;
    if (!verdict || isReplaced(rows, row, index)) return [];
    const isAbsent = verdict.name === 'not measured' && row !== lead && (!row.shown || row.derived);
    return isAbsent ? [] : [{ verdict, row }];
  });
  const worst = judged.toSorted((a, b) => worry(a.verdict.name) - worry(b.verdict.name))[0];
  return worst ?? { verdict: NOT_MEASURED, row: undefined };
}

function notesOf(facts: Facts, rows: readonly SheetRow[]): readonly string[] {
  const used = new Set(facts.readings.map((reading) => reading.tool));
  const overdue = facts.tools
    .filter((tool) => tool.overdue && used.has(tool.id))
    .map((tool) => `${tool.name}: check was due ${tool.nextDue}. Readings taken with it stand and say so.`);
  const said = rows.flatMap((row) =>
    row.limits.flatMap((limit) =>
      limit.notes.flatMap((note) => (note === NOT_CHECKED ? [] : [`${row.words}: ${note}`])),
    ),
  );
  return [...new Set([...overdue, ...said])];
}
