/** Which things stand across a reading table, in the order they sit, and how they are divided where there is no room. */
import type { ReadingColumn, ReadingGroup } from './bench-reading-table.tsx';

/** A place as the table gets it: bench order within its row. */
export type ColumnSpot = Readonly<{
  key: string;
  label: string;
  row: number;
  benchOrder: number;
  /** INTAKE SIDE, LEFT BANK; empty when the row is not named. */
  group: string;
}>;

/**
 * Groups in the order on the bench: one a row, named when all in it share a name. Turned end for end, each row is read from the rear, so that the first column is still the one at the left hand.
 */
export function groupColumns(spots: readonly ColumnSpot[], turned: boolean): ReadingGroup[] {
  const rows = [...new Set(spots.map((spot) => spot.row))].sort((a, b) => a - b);
  return rows.map((row) => {
    const here = spots.filter((spot) => spot.row === row).sort((a, b) => a.benchOrder - b.benchOrder);
    const columns: ReadingColumn[] = (turned ? here.reverse() : here).map(({ key, label }) => ({ key, label }));
    return { key: `row-${row}`, words: wordsOf(here), note: turned ? 'rear to front' : 'front to rear', columns };
  });
}

function wordsOf(here: readonly ColumnSpot[]): string {
  const words = here[0]?.group ?? '';
  return here.every((spot) => spot.group === words) ? words : '';
}

/**
 * Pages of groups that fit side by side: all on one when there is room for `most` columns, else one group a page, and a
 * group too long for a page is cut in even parts.
 */
export function pageGroups(groups: readonly ReadingGroup[], most: number): ReadingGroup[][] {
  const count = groups.reduce((sum, group) => sum + group.columns.length, 0);
  if (count <= most) return count === 0 ? [] : [[...groups]];
  return groups.flatMap((group) => cut(group, most)).map((group) => [group]);
}

function cut(group: ReadingGroup, most: number): ReadingGroup[] {
  const parts = Math.ceil(group.columns.length / most);
  if (parts <= 1) return [group];
  const size = Math.ceil(group.columns.length / parts);
  return Array.from({ length: parts }, (_, n) => {
    const columns = group.columns.slice(n * size, (n + 1) * size);
    const ends = `${columns[0]?.label ?? ''} to ${columns.at(-1)?.label ?? ''}`;
    return { ...group, key: `${group.key}-${n}`, words: group.words || ends, columns };
  });
}
