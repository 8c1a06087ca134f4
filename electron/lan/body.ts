/** Reads a request's body up to a limit. */
import type { IncomingMessage } from 'node:http';
import { AppError } from '#core/kernel/errors.ts';

/** @throws AppError `invalid-input` `http/too-large` past `most` bytes; the rest is not read. */
export async function readBody(request: IncomingMessage, most: number): Promise<Buffer> {
  const parts: Buffer[] = [];
  let size = 0;
  for await (const part of request as AsyncIterable<Buffer>) {
    size += part.length;
    if (size > most) {
      throw new AppError(
        'invalid-input',
        'http/too-large',
        `This is over ${Math.round(most / 1024 / 1024)} MB. Make it smaller, then send it again.`,
      );
    }
    parts.push(part);
  }
  return Buffer.concat(parts);
}
