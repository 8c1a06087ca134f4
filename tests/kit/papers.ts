/** One example of every paper, in the invented world of the practice shop. Figures of S01 and S02 of the demo data. */
import type { PaperHead, Papers } from '#core/sheets/contract/papers.ts';
import { addedWork, traveller } from './papers-bench.ts';
import { buildSheet } from './papers-build-sheet.ts';
import { claimTicket, dropOff, estimate } from './papers-desk.ts';
import { invoice, readyLabels, receipt, release } from './papers-door.ts';
import { bagTags, castingTags } from './papers-tags.ts';

/** The head of an example paper. */
export const havePaperHead = (changes: Partial<PaperHead> = {}): PaperHead => ({
  paper: 'letter',
  shop: {
    name: 'Cinder Quay Head & Block',
    line: '7 Cinder Quay, Quillmouth, Marren QM-0417. 555-0100. Mon to Fri 07:30 – 17:00, Sat 08:00 – 12:00',
  },
  revision: 'revision 1',
  printed: 'Tue 9 Mar 2027 08:31, Teodor Vaskelund',
  printedAt: '2027-03-09T13:31:00.000Z',
  practice: false,
  ...changes,
});

type Examples = { readonly [N in keyof Papers]: Papers[N] };

/** Every paper, with the head given. */
export const havePapers = (head: PaperHead): Examples => ({
  'claim-ticket': { ...claimTicket, head },
  traveller: { ...traveller, head },
  'casting-tag': { ...castingTags, head },
  'bag-tag': { ...bagTags, head },
  estimate: { ...estimate, head },
  'added-work': { ...addedWork, head },
  'build-sheet': { ...buildSheet, head },
  invoice: { ...invoice, head },
  receipt: { ...receipt, head },
  release: { ...release, head },
  'ready-label': { ...readyLabels, head },
  'drop-off': { ...dropOff, head },
});
