/** The figures of the stories, as the practice files give them. */
import { readDemo } from '../read-file.ts';

type Shims = Readonly<{
  valves: readonly Readonly<{
    valve: string;
    measured: string;
    shims: readonly string[];
    final: string;
    verdict: string;
  }>[];
  unit: string;
}>;

export type ExpectedStory = Readonly<{
  ticket: string;
  estimate?: Readonly<{ total: string }>;
  invoice?: Readonly<{ total: string }>;
  shims?: Shims;
  shimsLeft?: Shims;
  shimsRight?: Shims;
  guides?: readonly Readonly<{ valve: string; guideWorst: string; stem: string }>[];
}>;

/** @throws Error when the file has no such story */
export function expectedOf(key: string): ExpectedStory {
  const found = readDemo<{ stories: Record<string, ExpectedStory> }>('expected').stories[key];
  if (!found) throw new Error(`expected.json has no ${key}`);
  return found;
}
