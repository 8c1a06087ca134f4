/** Examples of papers of the counter: S02 of the demo data. */
import type { ClaimTicketPaper, DropOffPaper, EstimatePaper } from '#core/sheets/contract/papers.ts';

type WithoutHead<T> = Omit<T, 'head'>;

const each = (words: string, amount: string) => [
  { words: `${words}, left head`, amount },
  { words: `${words}, right head`, amount },
];

const lines = [
  { words: 'Valve job, 12 valves, both heads', units: '2', price: '415.00', amount: '830.00' },
  { words: 'Dye check for cracks', units: '2', price: '46.00', amount: '92.00' },
  { words: 'Pressure test for cracks', units: '2', price: '86.25', amount: '172.50' },
  { words: 'Check cam line for straightness', units: '2', price: '25.00', amount: '50.00' },
  { words: 'Flatten gasket face', units: '2', price: '80.50', amount: '161.00' },
  { words: 'Stem seals, new', units: '24', price: '1.85', amount: '44.40' },
  { words: 'Labour discount 10 %', amount: '−130.55' },
  { words: 'Shop supplies, washing fee', amount: '53.00' },
];

const totals = [
  { words: 'Before tax', amount: '1,272.35' },
  { words: 'Marren sales tax 7 % on parts, 44.40', amount: '3.11' },
  { words: 'Estimate with tax, good until Thu 8 Apr', amount: '1,275.46', strong: true },
];

const promise = { when: 'Thursday 11 March, 16:30', condition: 'if no cracks are found' };

export const claimTicket: WithoutHead<ClaimTicketPaper> = {
  number: '20455',
  leftBy: { name: 'Mudlark Lane Garage Ltd', more: 'Ysolde Kerrow, 555-0115' },
  orderNumber: 'ML-7731',
  takenIn: { when: 'Tue 9 Mar 2027 08:10', by: 'Teodor Vaskelund' },
  account: 'net 30',
  castings: [
    {
      tag: { number: '41234', metal: 'aluminium' },
      words: 'Cylinder head, left',
      piece: '1 of 2',
      lines: ['BV-6, V6, two cams a bank, 12 valves', 'casting\u00a0no.\u00a04B?71-L'],
      came: '12 valves, 12 springs, 12 retainers, 24 lock halves, 8 cam caps bolted in place, 2 dowels, 3 plugs',
      short: [],
      conditions: [{ no: '', words: 'Plug hole 3: thread stripped (photo).' }],
    },
    {
      tag: { number: '41235', metal: 'aluminium' },
      words: 'Cylinder head, right',
      piece: '2 of 2',
      lines: ['BV-6, V6, two cams a bank, 12 valves', 'casting\u00a0no.\u00a04B871-R'],
      came: '12 valves, 12 springs, 12 retainers, 24 lock halves, 8 cam caps bolted in place',
      short: ['1 dowel of 2', '2 plugs of 3'],
      conditions: [
        { no: '1', words: 'Gouge at deck corner, 30 mm from edge, seen before unpacking.' },
        { no: '2', words: 'Pitting at a water port.' },
        { no: '3', words: 'Heat colour, chamber 1. (4 photos)' },
      ],
    },
  ],
  containers: [
    {
      numbers: ['41234-A', '41235-A'],
      words: '2 trays, your own',
      contents: '12 followers and 12 adjusters in each',
      condition: '',
    },
  ],
  asked: lines,
  currency: 'USD',
  totals,
  askedNotes: ['If a plug thread has to be repaired: 32.00 each. We ring first.'],
  promise,
  ceiling: { amount: '1,500.00', basis: 'before tax' },
  oldParts: 'not wanted',
  contact: 'Ysolde Kerrow, 555-0115',
  deposit: 'none',
  said: 'overheated while towing a boat. Multi-layer steel gaskets will be used.',
  notes: [
    {
      label: 'A valve job is',
      words: 'take apart, wash, check guides, grind valves, cut seats, set spring heights, assemble, vacuum test.',
    },
    { label: 'It is not', words: 'new guides, new seats, new springs or new valves: we ring before any of these.' },
    {
      label: 'If a head cannot be saved',
      words: 'you still owe about 131.75 for it: taking apart, washing, crack checks.',
    },
    {
      label: 'Your own marks',
      words:
        'paint L = tag 41234, paint R = tag 41235. Washing takes paint off; the tags keep it. Order of your trays is kept.',
    },
  ],
  terms:
    'Our care ends when the pieces are counted out and signed for. Storage is charged from 30 days after the later of ready and told. Terms and warranty: sheet W-3, given today.',
  signature: { label: 'Signed, for Mudlark Lane Garage Ltd. I have read the condition notes above.' },
};

