/** What may be said of a figure besides its verdict. Types only. */
import type { Look } from '../look.ts';

/** A line of the list of what to do, and how, in this order. */
export type Doing = Readonly<{ words: string; steps: readonly string[] }>;

export type Steps = Readonly<{
  /** Said once for a group of places: the figure is the same at all of them. */
  once?: true;
  /** What to try when the figure lies above its upper limit, in this order. */
  over?: readonly string[];
  /** What to try when it lies below its lower limit. */
  under?: readonly string[];
  /** A reason to look again at a figure that nothing judges; null when it looks right. Warns and never refuses. */
  doubt?: (value: number, look: Look) => Doing | null;
}>;
