/** How a feature says what its requests do. Every name of the contract must be handled, or it does not compile. */
import type { ReadDb, WriteDb } from '../db/query.ts';
import type { Contract, Entry, OutputOf, ParsedInputOf } from '../kernel/contract.ts';
import type { Day, Moment } from '../kernel/days.ts';
import { AppError } from '../kernel/errors.ts';
import type { StaffId, TicketId } from '../kernel/ids.ts';
import type { Services } from './services.ts';
import type { Session } from './session.ts';

/** A moment as the shop's wall clock shows it. */
export type LocalTime = Readonly<{ day: Day /** Minutes after midnight, 0 to 1439. */; minute: number }>;

type Common = Readonly<{
  session: Session;
  now: Moment;
  /** The shop's calendar day of `now`. */
  today: Day;
  /** Minutes after midnight on the shop's wall clock. */
  minute: number;
  /** A moment in the shop's time zone. */
  local(at: Moment): LocalTime;
}>;

export type QueryCtx = Common & Readonly<{ db: ReadDb }>;
export type Ctx = Common &
  Readonly<{
    db: WriteDb;
    /** 32 random bytes as hex; from the host so that replays can be made equal apart from secrets. */
    secret(): string;
  }>;

/** One line of activity: what was done to which row, in words, with what stood before and after. */
export type ActivityLine = Readonly<{
  subject: readonly [table: string, id: number];
  /** A sentence a shop person understands, past tense: "Tagged 41170". */
  words: string;
  ticket?: TicketId | null | undefined;
  before?: unknown;
  after?: unknown;
}>;

/** What a command leaves. At least one line of activity, so that forgetting it does not compile. */
export type Done<O> = Readonly<{
  output: O;
  activity: readonly [ActivityLine, ...ActivityLine[]];
  /** Tickets whose facts changed: their projections are written anew and their screens refreshed. */
  touched?: readonly TicketId[];
}>;

/** What the slow phase before a command's transaction may use. It must not write. */
export type PrepareCtx = Common &
  Readonly<{
    services: Services;
    /** Read the workspace at this moment. */
    read<T>(work: (ctx: QueryCtx) => T): T;
  }>;

export type QueryHandler<E extends Entry> = Readonly<{
  run(input: ParsedInputOf<E>, ctx: QueryCtx): OutputOf<E>;
}>;
export type CommandHandler<E extends Entry> = Readonly<{
  /** Slow work (hashing, drawing, files) done before the transaction; its result is given to `run`. */
  prepare?(input: ParsedInputOf<E>, ctx: PrepareCtx): Promise<unknown>;
  run(input: ParsedInputOf<E>, ctx: Ctx, prepared: never): Done<OutputOf<E>>;
}>;

export type Handlers<C extends Contract> = {
  readonly [N in keyof C]: C[N]['kind'] extends 'query' ? QueryHandler<C[N]> : CommandHandler<C[N]>;
};

/**
 * A refusal that must leave a trace: the command is undone whole, then this is written in a transaction of its own.
 *
 * For what was tried and is dangerous (a near miss), so that it cannot be tried unseen.
 */
export class NotedRefusal extends Error {
  override readonly name = 'NotedRefusal';
  readonly refusal: AppError;
  readonly note: (ctx: Ctx) => Done<null>;

  constructor(refusal: AppError, note: (ctx: Ctx) => Done<null>) {
    super(refusal.message);
    this.refusal = refusal;
    this.note = note;
  }
}

/** A feature as the host sees it. */
export type Feature = Readonly<{ contract: Contract; handlers: Readonly<Record<string, AnyHandler>> }>;
export type AnyHandler = Readonly<{
  prepare?(input: unknown, ctx: PrepareCtx): Promise<unknown>;
  run(input: unknown, ctx: unknown, prepared: unknown): unknown;
}>;

/** Bind a contract to its handlers. */
export function implement<const C extends Contract>(contract: C, handlers: Handlers<C>): Feature {
  return { contract, handlers: handlers as unknown as Feature['handlers'] };
}

/**
 * The signed-in person.
 *
 * @throws AppError `not-allowed` when nobody is signed in.
 */
export function personOf(ctx: Readonly<{ session: Session }>): StaffId {
  const { staff } = ctx.session;
  if (staff === null) {
    throw new AppError(
      'not-allowed',
      'host/nobody-signed-in',
      'Nobody is signed in here. Tap your name and type your PIN.',
    );
  }
  return staff;
}
