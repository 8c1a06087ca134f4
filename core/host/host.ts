/** Everything one open workspace needs to answer requests. Made by the wiring, or by the tests' kit. */
import type { Database } from 'better-sqlite3';
import type { WriteDb } from '../db/query.ts';
import type { Moment } from '../kernel/days.ts';
import type { TicketId } from '../kernel/ids.ts';
import type { Feature } from './implement.ts';
import type { Services } from './services.ts';
import type { Session } from './session.ts';

/** What screens are told after a command is on disk. */
export type Announcement = Readonly<{ name: string; touched: readonly TicketId[] }>;

export type Host = Readonly<{
  sqlite: Database;
  features: readonly Feature[];
  services: Services;
  appVersion: string;
  clock(): Date;
  /** IANA name of the shop's zone. */
  timeZone(): string;
  /** 32 random bytes as hex. */
  secret(): string;
  /** Write the projections of these tickets anew (core/state). */
  project(db: WriteDb, touched: readonly TicketId[]): void;
  announce(what: Announcement): void;
  /** @throws AppError when the person's PIN is missing or wrong where it is asked again. */
  checkPinAgain(session: Session, pin: string | undefined, now: Moment): Promise<void>;
  log(level: 'info' | 'warn' | 'error', line: Readonly<Record<string, unknown>>): void;
}>;
