/** The castings of a ticket as a bill names them. */
import type { App } from '#core/app-contract.ts';
import type { OutputOf } from '#core/kernel/contract.ts';
import type { CastingTitles } from './parts/line-table.tsx';

export type TicketOf = OutputOf<App['tickets/get-ticket']>;

/** Words and metal of each casting, by its id. */
export const titlesOf = (ticket: TicketOf): CastingTitles =>
  new Map(ticket.castings.map((one) => [one.castingId, { words: one.title, metal: one.metal.class }]));
