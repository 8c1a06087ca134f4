/** Tells a page what was done, as server-sent events (WHATWG HTML, section 9.2). */
import type { IncomingMessage, ServerResponse } from 'node:http';
import type { RunningApp } from '../wiring/open-app.ts';

const HEARTBEAT_MS = 20_000;

/** Keep the answer open and write each announcement; a comment now and then keeps the line alive. */
export function sendEvents(app: RunningApp, request: IncomingMessage, response: ServerResponse): void {
  response.writeHead(200, {
    'content-type': 'text/event-stream',
    'cache-control': 'no-store',
    connection: 'keep-alive',
  });
  response.write(': here\n\n');
  const end = app.onChange((what) => response.write(`data: ${JSON.stringify(what)}\n\n`));
  const beat = setInterval(() => response.write(': here\n\n'), HEARTBEAT_MS);
  request.once('close', () => {
    clearInterval(beat);
    end();
  });
}
