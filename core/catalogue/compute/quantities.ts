/**
 * The quantities a shop measures, as data: adding one is one row in a file of `quantities`, and a formula in core/readings
 * when it is computed. Screen, verdict, paper and export follow.
 */

import { BLOCK } from './quantities/block.ts';
import { BORES } from './quantities/bores.ts';
import { BOTTOM_END } from './quantities/bottom-end.ts';
import { CAM_BORES } from './quantities/cam-bores.ts';
import { CHAMBERS } from './quantities/chambers.ts';
import { CLEANING } from './quantities/cleaning.ts';
import { DECK_HEIGHT } from './quantities/deck-height.ts';
import { EFFECTS } from './quantities/effects.ts';
import { FACE_QUANTITIES } from './quantities/faces.ts';
import { FINISH } from './quantities/finish.ts';
import { FITS } from './quantities/fits.ts';
import { GRINDING } from './quantities/grinding.ts';
import { LASH } from './quantities/lash.ts';
import { LEAK_TESTS } from './quantities/leak-tests.ts';
import { LIFTING } from './quantities/lifting.ts';
import { PORTS } from './quantities/ports.ts';
import { RECORDS } from './quantities/records.ts';
import { SEATS } from './quantities/seats.ts';
import { SPRINGS } from './quantities/springs.ts';
import { SURFACES } from './quantities/surfaces.ts';
import { VALVES } from './quantities/valves.ts';
import { WIRE_SPRINGS } from './quantities/wire-springs.ts';
import type { Quantity } from './quantity.ts';

/** Every quantity of the first catalogue, in the order lists show them. */
export const QUANTITIES: readonly Quantity[] = [
  ...VALVES,
  ...SEATS,
  ...GRINDING,
  ...LASH,
  ...PORTS,
  ...SPRINGS,
  ...WIRE_SPRINGS,
  ...SURFACES,
  ...FACE_QUANTITIES,
  ...BORES,
  ...BLOCK,
  ...BOTTOM_END,
  ...FITS,
  ...FINISH,
  ...CLEANING,
  ...LIFTING,
  ...CAM_BORES,
  ...CHAMBERS,
  ...EFFECTS,
  ...DECK_HEIGHT,
  ...RECORDS,
  ...LEAK_TESTS,
];

const BY_CODE = new Map(QUANTITIES.map((it) => [it.code, it]));

/** A quantity of the first catalogue by its code; undefined for one the shop added itself. */
export const findQuantity = (code: string): Quantity | undefined => BY_CODE.get(code);
