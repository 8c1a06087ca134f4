/** Tables of a head: its faces, chambers and cam bores. */
import { after, type BenchTable, before, hiddenAfter } from '../bench-table.ts';

export const HEAD_FACE_TABLES: readonly BenchTable[] = [
  {
    code: 'surface',
    words: 'Surfacing',
    castingKind: 'head',
    spotKind: null,
    operation: 'surface-head',
    rows: [
      before('thickness'),
      before('deck-flatness'),
      before('cam-line'),
      after('thickness'),
      after('stock-removed'),
      after('thickness-left'),
      after('deck-flatness'),
      after('finish-ra'),
      hiddenAfter('face-removed'),
    ],
  },
  {
    code: 'chambers',
    words: 'Chambers',
    castingKind: 'head',
    spotKind: 'chamber',
    operation: 'chamber-cc',
    rows: [after('chamber-volume')],
  },
  {
    code: 'cam-line',
    words: 'Cam line',
    castingKind: 'head',
    spotKind: null,
    operation: 'cam-bore-check',
    rows: [after('cam-line')],
  },
  {
    code: 'cam-bores',
    words: 'Cam bores',
    castingKind: 'head',
    spotKind: 'cam_journal',
    operation: null,
    rows: [after('cam-bore-size')],
  },
];
