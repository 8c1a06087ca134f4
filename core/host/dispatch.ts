/**
 * The one way in: check, run and answer one request.
 *
 * A command's rows, its projections, its activity and its request key share one transaction, so the file never holds one
 * without the other. Nothing awaits inside it: slow work is done before, in the handler's own `prepare`.
 */
import { readDb, writeDb } from '../db/query.ts';
import type { Entry } from '../kernel/contract.ts';
import { type Moment, moment } from '../kernel/days.ts';
import { AppError } from '../kernel/errors.ts';
import type { TicketId } from '../kernel/ids.ts';
import { writeActivity } from './activity.ts';
import { localTime } from './clock.ts';
import { toReplyError } from './failure.ts';
import type { Host } from './host.ts';
import { type AnyHandler, type Ctx, type Done, NotedRefusal, type PrepareCtx, type QueryCtx } from './implement.ts';
import type { Reply, Request } from './reply.ts';
import { findReply, keepReply } from './request-key.ts';
import type { Session } from './session.ts';

type Found = Readonly<{ entry: Entry; handler: AnyHandler }>;

/** Answer a request. Never throws: an error is an answer too. */
export async function dispatch(host: Host, request: Request, session: Session): Promise<Reply> {
  try {
    const found = findHandler(host, request.name);
    checkCapability(found.entry, session);
    const repeated = findReply(host.sqlite, request, session);
    if (repeated) return repeated;
    if (found.entry.pin === 'again') await host.checkPinAgain(session, request.pin, readMoment(host));
    const input = parseInput(found.entry, request.input);
    const now = readMoment(host);
    const common = commonOf(host, session, now);
    if (found.entry.kind === 'query') return runQuery(host, found, input, common, now);
    const prepared = await found.handler.prepare?.(input, prepareCtx(host, common));
    return runCommand(host, { request, session, found, input, prepared, now, common });
  } catch (error) {
    return { ok: false, error: toReplyError(error, host, request.name) };
  }
}

type CommonCtx = Omit<QueryCtx, 'db'>;

function commonOf(host: Host, session: Session, now: Moment): CommonCtx {
  const zone = host.timeZone();
  const local = localTime(now, zone);
  return { session, now, today: local.day, minute: local.minute, local: (at) => localTime(at, zone) };
}

const readMoment = (host: Host): Moment => moment(host.clock().toISOString());

function prepareCtx(host: Host, common: CommonCtx): PrepareCtx {
  return {
    ...common,
    services: host.services,
    read: (work) => host.sqlite.transaction(() => work({ ...common, db: readDb(host.sqlite) }))(),
  };
}

function runQuery(host: Host, found: Found, input: unknown, common: CommonCtx, now: Moment): Reply {
  // A deferred transaction: the query sees one moment of the file.
  const output = host.sqlite.transaction(() =>
    found.handler.run(input, { ...common, db: readDb(host.sqlite) }, undefined),
  )();
  return { ok: true, output, touched: [], at: now };
}

type CommandRun = Readonly<{
  request: Request;
  session: Session;
  found: Found;
  input: unknown;
  prepared: unknown;
  now: Moment;
  common: CommonCtx;
}>;

function runCommand(host: Host, run: CommandRun): Reply {
  try {
    return inTransaction(host, run, (ctx) => run.found.handler.run(run.input, ctx, run.prepared) as Done<unknown>);
  } catch (error) {
    if (!(error instanceof NotedRefusal)) throw error;
    // The command is undone; what was tried is kept, and answers no key: sent again it is refused and noted again.
    inTransaction(host, { ...run, request: { ...run.request, key: undefined } }, error.note);
    throw error.refusal;
  }
}

function inTransaction(host: Host, run: CommandRun, work: (ctx: Ctx) => Done<unknown>): Reply {
  const { request, session, found, input, now, common } = run;
  const reply = host.sqlite
    .transaction((): Reply => {
      const db = writeDb(host.sqlite, { now, by: session.staff });
      const done = work({ ...common, db, secret: host.secret });
      const touched: readonly TicketId[] = [...new Set(done.touched ?? [])];
      host.project(db, touched);
      writeActivity(host, { lines: done.activity, session, now, command: request.name, input, entry: found.entry });
      const answer: Reply = { ok: true, output: done.output, touched, at: now };
      keepReply(db, request, session, answer);
      return answer;
    })
    // Takes the write lock at once: two writers wait instead of failing half way.
    .immediate();
  if (reply.ok) host.announce({ name: request.name, touched: reply.touched });
  return reply;
}

function findHandler(host: Host, name: string): Found {
  const feature = host.features.find((f) => Object.hasOwn(f.contract, name));
  const entry = feature?.contract[name];
  const handler = feature?.handlers[name];
  if (!entry || !handler) {
    throw new AppError('not-found', 'host/unknown-request', 'This screen is older than the program. Load it again.');
  }
  return { entry, handler };
}

/** Before the input is read, so that a stranger learns nothing about its shape. */
function checkCapability(entry: Entry, session: Session): void {
  if (entry.may === 'nobody' || session.may.has(entry.may)) return;
  if (session.staff === null) {
    throw new AppError(
      'not-allowed',
      'host/nobody-signed-in',
      'Nobody is signed in here. Tap your name and type your PIN.',
    );
  }
  throw new AppError('not-allowed', 'host/not-allowed', 'This is not yours to do. Ask a lead or the owner.');
}

function parseInput(entry: Entry, input: unknown): unknown {
  const parsed = entry.input.safeParse(input);
  if (parsed.success) return parsed.data;
  const fields: Record<string, string> = {};
  for (const issue of parsed.error.issues) {
    const path = issue.path.map(String).join('.') || 'input';
    fields[path] ??= issue.message;
  }
  const first = Object.values(fields)[0] ?? 'Look at the marked fields.';
  throw new AppError('invalid-input', 'host/bad-input', first, { fields });
}
