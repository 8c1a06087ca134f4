/** An example of a build sheet: S01 of the demo data. */
import type { BuildSheetPaper } from '#core/sheets/contract/papers.ts';

const s01 = {
  spots: ['1E', '1I', '2I', '2E', '3E', '3I', '4I', '4E'],
  found: ['1.518', '1.503', '1.506', '1.531', '1.529', '1.497', '1.512', '1.544'],
  shims: ['.015', '0', '0', '.030', '.030', '0', '.015', '.045'],
  final: ['1.503', '1.503', '1.506', '1.501', '1.499', '1.497', '1.497', '1.499'],
  seat: ['59.4', '59.4', '58.8', '59.8', '60.2', '60.6', '60.6', '60.2'],
  open: ['123.4', '123.4', '122.8', '123.8', '124.2', '124.6', '124.6', '124.2'],
  clearance: ['.0034', '.0025', '.0025', '.0044', '.0035', '.0026', '.0025', '.0035'],
};

export const buildSheet: Omit<BuildSheetPaper, 'head'> = {
  number: '20417',
  customer: { name: 'Annelore Fisk-Tarrow' },
  tag: { number: '41170', metal: 'iron' },
  casting: 'cylinder head, iron, LO-4, casting no. 31C-0926',
  finished: 'Tue 2 Mar 2027',
  units: 'in, lbf',
  guard: null,
  certified: null,
  tables: [
    {
      heading: 'Installed height',
      groups: [{ title: '', spots: s01.spots }],
      rows: [
        { label: 'Guide clearance', values: s01.clearance, limit: 'I at most .0040\nE at most .0050' },
        { label: 'Height, in', stage: 'found', values: s01.found, limit: 'target 1.500' },
        { label: 'Height, in', stage: 'after', again: true, values: s01.final, limit: '1.490 – 1.510', key: true },
        { label: 'Shims', values: s01.shims, limit: '' },
        { label: 'Seat load, calculated, lbf', values: s01.seat, limit: 'nominal spring', key: true },
        { label: 'Open load, calculated, lbf', values: s01.open, limit: 'nominal spring' },
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
      verdict: 'pass',
      verdictWords: 'All 8 heights pass.',
      notes: [{ label: 'Limits', words: 'casting type LO-4, not checked by a second person.' }],
    },
  ],
  facts: [
    {
      heading: 'Deck',
      rows: [
        {
          words: 'Thickness',
          small: 'limit at least 2.925 in',
          found: { text: '2.942 in', other: '74.73 mm' },
          after: { text: '2.938 in', other: '74.63 mm' },
          strong: true,
        },
        { words: 'Taken off', small: '', found: null, after: { text: '0.004 in', other: '0.10 mm' } },
        { words: 'Left above the minimum', small: '', found: null, after: { text: '0.013 in', other: '0.33 mm' } },
        {
          words: 'Deck flatness',
          small: 'limit at most 0.003 in',
          found: { text: '0.005 in', other: '0.13 mm', verdict: 'over', word: 'too much' },
          after: { text: '0.001 in', other: '0.03 mm' },
        },
      ],
      notes: [{ label: 'Limits', words: 'casting type LO-4.' }],
    },
    {
      heading: 'What the cut changes',
      rows: [
        { words: 'Chamber changes by', small: 'surfacing and sink together', found: null, after: { text: '−0.4 cc' } },
        { words: 'Compression ratio', small: '', found: { text: '6.80' }, after: { text: '6.83' } },
      ],
      notes: [{ label: 'Not known:', words: 'cam late by: sprocket pitch diameter not known.' }],
    },
  ],
  faces: [
    {
      heading: 'Deck, as found',
      sides: ['intake side', 'exhaust side'],
      columns: 5,
      rows: 3,
      points: Array.from({ length: 15 }, (_, n) => ({
        column: Math.floor(n / 3) + 1,
        row: (n % 3) + 1,
        text: String([31, 22, 30, 14, 8, 12, 3, 0, 5, 16, 9, 11, 30, 24, 31][n]),
        share: ([31, 22, 30, 14, 8, 12, 3, 0, 5, 16, 9, 11, 30, 24, 31][n] ?? 0) / 31,
        touches: n === 0 || n === 14 ? 'upper' : n === 7 ? 'lower' : null,
      })),
      scale: 'height above the lowest plane in tenths of a thou',
      lines: [{ words: 'Along the middle', text: '0.003 in, middle' }],
      said: 'Flatness 0.0031 in, pass. Two closest planes 0.0031 in, least squares 0.0034 in. Hollow: the middle is low.',
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
