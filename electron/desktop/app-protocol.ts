/** The screens' own address inside the window, `app://benchtag/`: built files, kept files, nothing else. No file://. */
import { readFile } from 'node:fs/promises';
import { toReplyError } from '#core/host/failure.ts';
import { MOST_BYTES } from '#core/host/files.ts';
import type { Host } from '#core/host/host.ts';
import type { Reply } from '#core/host/reply.ts';
import { SAFE_HEADERS } from '../wiring/content-policy.ts';
import { findStatic } from '../wiring/static-files.ts';

export const SCHEME = 'app';
export const ORIGIN = `${SCHEME}://benchtag`;

/** True for an address of our own page. `URL.origin` is `null` for a scheme that is not the web's, so parts are compared. */
export function isOurAddress(address: string): boolean {
  const url = URL.parse(address);
  return url?.protocol === `${SCHEME}:` && url.host === 'benchtag';
}

/** Told to Electron before it is ready: a standard, secure scheme, so that storage and fetch work as on https. */
export const SCHEME_PRIVILEGES = { standard: true, secure: true, supportFetchAPI: true, stream: true } as const;

type Served = Readonly<{ screens: string; host(): Host }>;

/** Answer one request of the window. Never throws. */
export async function answerProtocol({ screens, host }: Served, request: Request): Promise<Response> {
  const url = new URL(request.url);
  if (url.host !== 'benchtag') return plain(404, 'Nothing is here.');
  try {
    if (request.method === 'POST' && url.pathname === '/files') return json(await keep(host(), request));
    if (request.method !== 'GET') return plain(405, 'Only GET is answered.');
    if (url.pathname.startsWith('/files/')) return await kept(host(), url.pathname.slice('/files/'.length));
    const found = findStatic(screens, url.pathname);
    if (!found) return plain(404, 'Nothing is here.');
    return new Response(await readFile(found.file), { headers: { ...SAFE_HEADERS, 'content-type': found.mime } });
  } catch (error) {
    return json({ ok: false, error: toReplyError(error, host(), url.pathname) });
  }
}

async function keep(host: Host, request: Request): Promise<Reply> {
  const size = Number(request.headers.get('content-length') ?? 0);
  if (size > MOST_BYTES)
    return {
      ok: false,
      error: {
        kind: 'invalid-input',
        code: 'http/too-large',
        message: 'This is over 30 MB. Make it smaller, then add it again.',
      },
    };
  const bytes = new Uint8Array(await request.arrayBuffer());
  const output = await host.services.files.put(bytes, request.headers.get('content-type') ?? '');
  return { ok: true, output, touched: [], at: host.clock().toISOString() };
}

async function kept(host: Host, sha256: string): Promise<Response> {
  const found = host.services.files.find(sha256);
  if (!found) return plain(404, 'This file is not here.');
  const bytes = await host.services.files.read(sha256);
  return new Response(new Uint8Array(bytes), { headers: { ...SAFE_HEADERS, 'content-type': found.mime } });
}

const plain = (status: number, text: string): Response =>
  new Response(text, { status, headers: { ...SAFE_HEADERS, 'content-type': 'text/plain; charset=utf-8' } });
const json = (reply: Reply): Response =>
  new Response(JSON.stringify(reply), {
    headers: { ...SAFE_HEADERS, 'content-type': 'application/json; charset=utf-8' },
  });
