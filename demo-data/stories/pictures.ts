/** Pictures of the practice shop: drawn ones that stand for photographs. */
import { readFileSync } from 'node:fs';

/** The picture for a kind of casting, ready to be sent with a command. */
export function readPicture(kind: string): { base64: string; mime: string } {
  const name = kind.includes('block') ? 'block' : 'head';
  return {
    base64: readFileSync(new URL(`../pictures/${name}.jpg`, import.meta.url)).toString('base64'),
    mime: 'image/jpeg',
  };
}
