/** Tables of crack checks and leak tests. The result itself and the map of cracks are given on the operation. */
import { after, type BenchTable, hiddenAfter } from '../bench-table.ts';

type Kind = 'head' | 'block';

/** What hurts people at this work, as it is usually said; local codes decide. */
const PRESSURE = [
  'Stored energy: plates can let go, so shield them and never stand over them',
  'no more pressure than needed, and the relief valve set before it is let in',
  'hot water scalds',
];
const MAGNET = [
  'Strong fields: keep pacemakers, cards and gauges away',
  'demagnetise and wash afterwards',
  'ultraviolet light: eye protection',
];
const DYE = ['Solvents burn and their vapour harms: air, no flame', 'wash the dye off before assembly'];

const tablesOf = (kind: Kind): BenchTable[] => {
  const code = (it: string): string => (kind === 'head' ? it : `block-${it}`);
  const leak = (name: string, words: string, operation: string): BenchTable => ({
    code: code(name),
    words,
    castingKind: kind,
    spotKind: null,
    operation,
    notes: PRESSURE,
    rows: [
      after('leak-method'),
      after('pressure-held'),
      after('water-temperature'),
      hiddenAfter('leak-soak'),
      after('leak-minutes'),
      after('pressure-end'),
      after('pressure-fall'),
      hiddenAfter('relief-valve'),
      after('leak-places'),
    ],
  });
  return [
    {
      code: code('crack-magnet'),
      words: 'Magnet check',
      castingKind: kind,
      spotKind: null,
      operation: 'mag-particle-check',
      notes: MAGNET,
      rows: [after('magnet-method'), after('magnet-directions')],
    },
    {
      code: code('crack-dye'),
      words: 'Dye check',
      castingKind: kind,
      spotKind: null,
      operation: 'penetrant-check',
      notes: DYE,
      rows: [after('dye-method'), after('dye-dwell'), hiddenAfter('dye-temperature')],
    },
    leak('leak-test', 'Pressure test', 'pressure-test'),
    leak('leak-retest', 'Pressure re-test', 'pressure-retest'),
  ];
};

export const LEAK_TABLES: readonly BenchTable[] = [...tablesOf('head'), ...tablesOf('block')];
