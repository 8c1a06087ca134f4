/** A figure of before work counts until its place is read after work: a bore that was too worn and is honed to size passes. */
import type { SheetRow } from './sheet-model.ts';

/** True when the same place of the same column stands read or computed after work; what is only planned replaces nothing. */
export function isReplaced(rows: readonly SheetRow[], row: SheetRow, column: number): boolean {
  if (row.stage === 'after') return false;
  return rows.some((it) => {
    const cell = it.cells[column];
    const isTwin = it.stage === 'after' && it.quantity === row.quantity && it.point === row.point;
    return isTwin && cell?.value != null && cell.state !== 'planned';
  });
}
