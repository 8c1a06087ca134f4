/**
 * Two people on one row: a command carries only the fields its person changed, each with the value seen.
 *
 * Fields nobody else touched are taken over; a field that somebody else changed meanwhile is shown with both texts and
 * nothing is written.
 */
import { z } from 'zod';

/** One changed field: what stood there when it was opened, and what shall stand there. */
export const changeOf = <S extends z.ZodType>(schema: S) =>
  z.strictObject({ seen: z.unknown(), to: schema }).optional();

export type FieldChange = Readonly<{ seen?: unknown; to: unknown }>;
export type FieldChanges = Readonly<Record<string, FieldChange | undefined>>;

/** A field where the person did not see what stands there now. */
export type FieldConflict = Readonly<{ field: string; seen: unknown; now: unknown; yours: unknown }>;

export type Merge = Readonly<{
  /** Fields to write: those whose new value differs from what stands there. */
  changed: Readonly<Record<string, unknown>>;
  conflicts: readonly FieldConflict[];
}>;

/**
 * Compare what a person changed with what stands there now.
 *
 * A field that already stands as wanted is no conflict, whoever wrote it. Empty text and null are the same.
 */
export function mergeFields(now: Readonly<Record<string, unknown>>, changes: FieldChanges): Merge {
  const changed: Record<string, unknown> = {};
  const conflicts: FieldConflict[] = [];
  for (const [field, change] of Object.entries(changes)) {
    if (change === undefined) continue;
    const current = now[field] ?? null;
    if (same(current, change.to)) continue;
    if (same(current, change.seen)) changed[field] = change.to;
    else conflicts.push({ field, seen: change.seen ?? null, now: current, yours: change.to });
  }
  return { changed, conflicts };
}

const same = (a: unknown, b: unknown): boolean => plain(a) === plain(b);
const plain = (value: unknown): string =>
  value === undefined || value === null || value === ''
    ? 'null'
    : JSON.stringify(typeof value === 'string' ? value.normalize('NFC').trim() : value);

/** A field that another person changed since the version seen and that this save leaves as it is. */
export const TakenOverSchema = z.object({
  field: z.string(),
  words: z.string(),
  value: z.unknown(),
  by: z.string(),
  at: z.string(),
});
export type TakenOver = z.output<typeof TakenOverSchema>;
