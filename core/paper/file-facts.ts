/** Facts a paper carries in its own file, so that a later revision can say what changed. */

const KEY = 'BenchtagFacts';

/** For the information dictionary of a PDF: plain letters only, so that it is written as it stands. */
export const factsEntry = (facts: Readonly<Record<string, string>>): Readonly<Record<string, string>> => ({
  [KEY]: Buffer.from(JSON.stringify(facts), 'utf8').toString('base64'),
});

/** The facts of a file, or undefined when it carries none. The entry refers to an object of its own. */
export function factsOfFile(bytes: Uint8Array): Record<string, string> | undefined {
  const text = Buffer.from(bytes).toString('latin1');
  const object = new RegExp(`/${KEY} (\\d+) 0 R`).exec(text)?.[1];
  const found = object && new RegExp(`\\n${object} 0 obj\\s*\\(([A-Za-z0-9+/=]+)\\)`).exec(text)?.[1];
  return found ? (JSON.parse(Buffer.from(found, 'base64').toString('utf8')) as Record<string, string>) : undefined;
}
