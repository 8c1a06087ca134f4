/** A ticket as its page gets it, and what every panel over the page is given. */
import type { App } from '#core/app-contract.ts';
import type { OutputOf } from '#core/kernel/contract.ts';

export type Ticket = OutputOf<App['tickets/get-ticket']>;
export type TicketCasting = Ticket['castings'][number];
export type PanelProps = Readonly<{ ticket: Ticket; onDone: () => void }>;
