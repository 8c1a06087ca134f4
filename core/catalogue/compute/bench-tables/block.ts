/** Tables of a block, and of the crankshaft and rods that run in it. */
import type { BenchTable } from '../bench-table.ts';
import { BORE_TABLES } from './bores.ts';
import { CRANK_TABLES } from './crank.ts';
import { LINER_TABLES } from './liners.ts';
import { MAIN_TABLES } from './mains.ts';

export const BLOCK_TABLES: readonly BenchTable[] = [...BORE_TABLES, ...LINER_TABLES, ...MAIN_TABLES, ...CRANK_TABLES];
