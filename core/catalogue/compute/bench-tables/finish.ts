/** Tables of the finish of a face. */
import { after, type BenchTable, hiddenAfter } from '../bench-table.ts';

const finishTable = (
  code: string,
  castingKind: BenchTable['castingKind'],
  operation: string,
  more: Partial<BenchTable> = {},
): BenchTable => ({
  code,
  words: 'Finish',
  castingKind,
  spotKind: null,
  operation,
  ...more,
  notes: ['Too smooth is as wrong as too rough: the gasket maker’s figure goes first'],
  rows: [
    after('gasket-kind'),
    after('finish-ra'),
    after('finish-card'),
    hiddenAfter('finish-rz'),
    hiddenAfter('finish-rz-low'),
    hiddenAfter('finish-rz-high'),
    hiddenAfter('finish-expected'),
    after('finish-cut-off'),
    after('finish-evaluation'),
    hiddenAfter('cutter-feed'),
    hiddenAfter('cutter-table-feed'),
    hiddenAfter('cutter-turns'),
    hiddenAfter('cutter-nose'),
    hiddenAfter('cutter-ra'),
    hiddenAfter('cutter-peak'),
  ],
});

export const FINISH_TABLES: readonly BenchTable[] = [
  // What a builder wants of it stands with the surfacing.
  finishTable('finish', 'head', 'surface-head', { offPaper: true }),
  finishTable('block-finish', 'block', 'deck-block'),
];
