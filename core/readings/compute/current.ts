/**
 * What stands in a cell now. Rows are never changed: a later row supersedes an earlier one, and the current row is the one
 * nobody supersedes. Two current rows are two people's; they are settled by their figures or by a person, never by the clock
 * alone.
 */
import type { Quantity } from '../../catalogue/compute/quantity.ts';
import type { Reading } from './model.ts';

export type CellRows = Readonly<{
  /** What stands; null when nothing was read or it was taken back. */
  current: Reading | null;
  /** More than one row to choose between; then nothing stands. */
  choose: readonly Reading[];
  /** Rows that no longer stand, newest first. */
  earlier: readonly Reading[];
}>;

const EMPTY: CellRows = { current: null, choose: [], earlier: [] };

/** Address of a cell as text. */
export const cellKey = (cell: Pick<Reading, 'quantity' | 'spot' | 'point' | 'stage'>): string =>
  `${cell.quantity}|${cell.spot ?? ''}|${cell.point ?? ''}|${cell.stage}`;

/** All cells of a casting that anything was ever written in. */
export function groupByCell(readings: readonly Reading[]): ReadonlyMap<string, readonly Reading[]> {
  const cells = new Map<string, Reading[]>();
  for (const reading of readings) {
    const key = cellKey(reading);
    const rows = cells.get(key);
    if (rows) rows.push(reading);
    else cells.set(key, [reading]);
  }
  return cells;
}

/**
 * What stands in one cell.
 *
 * @param rows All rows of the cell, oldest first.
 * @param agree Whether two figures say the same: no further apart than their combined uncertainty, and the same verdict.
 * Both are kept then and the later one stands.
 */
export function settleCell(rows: readonly Reading[] | undefined, agree: (a: Reading, b: Reading) => boolean): CellRows {
  if (!rows || rows.length === 0) return EMPTY;
  const superseded = new Set(rows.map((row) => row.supersedes));
  const open = lastOperation(rows.filter((row) => !superseded.has(row.id) && row.kind !== 'taken_back'));
  const last = open.at(-1);
  const isOne = last !== undefined && open.every((row) => row === last || agree(row, last));
  const standing = isOne ? last : null;
  return {
    current: standing,
    choose: standing ? [] : open,
    earlier: rows.filter((row) => (standing ? row !== standing : !open.includes(row))).toReversed(),
  };
}

/**
 * Rows of the latest operation only: a redo has cells of its own, and what the first run read stays as history. A row of no
 * operation belongs to whatever was under way when it was written.
 */
function lastOperation(open: readonly Reading[]): readonly Reading[] {
  const latest = Math.max(0, ...open.map((row) => row.operation ?? 0));
  const since = open.findIndex((row) => (row.operation ?? 0) === latest);
  return open.filter((row, index) => row.operation === latest || (row.operation === null && index >= since));
}

/** True where the figure of a cell comes from a formula: always, or until somebody types it. */
export const isComputed = (
  quantity: Pick<Quantity, 'derived' | 'orTyped'>,
  { current }: Pick<CellRows, 'current'>,
): boolean => quantity.derived !== null && !(quantity.orTyped && current?.kind === 'number');
