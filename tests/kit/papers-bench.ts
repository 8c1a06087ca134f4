/** Examples of a traveller and of added work: S02 of the demo data. */
import { drawCasting } from '#core/drawing/draw-casting.ts';
import type { DrawnSpot, DrawnType } from '#core/drawing/drawn-type.ts';
import type { AddedWorkPaper, TravellerPaper } from '#core/sheets/contract/papers.ts';

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
  grids: [
    {
      heading: 'Guides and stems',
      groups: [
        { title: 'Intake side', spots: valves.slice(0, 6).map(({ label }) => label) },
        { title: 'Exhaust side', spots: valves.slice(6).map(({ label }) => label) },
      ],
      rows: [
        { label: 'Guide inside, top, mm', limit: '', other: '' },
        { label: 'Guide inside, middle, mm', limit: '', other: '' },
        { label: 'Guide inside, bottom, mm', limit: '', other: '' },
        { label: 'Valve stem, mm', limit: '5.960 – 5.975 mm', other: '.2346 – .2352 in' },
      ],
    },
    {
      heading: 'Seats and valves',
      groups: [
        { title: 'Intake side', spots: valves.slice(0, 6).map(({ label }) => label) },
        { title: 'Exhaust side', spots: valves.slice(6).map(({ label }) => label) },
      ],
      rows: [
        { label: 'Margin, mm', limit: 'I at least 0.8 mm\nE at least 1.2 mm', other: 'I .031 in\nE .047 in' },
        { label: 'Seat width, mm', limit: '1.2 – 1.6 mm', other: '.047 – .063 in' },
        { label: 'Seat runout, mm', limit: '', other: '' },
        { label: 'Stem tip height, mm', limit: '', other: '' },
      ],
    },
    {
      heading: 'Surfacing',
      groups: [],
      rows: [
        { label: 'Thickness, mm', limit: 'at least 130.80 mm', other: '5.150 in', found: true, after: true },
        { label: 'Finish Ra, µm', limit: 'at most 0.80 µm', other: '31 µin', found: false, after: true },
      ],
    },
  ],
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
