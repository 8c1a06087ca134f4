/** Examples of papers of the bench: S01 and S02 of the demo data. */
import { drawCasting } from '#core/drawing/draw-casting.ts';
import type { DrawnSpot, DrawnType } from '#core/drawing/drawn-type.ts';
import type { AddedWorkPaper, BuildSheetPaper, TravellerPaper } from '#core/sheets/contract/papers.ts';

type WithoutHead<T> = Omit<T, 'head'>;

const valves: DrawnSpot[] = (['I', 'E'] as const).flatMap((side, row) =>
  [1, 2, 3].flatMap((cylinder) =>
    [1, 2].map((number) => ({
      kind: 'valve',
      label: `${cylinder}${side}${number}`,
      benchOrder: row * 6 + (cylinder - 1) * 2 + number,
      row: row + 1,
      bank: 'none' as const,
      cylinder,
      side,
    })),
  ),
);
const chambers: DrawnSpot[] = [1, 2, 3].map((cylinder) => ({
  kind: 'chamber',
  label: `C${cylinder}`,
  benchOrder: cylinder,
  row: 1,
  bank: 'none',
  cylinder,
  side: 'none',
}));

const head: DrawnType = { kind: 'head', counts: { cylinders: 3, camshafts: 2 }, spots: [...valves, ...chambers] };

/** The right head of S02 with three condition marks. */
const drawing = drawCasting(head, {
  balloons: [
    { label: '1', x: 300, y: 900 },
    { label: '2', x: 6400, y: 8600 },
    { label: '3', x: 1800, y: 5600 },
  ],
});

const operation = (name: string, units: string, note = '') => ({ name, units, note });

export const traveller: WithoutHead<TravellerPaper> = {
  tag: { number: '41235', metal: 'aluminium' },
  position: 'RIGHT',
  piece: 'head 2 of 2',
  ticket: '20455',
  customer: 'Mudlark Lane',
  promise: { day: 'THU 11 MAR', time: '16:30' },
  rush: false,
  about: 'BV-6, V6, two cams a bank. Casting no. 4B871-R.',
  drawing,
  marks: [
    { no: '1', words: 'gouge, photographed' },
    { no: '2', words: 'pitting' },
    { no: '3', words: 'heat colour' },
  ],
  spec: [
    { label: 'Stem', chosen: '6.000 mm', other: '.2362 in' },
    { label: 'Guide clearance', chosen: '0.03 – 0.06 mm', other: '.0012 – .0024' },
    { label: 'Seat', chosen: '45°, 1.2 – 1.6 mm', other: '.047 – .063' },
    { label: 'Installed height', chosen: '38.00 ± 0.25 mm', other: '1.496 in' },
    { label: 'Least thickness', chosen: '130.80 mm', other: '5.1496 in' },
    { label: 'Deck finish', chosen: 'Ra 0.8 µm or finer', other: '32 µin' },
    { label: 'From', chosen: '', other: 'casting type BV-6, not yet checked by a second person' },
  ],
  warnings: ['MLS GASKET', '8 CAM CAPS STAY WITH THIS HEAD'],
  operations: [
    operation('Disassemble head', '1', 'count 24 lock halves, 8 caps'),
    operation('Aluminium-safe wash', '1', 'wash hand confirms metal, card tag off, metal tag on'),
    operation('Check cam bores', '4', 'before any surfacing'),
    operation('Dye check', '1'),
    operation('Pressure test', '1', '40 psi, 10 min, warm'),
    operation('Guide clearance check', '12'),
    operation('Surface fire deck', '1', 'ONLY IF APPROVED. Thickness before and after'),
    operation('Seat cut', '12'),
    operation('Valve grind', '12'),
    operation('Installed height', '12', 'shims chosen on the bench screen'),
    operation('Final clean', '1', 'the last wash: none after assembly'),
    operation('Assemble head', '1', "customer's own followers, tray 41235-A"),
    operation('Vacuum test', '6', 'each port'),
    operation('Wipe, oil, wrap', '1'),
  ].map((row, index) => ({ no: row.note.startsWith('ONLY') ? `${index + 1}?` : `${index + 1}`, ...row })),
  notes: [
    { label: 'Parts', words: '12 stem seals: here. Dowel: 1 missing at arrival, ask.' },
    { label: 'Came with', words: "tray 41235-A (customer's own, keep in order)." },
  ],
  changed: [],
  changedSince: '',
  grid: {
    heading: 'Readings, front to rear as the head lies deck up. Write them here and type them row by row',
    spots: valves.map(({ label }) => label),
    rows: [
      'Guide, top',
      'Guide, middle',
      'Guide, bottom',
      'Stem',
      'Margin',
      'Seat width',
      'Seat runout',
      'Tip height',
      'Installed height',
      'Shim',
      'Height with shim',
      'Vacuum, start and 10 s',
    ],
  },
};

