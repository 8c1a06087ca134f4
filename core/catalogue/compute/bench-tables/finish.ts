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
  ],
});

/** What the cutter should leave: for whoever sets the machine, and on no paper of a customer. */
const cutterTable = (code: string, castingKind: BenchTable['castingKind'], operation: string): BenchTable => ({
  code,
  words: 'Cutter',
  castingKind,
  spotKind: null,
  operation,
  offPaper: true,
  rows: [
    after('cutter-feed'),
    hiddenAfter('cutter-table-feed'),
    hiddenAfter('cutter-turns'),
    after('cutter-nose'),
    after('cutter-ra'),
    after('cutter-peak'),
  ],
});

export const FINISH_TABLES: readonly BenchTable[] = [
  // What a builder wants of it stands with the surfacing.
  finishTable('finish', 'head', 'surface-head', { offPaper: true }),
  finishTable('block-finish', 'block', 'deck-block'),
  cutterTable('cutter', 'head', 'surface-head'),
  cutterTable('block-cutter', 'block', 'deck-block'),
];
