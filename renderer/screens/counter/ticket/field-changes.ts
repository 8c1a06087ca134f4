/** Which fields a person changed, each with what stood there when the form was opened; and where two people met. */
import type { RequestRefused } from '../../../client/request-refused.ts';

const same = (a: unknown, b: unknown): boolean => (a || null) === (b || null);

/** Empty text counts as nothing, so that a field wiped clean is sent as null and an untouched empty one not at all. */
export function changesOf<T extends object>(seen: T, typed: T): { [K in keyof T]?: { seen: unknown; to: T[K] } } {
  const changed: { [K in keyof T]?: { seen: unknown; to: T[K] } } = {};
  for (const key of Object.keys(typed) as (keyof T)[]) {
    if (same(seen[key], typed[key])) continue;
    changed[key] = { seen: seen[key], to: (typed[key] === '' ? null : typed[key]) as T[typeof key] };
  }
  return changed;
}

/** A field two people changed: what stands there now and who wrote it, and what this person typed. */
export type Conflict = Readonly<{ field: string; words: string; now: unknown; yours: unknown; by: string }>;

/** The fields a refusal is about; none for any other refusal. */
export function conflictsOf(error: RequestRefused | null): readonly Conflict[] {
  const told = error?.reply.facts?.conflicts;
  return Array.isArray(told) ? (told as Conflict[]) : [];
}
