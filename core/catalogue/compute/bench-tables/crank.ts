/** Journals of a crankshaft, and big ends of a set of rods. */
import { after, type BenchTable, before, hiddenAfter } from '../bench-table.ts';

const FOUR = ['front-x', 'front-y', 'rear-x', 'rear-y'] as const;
const ROUND = ['0', '+60', '-60'] as const;

export const CRANK_TABLES: readonly BenchTable[] = [
  {
    code: 'journals',
    words: 'Journals',
    castingKind: 'crank',
    spotKind: 'journal',
    operation: 'crank-check',
    rows: [
      ...FOUR.map((point) => before('journal-place', point)),
      before('journal-size'),
      before('journal-taper'),
      before('journal-out-of-round'),
      ...FOUR.map((point) => hiddenAfter('journal-place', point)),
      after('journal-size'),
      hiddenAfter('journal-taper'),
      hiddenAfter('journal-out-of-round'),
    ],
  },
  {
    code: 'big-ends',
    words: 'Big ends',
    castingKind: 'rod_set',
    spotKind: 'rod',
    operation: null,
    rows: [
      ...ROUND.map((point) => before('big-end-place', point)),
      before('big-end-out-of-round'),
      ...ROUND.map((point) => after('big-end-place', point)),
      after('big-end-out-of-round'),
      hiddenAfter('rod-shell'),
      hiddenAfter('pin-journal'),
      hiddenAfter('rod-clearance'),
    ],
  },
  {
    code: 'rods',
    words: 'Rods',
    castingKind: 'rod_set',
    spotKind: null,
    operation: 'rod-resize',
    rows: [after('rod-big-end'), after('rod-length'), after('small-end-size')],
  },
];
