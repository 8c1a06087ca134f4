/**
 * The running program: one workspace at a time, with the way into the practice shop and back.
 *
 * The practice shop is a workspace of its own in a folder of its own, made once by replaying its story in a thread. A screen
 * that is paired with one workspace is paired with the other when it goes there.
 */
import { existsSync } from 'node:fs';
import { Worker } from 'node:worker_threads';
import { readDb } from '#core/db/query.ts';
import { toReplyError } from '#core/host/failure.ts';
import type { Announcement, Host } from '#core/host/host.ts';
import type { Reply, Request } from '#core/host/reply.ts';
import { everything, type Session } from '#core/host/session.ts';
import { openWorkspace, type Workspace } from './open-workspace.ts';
import type { Running } from './owner-lock.ts';
import { lastWorkspace, pathsOf, practiceFolder, rememberWorkspace } from './workspace-folder.ts';

export type RunningApp = Readonly<{
  workspace(): Workspace;
  host(): Host;
  /** Answer one request. Never throws. */
  answer(request: Request, session: Session): Promise<Reply>;
  onChange(listener: (what: Announcement) => void): () => void;
  tell(running: Omit<Running, 'pid'>): void;
  /** Back up where that is due, then close. */
  close(options?: Readonly<{ backup?: boolean }>): Promise<void>;
}>;

const INTO_PRACTICE = 'shop/open-practice-shop';
const OUT_OF_PRACTICE = 'shop/leave-practice-shop';

type Options = Readonly<{
  /** The workspace; the one opened last when empty. */
  folder?: string | undefined;
  home?: string;
  /** How the practice shop is made; tests make a small one. */
  makePractice?: (folder: string) => Promise<void>;
  /** Injected by tests; every workspace of this program then goes by it. */
  clock?: () => Date;
  /** scrypt cost, for tests. */
  pinCost?: number;
}>;

/** @throws AppError in words when the workspace cannot be opened. */
export function openApp({
  folder,
  home,
  makePractice = makePracticeInThread,
  clock,
  pinCost,
}: Options = {}): RunningApp {
  const how = { ...(clock && { clock }), ...(pinCost !== undefined && { pinCost }) };
  const own = folder ?? lastWorkspace(home);
  const practice = practiceFolder(home);
  let current = openWorkspace(own, how);
  let told: Omit<Running, 'pid'> = { address: null, token: null };
  const listeners = new Set<(what: Announcement) => void>();
  let stop = current.onChange(announce);
  if (own !== practice) rememberWorkspace(own, home);

  function announce(what: Announcement): void {
    for (const listener of listeners) listener(what);
  }

  async function go(to: string, session: Session): Promise<void> {
    const tokens = tokensOf(current.host(), session);
    stop();
    await current.close();
    current = openWorkspace(to, how);
    stop = current.onChange(announce);
    current.tell(told);
    for (const token of tokens) await pairHere(current, token);
    announce({ name: 'shop/other-workspace', touched: [] });
  }

  async function intoPractice(session: Session): Promise<void> {
    if (!existsSync(pathsOf(practice).database)) await makePractice(practice);
    await go(practice, session);
  }

  return {
    workspace: () => current,
    host: () => current.host(),
    async answer(request, session) {
      const reply = await current.answer(request, session);
      if (!reply.ok) return reply;
      try {
        if (request.name === INTO_PRACTICE && current.paths.folder !== practice) await intoPractice(session);
        if (request.name === OUT_OF_PRACTICE && current.paths.folder === practice)
          await go(own === practice ? lastWorkspace(home) : own, session);
        return reply;
      } catch (error) {
        return { ok: false, error: toReplyError(error, current.host(), request.name) };
      }
    },
    onChange(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    tell(running) {
      told = running;
      current.tell(running);
    },
    async close({ backup = false } = {}) {
      if (backup) await current.backupOfTheDay().catch(() => undefined);
      await current.close();
    },
  };
}

type Paired = Readonly<{ name: string; kind: string; tokenHash: string }>;

function tokensOf(host: Host, session: Session): Paired[] {
  if (session.device === null) return [];
  const db = readDb(host.sqlite);
  return db.all(
    db.q.selectFrom('device').select(['name', 'kind', 'token_hash as tokenHash']).where('id', '=', session.device),
  );
}

async function pairHere(workspace: Workspace, paired: Paired): Promise<void> {
  const db = readDb(workspace.host().sqlite);
  const known = db.one(db.q.selectFrom('device').select('id').where('token_hash', '=', paired.tokenHash));
  if (!known) await workspace.answer({ name: 'devices/pair-device', input: paired }, everything('practice shop door'));
}

function makePracticeInThread(folder: string): Promise<void> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL('./practice-worker.ts', import.meta.url), { workerData: { folder } });
    worker.once('error', reject);
    worker.once('exit', (code) => (code === 0 ? resolve() : reject(new Error(`the practice shop ended with ${code}`))));
  });
}
