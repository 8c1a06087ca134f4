/** Pictures and papers of a workspace, kept by their SHA-256 under `attachments/<first 2>/<sha256>`. */
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import { open, readFile, rename } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { imageSize } from 'image-size';
import { AppError } from '../kernel/errors.ts';
import type { Services, StoredFile } from './services.ts';

/** 30 MB: a phone's largest picture, twice. */
export const MOST_BYTES = 30 * 1024 * 1024;
const IMAGE_MIME: Readonly<Record<string, string>> = {
  jpg: 'image/jpeg',
  png: 'image/png',
  webp: 'image/webp',
  gif: 'image/gif',
};
const PDF = 'application/pdf';

/** Keep files in a folder. The same bytes twice are one file. */
export function makeFiles(folder: string): Services['files'] {
  const pathOf = (sha256: string) => join(folder, sha256.slice(0, 2), sha256);
  return {
    async put(bytes, mime) {
      if (bytes.length > MOST_BYTES)
        throw refused('This file is over 30 MB. Take the picture smaller, then add it again.');
      const seen = lookInside(bytes, mime);
      const sha256 = createHash('sha256').update(bytes).digest('hex');
      await keep(pathOf(sha256), bytes);
      return { sha256, bytes: bytes.length, ...seen };
    },
    find(sha256) {
      if (!/^[0-9a-f]{64}$/.test(sha256) || !existsSync(pathOf(sha256))) return undefined;
      const bytes = readFileSync(pathOf(sha256));
      return { sha256, bytes: bytes.length, ...lookInside(bytes, '') };
    },
    read: (sha256) => readFile(pathOf(sha256)),
  };
}

const refused = (message: string): AppError =>
  new AppError('invalid-input', 'files/not-kept', message, { fields: { file: message } });

/** What the bytes are, whatever their sender calls them. */
function lookInside(bytes: Uint8Array, mime: string): Omit<StoredFile, 'sha256' | 'bytes'> {
  if (Buffer.from(bytes.subarray(0, 5)).toString('latin1') === '%PDF-') return { mime: PDF, width: null, height: null };
  try {
    const { type, width, height } = imageSize(bytes);
    const known = IMAGE_MIME[type ?? ''];
    if (known && width > 0 && height > 0) return { mime: known, width, height };
  } catch {
    // Not a picture that the library knows: said below in words.
  }
  throw refused(
    `This file is no picture that can be kept${mime ? ` (${mime})` : ''}. Take a JPEG, PNG or WebP picture, or a PDF.`,
  );
}

/** On disk before anybody is told: write beside, flush, then rename. */
async function keep(path: string, bytes: Uint8Array): Promise<void> {
  if (existsSync(path)) return;
  mkdirSync(dirname(path), { recursive: true });
  const part = `${path}.part`;
  const file = await open(part, 'w');
  try {
    await file.writeFile(bytes);
    await file.sync();
  } finally {
    await file.close();
  }
  await rename(part, path);
}
