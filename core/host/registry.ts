/** The features as the host runs them. A new feature adds its line here and in core/app-contract.ts. */

import { asking } from '../asking/handlers.ts';
import { billing } from '../billing/handlers.ts';
import { castings } from '../castings/handlers.ts';
import { catalogue } from '../catalogue/handlers.ts';
import { checkIn } from '../check-in/handlers.ts';
import { customers } from '../customers/handlers.ts';
import type { WriteDb } from '../db/query.ts';
import { floor } from '../floor/handlers.ts';
import { home } from '../home/handlers.ts';
import { intake } from '../intake/handlers.ts';
import type { TicketId } from '../kernel/ids.ts';
import { money } from '../money/handlers.ts';
import { opening } from '../opening/handlers.ts';
import { parts } from '../parts/handlers.ts';
import { photos } from '../photos/handlers.ts';
import { pricing } from '../pricing/handlers.ts';
import { promises } from '../promises/handlers.ts';
import { racks } from '../racks/handlers.ts';
import { rates } from '../rates/handlers.ts';
import { readings } from '../readings/handlers.ts';
import { release } from '../release/handlers.ts';
import { search } from '../search/handlers.ts';
import { indexNoted } from '../search/store.ts';
import { sheets } from '../sheets/handlers.ts';
import { shop } from '../shop/handlers.ts';
import { signOff } from '../sign-off/handlers.ts';
import { staff } from '../staff/handlers.ts';
import { projectTickets } from '../state/store/projections.ts';
import { terms } from '../terms/handlers.ts';
import { ticketPage } from '../ticket-page/handlers.ts';
import { tickets } from '../tickets/handlers.ts';
import type { Feature } from './implement.ts';

export const features: readonly Feature[] = [
  shop,
  staff,
  catalogue,
  rates,
  customers,
  terms,
  tickets,
  castings,
  intake,
  photos,
  pricing,
  readings,
  racks,
  floor,
  opening,
  checkIn,
  asking,
  money,
  billing,
  signOff,
  release,
  search,
  ticketPage,
  promises,
  home,
  sheets,
  parts,
];

/** What is written anew for every touched ticket, in the command's own transaction. */
const projections: readonly ((db: WriteDb, touched: readonly TicketId[]) => void)[] = [projectTickets];

/** The host's `project` hook. */
export function project(db: WriteDb, touched: readonly TicketId[]): void {
  indexNoted(db);
  if (touched.length === 0) return;
  for (const write of projections) write(db, touched);
}
