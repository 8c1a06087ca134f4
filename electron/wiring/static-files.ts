/** Serves the built screens and nothing else. */
import { createReadStream, statSync } from 'node:fs';
import type { ServerResponse } from 'node:http';
import { extname, join, normalize, sep } from 'node:path';

const MIME: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ttf': 'font/ttf',
  '.woff2': 'font/woff2',
  '.json': 'application/json',
};

/** The file under `root` that a path names, or undefined: outside the root, a folder, or not there. */
export function findStatic(
  root: string,
  path: string,
): { file: string; mime: string; bytes: number; lasting: boolean } | undefined {
  const wanted = path === '/' ? '/index.html' : path;
  const file = normalize(join(root, wanted));
  const mime = MIME[extname(file)];
  if (!mime || !file.startsWith(root + sep)) return undefined;
  const seen = statSync(file, { throwIfNoEntry: false });
  if (!seen?.isFile()) return undefined;
  // Built names carry a hash of what is in them.
  return { file, mime, bytes: seen.size, lasting: wanted.startsWith('/assets/') };
}

export function sendStatic(found: NonNullable<ReturnType<typeof findStatic>>, response: ServerResponse): void {
  response.writeHead(200, {
    'content-type': found.mime,
    'content-length': found.bytes,
    'cache-control': found.lasting ? 'public, max-age=31536000, immutable' : 'no-cache',
  });
  createReadStream(found.file).pipe(response);
}