export const estimate: WithoutHead<EstimatePaper> = {
  number: '20455-E1',
  ticket: '20455',
  to: { name: 'Mudlark Lane Garage Ltd', more: 'Ysolde Kerrow' },
  orderNumber: 'ML-7731',
  made: 'Tue 9 Mar 2027',
  validUntil: 'Thu 8 Apr 2027',
  groups: [
    {
      tag: { number: '41234', metal: 'aluminium' },
      words: 'Cylinder head, left, aluminium, BV-6',
      lines: [
        { words: 'Valve job, 12 valves', units: '1', price: '415.00', amount: '415.00' },
        ...each('Dye check for cracks', '46.00').slice(0, 1),
        ...each('Pressure test for cracks', '86.25').slice(0, 1),
        ...each('Check cam line for straightness', '25.00').slice(0, 1),
        ...each('Flatten gasket face', '80.50').slice(0, 1),
      ],
    },
    {
      tag: { number: '41235', metal: 'aluminium' },
      words: 'Cylinder head, right, aluminium, BV-6',
      lines: [
        { words: 'Valve job, 12 valves', units: '1', price: '415.00', amount: '415.00' },
        ...each('Dye check for cracks', '46.00').slice(1),
        ...each('Pressure test for cracks', '86.25').slice(1),
        ...each('Check cam line for straightness', '25.00').slice(1),
        ...each('Flatten gasket face', '80.50').slice(1),
      ],
    },
    { words: 'Parts', lines: [{ words: 'Stem seals, new', units: '24', price: '1.85', amount: '44.40' }] },
  ],
  currency: 'USD',
  totals: [
    { words: 'Labour', amount: '1,305.50' },
    { words: 'Labour discount 10 %', amount: '−130.55' },
    { words: 'Shop supplies', amount: '40.00' },
    { words: 'Washing fee', amount: '13.00' },
    { words: 'Parts', amount: '44.40' },
    { words: 'Before tax', amount: '1,272.35' },
    { words: 'Marren sales tax 7 % on 44.40', amount: '3.11' },
    { words: 'Total USD', amount: '1,275.46', strong: true },
  ],
  promise,
  ceiling: 'Agreed already: up to 1,500.00 before tax without a call.',
  notes: claimTicket.notes.slice(0, 3),
  signFor: 'Mudlark Lane Garage Ltd',
};

export const dropOff: WithoutHead<DropOffPaper> = {
  number: '',
  customer: '',
  before: [
    { label: 'Take off', words: 'manifolds, sensors, glow plugs and spark plugs, housings. Drain water and oil.' },
    {
      label: 'Keep in order',
      words: 'followers, shims and caps: numbered holes in a board, or one bag for each place.',
    },
    { label: 'Bring', words: 'all caps with their bolts, and the head bolts if they are to be checked.' },
    { label: 'Do not', words: 'clean the gasket face with an abrasive disc: it cuts hollows that cannot be seen.' },
    { label: 'Lifting', words: 'anything over 25 kg: two people or our hoist. Ask at the counter.' },
  ],
  questions: [
    'Which gasket will be used, and how thick is it',
    'Cam or valve lift, if it is not the original',
    'Overheated, run without water, frozen',
    'Machined before: what and when',
    'What it is used for (road, boat, farm, race)',
    'What is wrong, in your words',
    'Old parts back: yes or no',
    'Up to which amount without a call',
  ],
  terms: 'We count and look at everything with you at the counter, and you get a claim ticket for it.',
};
