/** Papers: what each would show, printing one or the whole pile of a ticket, and which were printed. */
import { z } from 'zod';
import { command, query } from '../kernel/contract.ts';
import { idOf, MomentSchema, optionalWords } from '../kernel/schemas.ts';
import type { PaperName, Papers } from './contract/papers.ts';

const Layout = z.enum(['single', 'sheet']).default('sheet');
const TagStock = z.enum(['tag-5', 'tag-3', 'tag-1', 'label-3x2', 'label-4x6']);
const LabelStock = z.enum(['label-100x50', 'label-3x2', 'label-4x6']);
const ticketId = idOf<'ticket'>();
const castingId = idOf<'casting'>();

/** Which paper of which thing. */
export const PaperWish = z.discriminatedUnion('paper', [
  z.strictObject({ paper: z.literal('claim-ticket'), ticketId }),
  z.strictObject({ paper: z.literal('traveller'), castingId }),
  /** All castings of the ticket, or those named; `spares` more without a number. */
  z.strictObject({
    paper: z.literal('casting-tag'),
    ticketId,
    castings: z.array(castingId).max(200).default([]),
    stock: TagStock.default('tag-5'),
    layout: Layout,
    spares: z.int().min(0).max(20).default(0),
  }),
  z.strictObject({
    paper: z.literal('bag-tag'),
    ticketId,
    containers: z.array(idOf<'container'>()).max(300).default([]),
    stock: TagStock.default('tag-3'),
    layout: Layout,
    spares: z.int().min(0).max(20).default(0),
  }),
  z.strictObject({ paper: z.literal('estimate'), estimateId: idOf<'estimate'>() }),
  z.strictObject({ paper: z.literal('added-work'), addedWorkId: idOf<'added_work'>() }),
  z.strictObject({ paper: z.literal('build-sheet'), castingId }),
  z.strictObject({ paper: z.literal('invoice'), invoiceId: idOf<'invoice'>() }),
  z.strictObject({ paper: z.literal('receipt'), paymentId: idOf<'payment'>() }),
  z.strictObject({ paper: z.literal('release'), releaseId: idOf<'release'>() }),
  z.strictObject({
    paper: z.literal('ready-label'),
    ticketId,
    stock: LabelStock.default('label-100x50'),
    layout: Layout,
  }),
  z.strictObject({ paper: z.literal('drop-off'), ticketId: ticketId.nullable().default(null) }),
]);
export type Wish = z.output<typeof PaperWish>;

/** A paper that was drawn and kept. */
const Printed = z.object({
  documentId: idOf<'document'>(),
  paper: z.string(),
  /** Names the file under `attachments/`. */
  sha256: z.string(),
  /** "claim-ticket-20455-r1.pdf". */
  fileName: z.string(),
  revision: z.int(),
  /** For the person: "Claim ticket 20455, revision 1". */
  words: z.string(),
});

/** One row of the print list. */
const DocumentRow = Printed.extend({
  at: MomentSchema,
  by: z.string(),
  /** The last word of the printer; null when it was only drawn. */
  outcome: z.enum(['printed', 'kept_as_file', 'failed', 'handed_to_viewer']).nullable(),
  outcomeWords: z.string().nullable(),
  /** A later one of the same paper was drawn. */
  replaced: z.boolean(),
});

export const sheetsContract = {
  /** What a paper would show now, ready to print; nothing is kept. The person must be allowed to see what it holds. */
  'sheets/get-paper': query({
    may: 'castings:see',
    input: z.strictObject({ wish: PaperWish }),
    output: z.custom<Readonly<{ paper: PaperName; data: Papers[PaperName]; revision: number }>>(),
  }),
  /** Whether the traveller on the floor still says what the work is. */
  'sheets/get-traveller-state': query({
    may: 'castings:see',
    input: z.strictObject({ castingId }),
    output: z.object({
      /** Revision last printed; null when none was. */
      printed: z.int().nullable(),
      /** Revision a print would have now. */
      now: z.int(),
      stale: z.boolean(),
      /** "Paper is revision 1, now 2."; null when it is not stale. */
      words: z.string().nullable(),
    }),
  }),
  /** Draw a paper, keep the file and its row. Printing itself is the machine's; `documents/record-printing` says how it went. */
  'documents/print-paper': command({
    may: 'castings:see',
    input: z.strictObject({ wish: PaperWish }),
    output: Printed,
  }),
  /** Everything for a check-in, in the order of the pile, one spare of each tag. */
  'documents/print-set': command({
    may: 'tickets:see',
    input: z.strictObject({ ticketId }),
    output: z.object({ papers: z.array(Printed) }),
  }),
  'documents/record-printing': command({
    may: 'castings:see',
    input: z.strictObject({
      documentId: idOf<'document'>(),
      outcome: z.enum(['printed', 'kept_as_file', 'failed', 'handed_to_viewer']),
      words: optionalWords(240, 'what happened'),
    }),
    output: z.object({}),
  }),
  /** Papers of a ticket, newest first; those the person may not see are left out. */
  'documents/list-documents': query({
    may: 'castings:see',
    input: z.strictObject({ ticketId }),
    output: z.object({ documents: z.array(DocumentRow) }),
  }),
} as const;
