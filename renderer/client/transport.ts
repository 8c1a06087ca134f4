/** The wire: the bridge of the desktop window where there is one, otherwise http to where the page came from. */
import { notReached, notUnderstood, RequestRefused } from './request-refused.ts';
import type { Announcement, Reply, Request, StoredFile } from './wire.ts';

/** What the desktop window's preload script offers. */
export type Bridge = Readonly<{
  call(request: Request): Promise<Reply>;
  /** Returns what ends the listening. */
  onChange(listener: (what: Announcement) => void): () => void;
}>;

declare global {
  interface Window {
    benchtag?: Bridge;
  }
}

export type Transport = Readonly<{
  /** @throws RequestRefused `client/not-reached` when nothing answers. */
  call(request: Request): Promise<Reply>;
  /** Calls `onChange` after each command anywhere, `onLink` when the host is lost or found again. Returns the end. */
  listen(onChange: (what: Announcement) => void, onLink: (there: boolean) => void): () => void;
}>;

/** The window's own bridge. */
export const bridgeTransport = (bridge: Bridge): Transport => ({
  async call(request) {
    try {
      return await bridge.call(request);
    } catch {
      throw notReached();
    }
  },
  listen: (onChange) => bridge.onChange(onChange),
});

/** `POST ./call` and server-sent events at `./events`, on the page's own origin. */
export const httpTransport = (send: typeof fetch = (...args) => fetch(...args)): Transport => ({
  async call(request) {
    const response = await reach(send, './call', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(request),
    });
    return readReply(response);
  },
  listen(onChange, onLink) {
    const events = new EventSource('./events');
    events.onopen = () => onLink(true);
    events.onerror = () => onLink(false);
    events.onmessage = (event: MessageEvent<string>) => {
      const what = readAnnouncement(event.data);
      if (what) onChange(what);
    };
    return () => events.close();
  },
});

async function reach(send: typeof fetch, address: string, init: RequestInit): Promise<Response> {
  try {
    return await send(address, { credentials: 'same-origin', ...init });
  } catch {
    throw notReached();
  }
}

async function readReply(response: Response): Promise<Reply> {
  let body: unknown;
  try {
    body = await response.json();
  } catch {
    throw notUnderstood();
  }
  if (!isReply(body)) throw notUnderstood();
  return body;
}

const isReply = (body: unknown): body is Reply =>
  typeof body === 'object' && body !== null && 'ok' in body && typeof body.ok === 'boolean';

/** The announcement in an event's text, or undefined for anything else (a heartbeat). */
export function readAnnouncement(text: string): Announcement | undefined {
  try {
    const what: unknown = JSON.parse(text);
    const ours = typeof what === 'object' && what !== null && 'name' in what && 'touched' in what;
    return ours ? (what as Announcement) : undefined;
  } catch {
    return undefined;
  }
}

/**
 * Hands bytes to the host, which keeps them under the hash it computes.
 *
 * @throws RequestRefused when the host refuses the file or does not answer
 */
export async function putFile(blob: Blob, send: typeof fetch = (...args) => fetch(...args)): Promise<StoredFile> {
  const response = await reach(send, './files', {
    method: 'POST',
    headers: { 'content-type': blob.type || 'application/octet-stream' },
    body: blob,
  });
  const reply = await readReply(response);
  if (!reply.ok) throw new RequestRefused(reply.error);
  return reply.output as StoredFile;
}

/** Where a kept file can be seen or saved. */
export const fileUrl = (sha256: string): string => `./files/${sha256}`;
