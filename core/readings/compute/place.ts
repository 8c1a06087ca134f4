/** From the address that a screen sends to the place on the casting, or nothing when there is no such place. */
import type { Bench } from './bench.ts';
import type { CellPlace } from './cells.ts';
import type { Reading } from './model.ts';
import { rowUnit } from './row-units.ts';
import { systemOfCasting } from './system.ts';

/** @returns null when the quantity, the spot or the point is not of this casting. */
export function placeAt(bench: Bench, cell: Pick<Reading, 'quantity' | 'spot' | 'point' | 'stage'>): CellPlace | null {
  const quantity = bench.quantity(cell.quantity);
  if (!quantity) return null;
  const spot = cell.spot === null ? null : bench.facts.spots.find((it) => it.id === cell.spot);
  if (spot === undefined || (spot?.kind ?? null) !== quantity.spotKind) return null;
  if (cell.point !== null && !quantity.points.some((point) => point.code === cell.point)) return null;
  if (cell.point === null && quantity.points.length > 0 && quantity.derived === null) return null;
  const limit = bench.limit(cell.quantity, cell.stage, spot?.side ?? null)?.limit;
  const current = bench.rows(cell.quantity, spot, cell.point, cell.stage).current;
  const system = systemOfCasting(bench);
  const unit = rowUnit(
    quantity,
    limit && limit.forWhat !== 'shop' ? [limit.unit] : [],
    current?.unit ? [current.unit] : [],
    system,
  );
  return { quantity, spot, point: cell.point, stage: cell.stage, unit };
}
