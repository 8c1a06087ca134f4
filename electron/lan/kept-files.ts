/** Pictures and papers in and out. */
import type { IncomingMessage, ServerResponse } from 'node:http';
import { MOST_BYTES } from '#core/host/files.ts';
import type { Host } from '#core/host/host.ts';
import type { Reply } from '#core/host/reply.ts';

import { readBody } from './body.ts';

/** Keep the body as a file. */
export async function takeFile(host: Host, request: IncomingMessage): Promise<Reply> {
  const bytes = await readBody(request, MOST_BYTES);
  const output = await host.services.files.put(bytes, request.headers['content-type'] ?? '');
  return { ok: true, output, touched: [], at: host.clock().toISOString() };
}

/** Send a kept file; its name is its content, so it may be kept by the browser for ever. */
export async function sendKept(host: Host, sha256: string, response: ServerResponse): Promise<void> {
  const { files } = host.services;
  const found = files.find(sha256);
  if (!found) {
    response.writeHead(404, { 'content-type': 'text/plain; charset=utf-8' }).end('This file is not here.');
    return;
  }
  response.writeHead(200, {
    'content-type': found.mime,
    'content-length': found.bytes,
    'cache-control': 'private, max-age=31536000, immutable',
  });
  response.end(await files.read(sha256));
}
