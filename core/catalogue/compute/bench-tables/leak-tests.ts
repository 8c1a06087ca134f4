/** Tables of crack checks and leak tests. The result itself and the map of cracks are given on the operation. */
import { after, type BenchTable, hiddenAfter } from '../bench-table.ts';

type Kind = 'head' | 'block';

/** What hurts people at this work, as it is usually said; local codes decide. */
const PRESSURE = [
  'Plates can let go: shield them, never stand over them',
  'No more pressure than needed, relief valve set first',
  'Hot water scalds',
];
const MAGNET = [
  'Strong fields: keep pacemakers, cards and gauges away',
  'Demagnetise and wash afterwards',
  'Ultraviolet light: eye protection',
];
const DYE = ['Solvents burn and their vapour harms: air, no flame', 'Wash the dye off before assembly'];

const tablesOf = (kind: Kind): BenchTable[] => {
  const code = (it: string): string => (kind === 'head' ? it : `block-${it}`);
  const leak = (name: string, words: string, operation: string, more: Partial<BenchTable> = {}): BenchTable => ({
    code: code(name),
    words,
    castingKind: kind,
    spotKind: null,
    operation,
    ...more,
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
    // Its rows are those of the test: what stands is what was read last.
    leak('leak-retest', 'Pressure re-test', 'pressure-retest', { offPaper: true }),
  ];
};

/** A crankshaft's check opens with its journals; how it was searched for cracks stands beside them. */
const CRANK: BenchTable = {
  code: 'crank-magnet',
  words: 'Magnet check',
  castingKind: 'crank',
  spotKind: null,
  operation: null,
  notes: MAGNET,
  rows: [after('magnet-method'), after('magnet-directions')],
};

export const LEAK_TABLES: readonly BenchTable[] = [...tablesOf('head'), ...tablesOf('block'), CRANK];
