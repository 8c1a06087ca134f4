/** Draws papers off the main thread, so that nobody waits while a long sheet is made. */
import { Worker } from 'node:worker_threads';
import type { DrawAnswer, DrawRequest } from './worker.ts';

export type Drawer = Readonly<{
  /** The bytes of a PDF. `data` is plain JSON. @throws when the sheet is unknown or cannot be drawn. */
  draw(sheet: string, data: unknown): Promise<Uint8Array>;
  /** End the thread. What is still being drawn is refused. */
  stop(): Promise<void>;
}>;

type Waiting = Readonly<{ done(bytes: Uint8Array): void; failed(error: Error): void }>;

/**
 * Start the drawing thread. A thread that dies refuses what it was drawing and is started anew for the next paper.
 *
 * @param worker the file that runs in the thread (it calls `serveDrawings`)
 * @param fonts folder of the six faces, given to the thread
 */
export function startDrawer({ worker, fonts }: Readonly<{ worker: URL; fonts: string }>): Drawer {
  const waiting = new Map<number, Waiting>();
  let count = 0;
  let thread: Worker | undefined = start();

  function start(): Worker {
    const started = new Worker(worker, { workerData: { fonts } });
    // The thread alone does not keep the program running.
    started.unref();
    started.on('message', settle);
    started.on('error', lose);
    started.on('exit', () => lose(new Error('the drawing thread has ended')));
    return started;
  }

  function settle(answer: DrawAnswer): void {
    const asked = waiting.get(answer.id);
    waiting.delete(answer.id);
    if (waiting.size === 0) thread?.unref();
    if ('bytes' in answer) asked?.done(answer.bytes);
    else asked?.failed(new Error(answer.error));
  }

  function lose(error: Error): void {
    thread = undefined;
    for (const asked of waiting.values()) asked.failed(error);
    waiting.clear();
  }

  return {
    draw(sheet, data) {
      return new Promise((done, failed) => {
        thread ??= start();
        thread.ref();
        count += 1;
        waiting.set(count, { done, failed });
        thread.postMessage({ id: count, sheet, data } satisfies DrawRequest);
      });
    },
    async stop() {
      await thread?.terminate();
    },
  };
}
