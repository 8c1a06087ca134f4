/** Runs in a thread: makes the practice shop in a folder. */
import { workerData } from 'node:worker_threads';
import { makePracticeShop } from '#demo-data/practice-shop.ts';

await makePracticeShop((workerData as Readonly<{ folder: string }>).folder);