export const addedWork: WithoutHead<AddedWorkPaper> = {
  number: '20455-A1',
  to: { name: 'Mudlark Lane Garage Ltd', more: 'Ysolde Kerrow, order ML-7731' },
  answerBy: 'Fri 12 March, 17:00',
  agreed: '1,272.35, ceiling 1,500.00 before tax',
  tag: { number: '41235', metal: 'aluminium' },
  found:
    'The right head has a crack from exhaust seat 3E2 (cylinder 6, rear exhaust) into the water passage. It weeps at 40 psi.',
  foundMore: [
    'Found Wed 10 Mar 10:40 by Dervla Kestane in the pressure test. Two photos are kept and can be sent.',
    'The left head has passed the same test.',
  ],
  reading: { what: 'Pressure test, leak', value: 'weeps at 40 psi', limit: 'no leak, 10 min', verdict: 'fail' },
  drawing: drawCasting(head, { balloons: [{ label: 'A', x: 8700, y: 6700 }] }),
  ways: [
    {
      letter: 'a',
      title: 'Weld and re-seat',
      words: 'Weld the crack, fit a new seat, dye check, test under pressure again, check the cam line.',
      rows: [
        { label: 'Extra', value: '326.72' },
        { label: 'New total before tax', value: '1,599.07' },
        { label: 'New date', value: 'Tue 16 March, 16:30' },
      ],
      small: ['Warranty: 90 days on the weld.', 'If it weeps again we stop and ring you: 86.25 for the second test.'],
    },
    {
      letter: 'b',
      title: 'Another casting',
      words: 'You find another casting; your parts are moved across.',
      rows: [
        { label: 'Extra', value: '0.00' },
        { label: 'New total before tax', value: '1,272.35' },
        { label: 'New date', value: 'when it is here' },
      ],
      small: ['Warranty: on our work, not on the casting you bring.'],
    },
    {
      letter: 'c',
      title: 'Stop this head',
      words: 'The right head comes back as it is; the left one is finished.',
      rows: [
        { label: 'Extra', value: '-' },
        { label: 'New total before tax', value: '874.38' },
        { label: 'New date', value: 'Thu 11 March, 16:30' },
      ],
      small: ['You pay for work done on the right head only.'],
    },
    {
      letter: 'd',
      title: 'Stop everything',
      words: 'Both heads come back as they are, in their pieces.',
      rows: [
        { label: 'Extra', value: '-' },
        { label: 'To pay before tax', value: '412.29' },
        { label: 'New date', value: 'collect today' },
      ],
      small: ['You pay for work done only. The sheet will name the crack.'],
    },
  ],
  soFar: [
    { words: 'Left head: take apart, wash, dye check, pressure test, cam line', amount: '220.25' },
    { words: 'Right head: take apart, wash, dye check, pressure test, cam line', amount: '220.25' },
    { words: 'Labour discount 10 %', amount: '−44.05' },
    { words: 'Shop supplies, washing fee', amount: '15.84' },
  ],
  soFarTotal: [{ words: 'To pay if everything stops now, before tax', amount: '412.29', strong: true }],
  currency: 'USD',
  silence: 'work on both heads waits. After Friday 17:00 we ring again; storage terms of your claim ticket apply.',
  signFor: 'Mudlark Lane Garage Ltd',
};

