/**
 * The quantities a shop measures, as data: adding one is one row in a file of `quantities`, and a formula in core/readings
 * when it is computed. Screen, verdict, paper and export follow.
 */

import { BLOCK } from './quantities/block.ts';
import { BORES } from './quantities/bores.ts';
import { BOTTOM_END } from './quantities/bottom-end.ts';
import { RECORDS } from './quantities/records.ts';
import { SPRINGS } from './quantities/springs.ts';
import { SURFACES } from './quantities/surfaces.ts';
import { VALVES } from './quantities/valves.ts';
import type { Quantity } from './quantity.ts';

/** Every quantity of the first catalogue, in the order lists show them. */
export const QUANTITIES: readonly Quantity[] = [
  ...VALVES,
  ...SPRINGS,
  ...SURFACES,
  ...BORES,
  ...BLOCK,
  ...BOTTOM_END,
  ...RECORDS,
];

const BY_CODE = new Map(QUANTITIES.map((it) => [it.code, it]));

/** A quantity of the first catalogue by its code; undefined for one the shop added itself. */
export const findQuantity = (code: string): Quantity | undefined => BY_CODE.get(code);
