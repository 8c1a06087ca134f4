/** What goes over the wire, the same for window, browser and command line. */
import type { ErrorKind, ErrorOffer } from '../kernel/errors.ts';
import type { TicketId } from '../kernel/ids.ts';

export type Request = Readonly<{
  name: string;
  input: unknown;
  /** The person who acts; must be signed in on this device today. */
  as?: number | undefined;
  /** The person's PIN where it is asked again. Never kept. */
  pin?: string | undefined;
  /** Made by the sender, so that a command sent twice is answered once. */
  key?: string | undefined;
}>;

export type ReplyError = Readonly<{
  kind: ErrorKind;
  code: string;
  message: string;
  fields?: Readonly<Record<string, string>>;
  offers?: readonly ErrorOffer[];
  facts?: Readonly<Record<string, unknown>>;
  /** To quote when asking for help; stands in the log too. */
  reference?: string;
}>;

export type Reply =
  | Readonly<{ ok: true; output: unknown; touched: readonly TicketId[]; at: string }>
  | Readonly<{ ok: false; error: ReplyError }>;
