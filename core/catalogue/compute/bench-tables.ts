/** The tables of the bench, as data: a row more is one line in a file of `bench-tables`. */
import type { BenchTable } from './bench-table.ts';
import { BLOCK_TABLES } from './bench-tables/block.ts';
import { CAM_BORE_TABLES } from './bench-tables/cam-bores.ts';
import { CLEANING_TABLES } from './bench-tables/cleaning.ts';
import { DECK_TABLES } from './bench-tables/deck-height.ts';
import { EFFECT_TABLES } from './bench-tables/effects.ts';
import { FACE_TABLES } from './bench-tables/faces.ts';
import { FINISH_TABLES } from './bench-tables/finish.ts';
import { FIT_TABLES } from './bench-tables/fits.ts';
import { HEAD_FACE_TABLES } from './bench-tables/head-faces.ts';
import { LEAK_TABLES } from './bench-tables/leak-tests.ts';
import { LIFTING_TABLES } from './bench-tables/lifting.ts';
import { VALVE_TABLES } from './bench-tables/valves.ts';

/** Every bench table of the first catalogue, in the order a casting lists them. */
export const BENCH_TABLES: readonly BenchTable[] = [
  ...VALVE_TABLES,
  ...BLOCK_TABLES,
  ...DECK_TABLES,
  ...FIT_TABLES,
  ...HEAD_FACE_TABLES,
  ...CAM_BORE_TABLES,
  ...LEAK_TABLES,
  ...FINISH_TABLES,
  ...FACE_TABLES,
  ...EFFECT_TABLES,
  ...LIFTING_TABLES,
  ...CLEANING_TABLES,
];

/** Whether a table is printed and frozen by a signature; one that the shop added itself is. */
export const isOnPaper = (code: string): boolean => findBenchTable(code)?.offPaper !== true;

const quantitiesOf = (tables: readonly BenchTable[]): ReadonlySet<string> =>
  new Set(tables.flatMap((table) => table.rows.map((row) => row.quantity)));
const ON_PAPER = quantitiesOf(BENCH_TABLES.filter((table) => table.offPaper !== true));
const OFF_PAPER = quantitiesOf(BENCH_TABLES.filter((table) => table.offPaper === true));

/** The shop's own, such as the data of a lift: stands in tables kept off paper and in no other. */
export const isShopOnly = (quantity: string): boolean => OFF_PAPER.has(quantity) && !ON_PAPER.has(quantity);

/** A bench table by its code; undefined when there is none. */
export const findBenchTable = (code: string): BenchTable | undefined => BENCH_TABLES.find((it) => it.code === code);
