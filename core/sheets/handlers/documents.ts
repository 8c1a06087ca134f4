/** Draws papers and keeps them; says which were printed and how it went. */

import type { WriteDb } from '../../db/query.ts';
import type { Handlers, PrepareCtx } from '../../host/implement.ts';
import type { StoredFile } from '../../host/services.ts';
import type { Moment } from '../../kernel/days.ts';
import { notFound } from '../../kernel/errors.ts';
import type { DocumentId, TicketId } from '../../kernel/ids.ts';
import { factsOfFile } from '../../paper/file-facts.ts';
import { documentWords, fileNameOf, PAPERS, travellerFacts } from '../compute/papers.ts';
import { changesBetween } from '../compute/words.ts';
import type { PaperName } from '../contract/papers.ts';
import type { sheetsContract, Wish } from '../contract.ts';
import { findDocument, insertDocument, insertPrinting, listDocuments } from '../store/documents.ts';
import { fillFiles } from '../store/files.ts';
import { type Ready, readyPaper, wholePaper } from './papers.ts';

type Drawn = Readonly<{ ready: Ready; file: StoredFile }>;

/** The slow part: gather at one moment of the file, draw in the drawing thread, keep the bytes. */
async function draw(wish: Wish, ctx: PrepareCtx): Promise<Drawn> {
  const ready = ctx.read((query) => readyPaper(query, wish));
  const { files } = ctx.services;
  const whole = await fillFiles(await withChanges(ready, ctx), (sha256) => files.read(sha256));
  const bytes = await ctx.services.draw(ready.gathered.paper, whole);
  return { ready, file: await files.put(bytes, 'application/pdf') };
}

/** A traveller carries its own facts, and a later revision says what changed since the one before. */
async function withChanges(ready: Ready, ctx: PrepareCtx): Promise<unknown> {
  const whole = wholePaper(ready);
  if (ready.gathered.paper !== 'traveller') return whole;
  const facts = travellerFacts(ready.gathered.data);
  const withFacts = { ...whole, head: { ...whole.head, facts } };
  if (ready.last === null || ready.last.revision === ready.revision) return withFacts;
  const before = factsOfFile(await ctx.services.files.read(ready.last.sha256));
  const changed = before === undefined ? [] : changesBetween(before, facts);
  return { ...withFacts, changed, changedSince: `revision ${ready.last.revision}` };
}

/** The quick part: one row for the file, one for the paper. */
function keep(db: WriteDb, { ready, file }: Drawn) {
  const { gathered, revision, digest } = ready;
  const { paper, number, subject, ticket } = gathered;
  const fileName = fileNameOf(paper, number, revision);
  const documentId = insertDocument(db, { kind: paper, subject, ticket, revision, fileName, digest, file });
  return { documentId, paper, sha256: file.sha256, fileName, revision, words: documentWords(paper, number, revision) };
}

const activityOf = (printed: ReturnType<typeof keep>, ticket: TicketId | null) => ({
  subject: ['document', printed.documentId] as const,
  ticket,
  words: `Made for printing: ${printed.words}`,
});

/** Papers of a check-in in the order of the pile. */
function pileOf(ticketId: TicketId, castings: readonly number[], hasContainers: boolean): Wish[] {
  return [
    { paper: 'claim-ticket', ticketId },
    ...castings.map((castingId) => ({ paper: 'traveller' as const, castingId: castingId as never })),
    ...(castings.length === 0
      ? []
      : [
          {
            paper: 'casting-tag' as const,
            ticketId,
            castings: [],
            stock: 'tag-5' as const,
            layout: 'sheet' as const,
            spares: 1,
          },
        ]),
    ...(hasContainers
      ? [
          {
            paper: 'bag-tag' as const,
            ticketId,
            containers: [],
            stock: 'tag-3' as const,
            layout: 'sheet' as const,
            spares: 1,
          },
        ]
      : []),
  ];
}

export const documentHandlers: Pick<
  Handlers<typeof sheetsContract>,
  'documents/print-paper' | 'documents/print-set' | 'documents/record-printing' | 'documents/list-documents'
> = {
  'documents/print-paper': {
    prepare: ({ wish }, ctx) => draw(wish, ctx),
    run(_input, { db }, drawn: Drawn) {
      const { ticket } = drawn.ready.gathered;
      const printed = keep(db, drawn);
      return { output: printed, activity: [activityOf(printed, ticket)], touched: ticket === null ? [] : [ticket] };
    },
  },
  'documents/print-set': {
    async prepare({ ticketId }, ctx) {
      const pile = ctx.read(({ db }) => {
        const castings = db.all(
          db.q
            .selectFrom('casting')
            .select('id')
            .where('ticket_id', '=', ticketId)
            .orderBy('position_in_ticket')
            .orderBy('id'),
        );
        const container = db.one(db.q.selectFrom('container').select('id').where('ticket_id', '=', ticketId).limit(1));
        return pileOf(
          ticketId,
          castings.map(({ id }) => id),
          container !== undefined,
        );
      });
      const drawn: Drawn[] = [];
      for (const wish of pile) drawn.push(await draw(wish, ctx));
      return drawn;
    },
    run({ ticketId }, { db }, drawn: readonly Drawn[]) {
      const papers = drawn.map((one) => keep(db, one));
      const [first, ...more] = papers.map((printed) => activityOf(printed, ticketId));
      if (!first) throw new RangeError('a pile has at least the claim ticket');
      return { output: { papers }, activity: [first, ...more], touched: [ticketId] };
    },
  },
  'documents/record-printing': {
    run({ documentId, outcome, words }, { db }) {
      const document = findDocument(db, documentId);
      if (!document) throw notFound('documents/no-such-document', 'This paper');
      insertPrinting(db, documentId, outcome, words);
      const said = {
        printed: 'Printed',
        kept_as_file: 'Kept as a file',
        failed: 'Not printed',
        handed_to_viewer: 'Opened in the viewer',
      }[outcome];
      return {
        output: {},
        activity: [
          {
            subject: ['document', documentId],
            ticket: document.ticket_id,
            words: `${said}: ${document.file_name}${words === null ? '' : `, ${words}`}`,
          },
        ],
        touched: document.ticket_id === null ? [] : [document.ticket_id],
      };
    },
  },
  'documents/list-documents': {
    run({ ticketId }, { db, session }) {
      const rows = listDocuments(db, ticketId).filter(({ kind }) => session.may.has(PAPERS[kind].may));
      const newest = new Map<string, DocumentId>();
      for (const row of rows.toReversed()) newest.set(`${row.kind}|${row.subject_table}|${row.subject_id}`, row.id);
      return {
        documents: rows.map((row) => ({
          documentId: row.id,
          paper: row.kind,
          sha256: row.sha256,
          fileName: row.file_name,
          revision: row.revision,
          words: documentWords(row.kind, numberIn(row.file_name, row.kind), row.revision),
          at: row.created_at as Moment,
          by: row.by ?? '',
          outcome: row.outcome,
          outcomeWords: row.outcome_words,
          replaced: newest.get(`${row.kind}|${row.subject_table}|${row.subject_id}`) !== row.id,
        })),
      };
    },
  },
};

/** The number in a file name: "claim-ticket-20455-r1.pdf" is 20455. */
const numberIn = (fileName: string, paper: PaperName): string =>
  fileName.slice(paper.length + 1).replace(/(-r\d+)?\.pdf$/, '');
