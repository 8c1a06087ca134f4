/** What goes to the host and what comes back, the same over the window's bridge and over http. */
import type { ErrorKind, ErrorOffer } from '#core/kernel/errors.ts';

export type Request = Readonly<{
  name: string;
  input: unknown;
  /** The person who acts; signed in on this device today. */
  as?: number | undefined;
  pin?: string | undefined;
  /** Made here, so that a command sent twice is answered once. */
  key?: string | undefined;
}>;

export type ReplyError = Readonly<{
  kind: ErrorKind;
  code: string;
  message: string;
  fields?: Readonly<Record<string, string>> | undefined;
  offers?: readonly ErrorOffer[] | undefined;
  facts?: Readonly<Record<string, unknown>> | undefined;
  reference?: string | undefined;
}>;

export type Reply =
  | Readonly<{ ok: true; output: unknown; touched: readonly number[]; at: string }>
  | Readonly<{ ok: false; error: ReplyError }>;

/** What the host tells every screen after a command is on disk. */
export type Announcement = Readonly<{ name: string; touched: readonly number[] }>;

/** A file as the host keeps it: by the SHA-256 of its bytes, which the host computes. */
export type StoredFile = Readonly<{
  sha256: string;
  bytes: number;
  mime: string;
  width: number | null;
  height: number | null;
}>;
