/** Wet liners: the ledge they hang on, and how far they stand. */
import { after, type BenchTable, before, hiddenAfter, hiddenBefore } from '../bench-table.ts';

const ROUND = ['front', 'rear', 'left', 'right'] as const;

export const LINER_TABLES: readonly BenchTable[] = [
  {
    code: 'liners',
    words: 'Liners',
    castingKind: 'block',
    spotKind: 'cylinder',
    operation: 'liner-counterbore',
    rows: [
      ...ROUND.map((point) => hiddenBefore('ledge-place', point)),
      before('counterbore-ledge'),
      hiddenBefore('ledge-level'),
      before('liner-flange'),
      hiddenBefore('liner-shim'),
      before('liner-would-stand'),
      hiddenAfter('counterbore-ledge'),
      hiddenAfter('liner-would-stand'),
      ...ROUND.map((point) => after('liner-place', point)),
      after('liner-protrusion'),
      hiddenAfter('liner-level'),
      after('liner-spread'),
    ],
  },
];
