/** Main bores, their line, the bearings in them, and the cam tunnel. */
import { after, type BenchTable, before, hiddenAfter, hiddenBefore } from '../bench-table.ts';

const ROUND = ['0', '+60', '-60'] as const;

export const MAIN_TABLES: readonly BenchTable[] = [
  {
    code: 'mains',
    words: 'Main bores',
    castingKind: 'block',
    spotKind: 'main',
    operation: 'main-line-check',
    rows: [
      ...ROUND.flatMap((point) => [before('main-size', point), hiddenAfter('main-size', point)]),
      before('main-out-of-round'),
      before('main-vertical'),
      hiddenAfter('main-out-of-round'),
      hiddenAfter('main-vertical'),
      hiddenBefore('main-place'),
      hiddenBefore('main-height'),
      hiddenBefore('main-line'),
      hiddenBefore('main-step'),
      hiddenAfter('main-height'),
      hiddenAfter('main-line'),
      hiddenAfter('main-step'),
      hiddenAfter('cap-cut'),
      hiddenAfter('main-rise'),
      hiddenAfter('main-shell'),
      hiddenAfter('main-journal'),
      hiddenAfter('bearing-clearance'),
    ],
  },
  {
    code: 'bottom-end',
    words: 'Main line and end play',
    castingKind: 'block',
    spotKind: null,
    operation: null,
    rows: [
      before('line-error'),
      after('line-error'),
      after('centre-line-rise'),
      hiddenBefore('end-play'),
      after('end-play'),
      after('crank-turns'),
      hiddenAfter('cam-tunnel-error'),
      hiddenAfter('cam-end-play'),
      hiddenAfter('cam-turns'),
    ],
  },
  {
    code: 'cam-tunnel',
    words: 'Cam tunnel',
    castingKind: 'block',
    spotKind: 'cam_journal',
    operation: null,
    rows: [
      before('cam-tunnel-size'),
      after('cam-bearing-sizes'),
      after('cam-journal-size'),
      after('cam-clearance'),
      hiddenAfter('cam-place'),
      hiddenAfter('cam-height'),
      hiddenAfter('cam-tunnel-line'),
    ],
  },
];
