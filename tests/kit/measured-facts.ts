/** A casting's measuring opened for paper, from a few words. No database. */
import type { BenchRow, BenchTable } from '#core/catalogue/compute/bench-table.ts';
import type { Facts } from '#core/readings/compute/model.ts';
import { type Measured, type Measuring, openMeasured } from '#core/sheets/compute/measured.ts';
import { factsOf, valves } from './bench-facts.ts';

/** A row that is shown; after the work unless said. */
export const benchRow = (quantity: string, words: Partial<BenchRow> = {}): BenchRow => ({
  quantity,
  point: null,
  stage: 'after',
  shown: true,
  ...words,
});

/** A table of valves unless said. */
export const tableOf = (rows: readonly BenchRow[], words: Partial<BenchTable> = {}): BenchTable => ({
  code: 'trial',
  words: 'Trial',
  castingKind: 'head',
  spotKind: 'valve',
  operation: null,
  rows,
  ...words,
});

/** Two valves, 1E and 1I, and what else is said. */
export const measuredOf = (
  facts: Partial<Facts>,
  tables: readonly BenchTable[],
  words: Partial<Omit<Measuring, 'facts' | 'tables'>> = {},
): Measured =>
  openMeasured({
    facts: factsOf({ spots: valves('1E', '1I'), ...facts }),
    tables,
    redone: new Set(),
    firstSigned: null,
    names: new Map([['TV', 'Teodor Vaskelund']]),
    dayOf: (at) => at.slice(0, 10),
    ...words,
  });

/** Options of an ordinary sheet, nothing said yet. */
export const plainSheet = () => ({ certified: false, said: new Set<string>() });
