/** Tables of the bores a camshaft runs in. */
import { after, type BenchTable, hiddenAfter, hiddenBefore } from '../bench-table.ts';

const CAPS = 'Caps on, in their places, and torqued with the final fasteners before anything is read';

export const CAM_BORE_TABLES: readonly BenchTable[] = [
  {
    code: 'cam-bores',
    words: 'Cam bores',
    castingKind: 'head',
    spotKind: 'cam_journal',
    operation: 'cam-bore-check',
    notes: [CAPS],
    rows: [
      hiddenBefore('cam-line-at'),
      after('cam-line-at'),
      hiddenAfter('cam-journal-place'),
      after('cam-line-here'),
      after('cam-line-off'),
      hiddenBefore('cam-bore-size'),
      after('cam-bore-size'),
      hiddenAfter('cam-bore-across'),
      hiddenAfter('cam-bore-round'),
      hiddenAfter('cam-journal-size'),
      hiddenAfter('cam-bore-clearance'),
    ],
  },
  {
    code: 'cam-line',
    words: 'Cam line',
    castingKind: 'head',
    spotKind: null,
    operation: 'cam-bore-check',
    notes: [CAPS],
    rows: [hiddenBefore('cam-line'), after('cam-line')],
  },
  {
    code: 'cam-bores-honed',
    words: 'Cam bores, honed',
    castingKind: 'head',
    spotKind: 'cam_journal',
    operation: 'cam-bore-hone',
    // Its rows stand in the table of the check.
    offPaper: true,
    notes: [CAPS],
    rows: [
      after('cam-bore-size'),
      after('cam-bore-across'),
      after('cam-bore-round'),
      after('cam-line-at'),
      after('cam-line-here'),
      after('cam-line-off'),
      hiddenAfter('cam-journal-size'),
      hiddenAfter('cam-bore-clearance'),
    ],
  },
];
