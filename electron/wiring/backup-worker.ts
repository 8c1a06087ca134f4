/** Runs in a thread: copies the database with VACUUM INTO from its own read-only connection and proves the copy. */
import { parentPort, workerData } from 'node:worker_threads';
import { copyAndCheck } from '#core/db/copy.ts';

const { from, to } = workerData as Readonly<{ from: string; to: string }>;
parentPort?.postMessage(copyAndCheck(from, to));