const s01 = {
  spots: ['1E', '1I', '2I', '2E', '3E', '3I', '4I', '4E'],
  found: ['1.518', '1.503', '1.506', '1.531', '1.529', '1.497', '1.512', '1.544'],
  shims: ['.015', '0', '0', '.030', '.030', '0', '.015', '.045'],
  final: ['1.503', '1.503', '1.506', '1.501', '1.499', '1.497', '1.497', '1.499'],
  seat: ['59.4', '59.4', '58.8', '59.8', '60.2', '60.6', '60.6', '60.2'],
  open: ['123.4', '123.4', '122.8', '123.8', '124.2', '124.6', '124.6', '124.2'],
  clearance: ['.0034', '.0025', '.0025', '.0044', '.0035', '.0026', '.0025', '.0035'],
};

export const buildSheet: WithoutHead<BuildSheetPaper> = {
  number: '20417',
  customer: { name: 'Annelore Fisk-Tarrow' },
  tag: { number: '41170', metal: 'iron' },
  casting: 'cylinder head, iron, LO-4, casting no. 31C-0926',
  finished: 'Tue 2 Mar 2027',
  units: 'in, lbf',
  tables: [
    {
      heading: 'As found beside after, in the order the valves sit in the head, front to rear',
      groups: [{ title: '', spots: s01.spots }],
      rows: [
        { label: 'Guide clearance, found', values: s01.clearance, limit: 'I at most .0040 E at most .0050' },
        { label: 'Installed height, found', values: s01.found, limit: 'target 1.500' },
        { label: 'Shims', values: s01.shims, limit: '' },
        { label: 'Height with shims, after', values: s01.final, limit: '1.490 – 1.510', key: true },
        { label: 'Seat load, calculated', values: s01.seat, limit: 'nominal spring', key: true },
        { label: 'Open load, calculated', values: s01.open, limit: 'nominal spring' },
        {
          label: 'Vacuum fall in 10 s, inHg',
          values: ['1', '0', '1', '6', '0', '0', '1', '2'],
          limit: 'at most 5',
          verdicts: [null, null, null, 'over', null, null, null, null],
        },
        {
          label: 'Valve',
          values: ['reused', 'reused', 'reused', 'new', 'reused', 'reused', 'reused', 'new'],
          limit: '',
        },
      ],
      note: 'Limits from casting type LO-4, not yet checked by a second person.',
      verdict: 'pass',
      verdictWords: 'All 8 heights pass.',
    },
  ],
  facts: [
    {
      heading: 'Deck',
      rows: [
        { words: 'Thickness before', amount: '2.942' },
        { words: 'Taken off', amount: '0.004' },
        { words: 'Thickness after', amount: '2.938', strong: true },
        { words: 'Left for another cut, least allowed 2.925', amount: '0.013' },
        { words: 'Flatness after, limit 0.003', amount: '0.001' },
      ],
      note: '',
    },
    {
      heading: 'What that changes for you',
      rows: [
        { words: 'Chamber, each, smaller by about', amount: '0.4 cc' },
        { words: 'Compression, 6.80 : 1 becomes about', amount: '6.83 : 1' },
      ],
      note: 'Surfacing and valve sink together. Turn the engine by hand twice before starting.',
    },
  ],
  texts: [
    {
      heading: 'Done',
      words:
        'Hot tank, magnetic check (none found), take apart, valve grind, seat cut, spring heights, assemble, vacuum test, oil and wrap.',
    },
    {
      heading: 'Declined or not done by us',
      words: 'Lash, piston to valve, cam timing and the condition of bolts: by the engine builder.',
      named: [{ label: 'Guides measured, not renewed:', words: 'all inside limits.' }],
    },
    { heading: 'Renewed', words: '8 stem seals; valves 2E and 4E.' },
    {
      heading: 'Measured with',
      words: 'Height micrometer G03 (±0.0010, checked 12 Jan 2027), bore gauge G05 (checked 3 Feb 2027).',
    },
  ],
  signatures: [
    { label: 'Measured by', written: 'Sami Okkerbee' },
    { label: 'Signed off by', written: 'Dervla Kestane, Tue 2 Mar 15:40' },
  ],
  disclaimer:
    'Whoever builds the engine must check every fit before use. Torque figures come from the engine maker, not from us. Warranty: sheet W-3, kept with the invoice.',
};
