/**
 * Tables of what is pressed or dropped in. One table has the places across, the one behind it says how hot the casting must be
 * for all of them: it is heated once.
 */
import { after, type BenchTable, before, hiddenAfter, hiddenBefore } from '../bench-table.ts';

/** What hurts people at this work. Local codes and the makers' sheets decide. */
const HOT = [
  'Hot castings burn, 160 to 200 °C: gloves, mark them HOT',
  'Aluminium not over about 200 °C, minutes only',
  'Dry ice and nitrogen burn and suffocate: gloves, open door',
  'Pressed parts fly: eye protection',
  'Local codes decide',
];

/** Where the figures of each place are read, in one line; the whole of it stands with the heat. */
const SHORT = ['Hot, chilled and pressed parts injure: gloves, eye protection, fresh air. Local codes decide'];

type Kind = BenchTable['castingKind'];

const heatTable = (
  code: string,
  words: string,
  part: 'insert' | 'guide' | 'sleeve',
  castingKind: Kind,
  operation: string,
): BenchTable => ({
  code,
  words,
  castingKind,
  spotKind: null,
  operation,
  notes: HOT,
  rows: [
    after(`${part}-metal`),
    after(`${part}-chilled`),
    after(`${part}-heat-most`),
    hiddenAfter('room-temperature'),
    hiddenAfter('drop-in-clearance'),
    hiddenAfter('running-temperature'),
    hiddenAfter('part-temperature'),
    hiddenAfter('warm-inch'),
  ],
});

const insertFits = (code: string, castingKind: Kind): BenchTable => ({
  code,
  words: 'Seat inserts',
  castingKind,
  spotKind: 'valve',
  operation: 'seat-insert',
  notes: SHORT,
  rows: [
    before('counterbore-id'),
    before('insert-od'),
    hiddenAfter('counterbore-wanted'),
    hiddenAfter('counterbore-id'),
    after('insert-interference'),
    after('insert-heat'),
    after('insert-fit-hot'),
    after('counterbore-depth'),
    hiddenBefore('insert-oversize'),
    hiddenAfter('insert-size-off'),
    hiddenAfter('insert-tightest'),
    hiddenAfter('insert-loosest'),
    hiddenAfter('counterbore-warm'),
  ],
});

const warmTable = (code: string, castingKind: Kind): BenchTable => ({
  code,
  words: 'Measured warm',
  castingKind,
  spotKind: null,
  operation: null,
  notes: ['Sizes hold at 20 °C: let washed castings cool overnight before boring or sizing'],
  rows: [after('part-temperature'), after('warm-inch')],
});

const plugTable = (code: string, castingKind: Kind): BenchTable => ({
  code,
  words: 'Core plugs',
  castingKind,
  spotKind: null,
  operation: 'plug-fit',
  notes: ['Driven in with eye protection'],
  rows: [
    after('plug-hole'),
    after('plug-od'),
    after('plug-interference'),
    hiddenAfter('plug-tightest'),
    hiddenAfter('plug-loosest'),
  ],
});

export const FIT_TABLES: readonly BenchTable[] = [
  insertFits('insert-fits', 'head'),
  heatTable('insert-heat', 'Heat for inserts', 'insert', 'head', 'seat-insert'),
  insertFits('block-insert-fits', 'block'),
  heatTable('block-insert-heat', 'Heat for inserts', 'insert', 'block', 'seat-insert'),
  {
    code: 'guide-fits',
    words: 'Guide fits',
    castingKind: 'head',
    spotKind: 'valve',
    operation: 'guide-replace',
    notes: SHORT,
    rows: [
      before('guide-bore-in-head'),
      before('guide-od'),
      hiddenAfter('guide-hole-wanted'),
      after('guide-interference'),
      after('guide-heat'),
      after('guide-fit-hot'),
      after('guide-height'),
      hiddenAfter('guide-tightest'),
      hiddenAfter('guide-loosest'),
    ],
  },
  heatTable('guide-heat', 'Heat for guides', 'guide', 'head', 'guide-replace'),
  {
    code: 'sleeve-fits',
    words: 'Sleeve fits',
    castingKind: 'block',
    spotKind: 'cylinder',
    operation: 'dry-sleeve',
    notes: SHORT,
    rows: [
      before('sleeve-hole'),
      before('sleeve-od'),
      after('sleeve-fit'),
      hiddenAfter('sleeve-heat'),
      hiddenAfter('sleeve-fit-hot'),
      hiddenAfter('sleeve-tightest'),
      hiddenAfter('sleeve-loosest'),
    ],
  },
  heatTable('sleeve-heat', 'Heat for sleeves', 'sleeve', 'block', 'dry-sleeve'),
  plugTable('core-plugs', 'head'),
  plugTable('block-core-plugs', 'block'),
  warmTable('warm', 'head'),
  warmTable('block-warm', 'block'),
  {
    code: 'warm-bores',
    words: 'Bores measured warm',
    castingKind: 'block',
    spotKind: 'cylinder',
    operation: null,
    rows: [hiddenBefore('bore-warm'), after('bore-warm')],
  },
];
