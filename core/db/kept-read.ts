/** Reads of the catalogue and the price list: the same for every ticket, and read by nearly every page. */
import type { ReadDb } from './query.ts';

type Kept<T> = Readonly<{ at: string; value: T }>;

/**
 * Read once and keep it until anything at all is written to the file, by this program or another one. A command always reads
 * anew: what it wrote may still be undone.
 *
 * @param read its outcome is shared between requests, so nobody may change it
 */
export function keptRead<T>(read: (db: ReadDb) => T): (db: ReadDb) => T {
  const byConnection = new WeakMap<object, Kept<T>>();
  return (db) => {
    const moment = db.unwritten();
    if (!moment) return read(db);
    const known = byConnection.get(moment.connection);
    if (known?.at === moment.at) return known.value;
    const value = read(db);
    byConnection.set(moment.connection, { at: moment.at, value });
    return value;
  };
}
