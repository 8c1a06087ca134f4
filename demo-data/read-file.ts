/** Reads a JSON file of this folder. */
import { readFileSync } from 'node:fs';

/** Parsed content; the caller says its shape, the commands check it. */
export const readDemo = <T>(name: string): T =>
  JSON.parse(readFileSync(new URL(`./${name}.json`, import.meta.url), 'utf8')) as T;
