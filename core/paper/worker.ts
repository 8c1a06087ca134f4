/** The drawing side of the drawer: runs in a worker thread, where the faces are opened once. */
import type { MessagePort } from 'node:worker_threads';

/** What the main thread asks. */
export type DrawRequest = Readonly<{ id: number; sheet: string; data: unknown }>;
/** What comes back: the file, or what went wrong. */
export type DrawAnswer =
  | Readonly<{ id: number; bytes: Uint8Array<ArrayBuffer> }>
  | Readonly<{ id: number; error: string }>;

type Draw = (sheet: string, data: unknown) => Promise<Uint8Array>;

/** Answer drawing requests, one after the other, in the order they come. */
export function serveDrawings(port: MessagePort, draw: Draw): void {
  let last: Promise<void> = Promise.resolve();
  port.on('message', (request: DrawRequest) => {
    last = last.then(() => answer(port, draw, request));
  });
}

async function answer(port: MessagePort, draw: Draw, { id, sheet, data }: DrawRequest): Promise<void> {
  try {
    const bytes = new Uint8Array(await draw(sheet, data));
    port.postMessage({ id, bytes } satisfies DrawAnswer, [bytes.buffer]);
  } catch (error) {
    const told = error instanceof Error ? (error.stack ?? error.message) : String(error);
    port.postMessage({ id, error: told } satisfies DrawAnswer);
  }
}
