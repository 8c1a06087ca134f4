/** The steps in order; the position is the version kept in `PRAGMA user_version`. */
import type { Database } from 'better-sqlite3';
import { up as first } from './0001-first.ts';
import { up as search } from './0002-search.ts';
import { up as now } from './0003-now.ts';
import { up as newestWild } from './0004-newest-wild.ts';

export type Step = (sqlite: Database) => void;

export const steps: readonly Step[] = [first, search, now, newestWild];
