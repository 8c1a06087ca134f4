/** Tables of a head: its faces, chambers and cam bores. */
import { after, type BenchTable, before, hiddenAfter, hiddenBefore } from '../bench-table.ts';

export const HEAD_FACE_TABLES: readonly BenchTable[] = [
  {
    code: 'surface',
    words: 'Surfacing',
    castingKind: 'head',
    spotKind: null,
    operation: 'surface-head',
    rows: [
      before('thickness'),
      hiddenBefore('earlier-removal'),
      before('deck-flatness'),
      hiddenBefore('deck-along'),
      hiddenBefore('deck-across'),
      hiddenBefore('deck-span'),
      hiddenBefore('deck-pit'),
      hiddenBefore('deck-cut-best'),
      before('cam-line'),
      after('thickness'),
      after('stock-removed'),
      after('thickness-left'),
      hiddenAfter('total-removed'),
      after('deck-flatness'),
      hiddenAfter('deck-along'),
      hiddenAfter('deck-across'),
      hiddenAfter('deck-span'),
      after('finish-ra'),
      hiddenAfter('finish-rz'),
      hiddenAfter('gasket-kind'),
      hiddenAfter('face-removed'),
    ],
  },
];
