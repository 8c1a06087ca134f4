/** Blank grids for a traveller's back: every place and row of the tables that the work of a casting will fill. */
import type { BenchTable } from '../../catalogue/compute/bench-table.ts';
import { findBenchTable } from '../../catalogue/compute/bench-tables.ts';
import type { Sheet, SheetRow } from '../../readings/compute/sheet-model.ts';
import type { BlankGrid, BlankRow, SpotGroup } from '../contract/reading-tables.ts';
import { bothOf } from './both-units.ts';
import { rowPairs } from './measured.ts';
import { sentence } from './words.ts';

export type Blank = Readonly<{
  tables: readonly Readonly<{ sheet: Sheet; table: BenchTable }>[];
  /** Codes of quantities that live operations want. */
  wanted: ReadonlySet<string>;
}>;

/** So many points of one figure are boxes beside each other, not rows. */
const MANY_POINTS = 10;

/** Tables with a row that an operation wants, in bench order; a row that two tables have is given once. */
export function blankGrids({ tables, wanted }: Blank): BlankGrid[] {
  const seen = new Set<string>();
  return tables.flatMap(({ sheet, table }) => {
    const shown = sheet.rows.filter((row) => row.shown && (row.derived || !seen.has(row.key)));
    const rows = shown.filter(({ derived }) => !derived);
    // A computed figure that is wanted wants what it is computed from.
    if (rows.length === 0 || !shown.some(({ quantity }) => wanted.has(quantity))) return [];
    for (const row of rows) seen.add(row.key);
    const grids = table.spotKind === null ? factGrids(sheet, rows) : [placeGrid(sheet, rows)];
    const note = (findBenchTable(table.code)?.notes ?? []).map((words) => `${sentence(words)}.`).join(' ');
    return grids.map((grid, index) => ({ ...grid, ...(index === 0 && note !== '' && { note }) }));
  });
}

function placeGrid(sheet: Sheet, rows: readonly SheetRow[]): BlankGrid {
  const groups = [...Map.groupBy(sheet.columns, ({ group }) => group)].map(
    ([title, columns]): SpotGroup => ({
      title: sentence(title.toLowerCase()),
      spots: columns.map(({ label }) => label),
    }),
  );
  return {
    heading: sheet.table.words,
    groups,
    rows: rows.map((row) => ({ ...rowOf(row), label: labelOf(row, true) })),
  };
}

/** Figures read once in one list, those with a great many points each in a grid of its own. */
function factGrids(sheet: Sheet, rows: readonly SheetRow[]): BlankGrid[] {
  const many = [...Map.groupBy(rows, ({ quantity, stage }) => `${quantity}|${stage}`).values()].filter(
    (points) => points.length >= MANY_POINTS,
  );
  const single = rows.filter((row) => !many.some((points) => points.includes(row)));
  const lists = rowPairs(single).map((pair): BlankRow => {
    const stages = pair.map(({ stage }) => stage);
    const last = pair.at(-1);
    const words = last ? { ...rowOf(last), label: labelOf(last, false) } : EMPTY;
    return { ...words, found: stages.includes('before'), after: stages.includes('after') };
  });
  const grids = many.map((points): BlankGrid => {
    const [row] = points;
    return {
      heading: `${sheet.table.words}, ${row?.words ?? ''}${row?.stage === 'before' ? ', found' : ''}`,
      groups: [{ title: '', spots: points.map(({ point }) => point ?? '') }],
      rows: row ? [{ ...rowOf(row), label: row.unitMark }] : [],
    };
  });
  return [...(lists.length === 0 ? [] : [{ heading: sheet.table.words, groups: [], rows: lists }]), ...grids];
}

const EMPTY: BlankRow = { label: '', limit: '', other: '' };

const rowOf = (row: SheetRow): Omit<BlankRow, 'label'> => bothOf(row.limits);

function labelOf(row: SheetRow, withStage: boolean): string {
  const point = row.pointWords === null ? '' : `, ${row.pointWords}`;
  const stage = withStage && row.stage === 'before' ? ', found' : '';
  const mark = row.unitMark === '' ? '' : `, ${row.unitMark}`;
  return `${sentence(row.words)}${point}${stage}${mark}`;
}
