/** Examples of papers of the last day: S01 of the demo data. */
import type { InvoicePaper, ReadyLabelPaper, ReceiptPaper, ReleasePaper } from '#core/sheets/contract/papers.ts';

type WithoutHead<T> = Omit<T, 'head'>;

const tag = { number: '41170', metal: 'iron' } as const;
const casting = 'Cylinder head, iron, LO-4, casting no. 31C-0926';

export const invoice: WithoutHead<InvoicePaper> = {
  number: '7004',
  to: { name: 'Annelore Fisk-Tarrow', lines: ['3 Netmender Row', 'Quillmouth, Marren'] },
  facts: [
    { label: 'Invoice date', words: 'Tue 2 Mar 2027' },
    { label: 'Due', words: 'on receipt' },
    { label: 'Ticket', words: '20417' },
    { label: 'Your order no.', words: '' },
  ],
  groups: [
    {
      tag,
      words: casting,
      column: 'Labour',
      lines: [
        { words: 'Valve job, 8 valves', units: '1', price: '295.00', amount: '295.00' },
        { words: 'Magnetic crack check', units: '1', price: '45.00', amount: '45.00' },
      ],
      total: { words: 'Labour', amount: '340.00' },
    },
    {
      tag,
      words: casting,
      column: 'Parts',
      lines: [
        { words: 'Stem seals, new', units: '8', price: '1.85', amount: '14.80' },
        { words: 'Spring shims, new', units: '6', price: '0.90', amount: '5.40' },
      ],
      total: { words: 'Parts', amount: '20.20' },
    },
    {
      words: '',
      column: 'Supplies and fees',
      lines: [
        { words: 'Shop supplies', units: '4 %', price: '340.00', amount: '13.60' },
        { words: 'Washing fee', units: '1', price: '6.50', amount: '6.50' },
      ],
    },
  ],
  currency: 'USD',
  totals: [
    { words: 'Before tax', amount: '380.30' },
    { words: 'Marren sales tax 7 % on 20.20', amount: '1.41' },
    { words: 'Total', amount: '381.71', strong: true },
    { words: 'Deposit applied', amount: '−100.00' },
  ],
  toPay: '281.71',
  notes: [
    { label: 'Approved extra:', words: 'none.' },
    { label: 'Payments:', words: 'deposit 100.00, cash, receipt R101, Tue 2 Mar 07:52.' },
    {
      label: 'Warranty:',
      words: 'sheet W-3. Storage from 30 days after the ready call. Parts are new where it says new.',
    },
  ],
  pieces: '2 pieces received',
};

export const receipt: WithoutHead<ReceiptPaper> = {
  number: 'R102',
  from: { name: 'Annelore Fisk-Tarrow' },
  when: 'Tue 2 Mar 2027 16:40',
  how: 'card, slip 0071',
  by: 'Teodor Vaskelund',
  amount: '281.71',
  currency: 'USD',
  lines: [{ words: 'Invoice 7004, Tue 2 Mar 2027', amount: '281.71' }],
  totals: [
    { words: 'Invoice 7004', amount: '381.71' },
    { words: 'Paid before', amount: '−100.00' },
    { words: 'This payment', amount: '−281.71' },
    { words: 'Left to pay', amount: '0.00', strong: true },
  ],
  note: 'Ticket 20417. A deposit is held until it is applied to an invoice or given back.',
};

export const release: WithoutHead<ReleasePaper> = {
  number: '20417-1',
  customer: { name: 'Annelore Fisk-Tarrow' },
  ticket: '20417',
  when: 'Tue 2 Mar 2027 16:45',
  takenBy: 'Annelore Fisk-Tarrow',
  proof: 'claim ticket',
  by: 'Teodor Vaskelund',
  items: [
    { tag, number: '41170', words: casting, contents: 'assembled, oiled and wrapped; 24 kg', count: '1' },
    { number: '41170-B', words: 'bag, OLD - RETURN', contents: 'stem seals 8, valves 2', count: '10' },
  ],
  total: '2 pieces, all out',
  staying: [],
  money: 'PAID: INVOICE 7004, NOTHING LEFT TO PAY',
  notes: [{ label: 'Old parts', words: 'asked back and handed back in bag 41170-B.' }],
  care: 'Our care ends here. The finished head is oiled and wrapped: wash it before you build, and keep the gasket face covered.',
  signFor: 'Annelore Fisk-Tarrow',
};

export const readyLabels: WithoutHead<ReadyLabelPaper> = {
  stock: 'label-100x50',
  layout: 'single',
  labels: [
    {
      kind: 'casting',
      number: '41170',
      metal: 'iron',
      ticket: '20417',
      customer: 'A. Fisk-Tarrow',
      place: 'D-4-6',
      piece: '1 of 2',
      weight: '24 kg, two people',
    },
    {
      kind: 'container',
      number: '41170-B',
      ticket: '20417',
      customer: 'A. Fisk-Tarrow',
      place: 'D-4-6',
      piece: '2 of 2',
      weight: '',
    },
  ],
};
