/** Reads the queues of work centres, and the steps of a ticket or of work only thought of. */

import type { Material } from '../catalogue/compute/fit.ts';
import { travellerOrder } from '../catalogue/compute/traveller-order.ts';
import { findIdByCode } from '../catalogue/store/codes.ts';
import { listCentres } from '../catalogue/store/operations.ts';
import type { ReadDb } from '../db/query.ts';
import type { Day } from '../kernel/days.ts';
import type { TicketId } from '../kernel/ids.ts';
import { type DraftOperation, draftOperation, draftPackage, type PriceBook } from '../lines/compute/book.ts';
import { readPriceBook } from '../lines/store/price-book.ts';
import { describeType } from '../lines/store/priced-castings.ts';
import type { PromiseStep } from '../tickets/compute/promise.ts';

type Wait = Readonly<{ words: string; day: Day | null }>;
export type Steps = Readonly<{ label: string; steps: PromiseStep[] }>;

/**
 * Remaining planned seconds a centre, of covered operations that may be worked on and stand before this ticket's: promised
 * day, rush, time in the shop. A rush ticket sees only rush.
 */
export function readQueues(
  db: ReadDb,
  before: Readonly<{ ticket: TicketId | null; promisedOn: Day | null; arrivedAt: string | null; rush: boolean }>,
): Map<number, number> {
  const rows = db.sql<{ centre: number; seconds: number }>(
    `SELECT work_centre_id AS centre, SUM(planned_s) AS seconds FROM operation_now
     WHERE slot IN ('running', 'next', 'waiting') AND ticket_id <> ? AND (? = 0 OR rush = 1)
       AND (? IS NULL OR promised_on IS NULL OR promised_on < ? OR (promised_on = ? AND (rush = 1 OR arrived_at <= ?)) OR rush > ?)
     GROUP BY work_centre_id`,
    before.ticket ?? 0,
    Number(before.rush),
    before.promisedOn,
    before.promisedOn,
    before.promisedOn,
    before.arrivedAt,
    Number(before.rush),
  );
  return new Map(rows.map((row) => [row.centre, row.seconds]));
}

/** Centres by code with their name, capacity a day and queue, in seconds. */
export const readCentres = (db: ReadDb, queues: ReadonlyMap<number, number>) =>
  Object.fromEntries(
    listCentres(db).map((row) => [
      row.code,
      { name: row.name, capacity: Math.max(1, row.people * row.effectiveSeconds), queue: queues.get(row.id) ?? 0 },
    ]),
  );

/** Open operations of a ticket in the order of the traveller, casting by casting, with what each waits for. */
export function stepsOfTicket(db: ReadDb, ticket: TicketId): Steps[] {
  const rows = db.sql<{
    id: number;
    casting: number;
    tag: number;
    kind: number;
    centre: string;
    planned: number;
    unattended: number;
    waitAfter: PromiseStep['waitAfter'];
    waitDays: number;
    slot: string;
  }>(
    `SELECT o.id, o.casting_id AS casting, c.tag_no AS tag, o.operation_kind_id AS kind, w.code AS centre, o.planned_s AS planned,
       o.unattended_s AS unattended, k.wait_after AS waitAfter, k.wait_days AS waitDays, n.slot
     FROM operation_now n JOIN operation o ON o.id = n.operation_id JOIN casting c ON c.id = o.casting_id
       JOIN operation_kind k ON k.id = o.operation_kind_id JOIN work_centre w ON w.id = o.work_centre_id
     WHERE n.ticket_id = ? ORDER BY c.position_in_ticket, o.position, o.id`,
    ticket,
  );
  const waits = waitsOf(db, ticket);
  const castings = Map.groupBy(rows, (row) => row.tag);
  return [...castings].map(([tag, own]) => ({
    label: String(tag),
    steps: own.map((row, index) => ({
      centre: row.centre,
      seconds: row.planned,
      unattended: row.unattended,
      waitAfter: row.waitAfter,
      waitDays: row.waitDays,
      waitsFor: waits.filter((wait) => applies(wait, row, index)).map(({ words, day }) => ({ words, day })),
    })),
  }));
}

type TicketWait = Wait & Readonly<{ casting: number | null; blocks: number | null; operation: number | null }>;

/** A part blocks its operation; else, and for a question, the casting (or the whole ticket) from its first open step. */
function applies(
  wait: TicketWait,
  row: Readonly<{ id: number; casting: number; kind: number }>,
  index: number,
): boolean {
  if (wait.operation !== null) return wait.operation === row.id;
  if (wait.casting !== null && wait.casting !== row.casting) return false;
  return wait.blocks === null ? index === 0 : wait.blocks === row.kind;
}

function waitsOf(db: ReadDb, ticket: TicketId): TicketWait[] {
  const parts = db.sql<{ casting: number | null; blocks: number | null; words: string; day: Day | null }>(
    `SELECT casting_id AS casting, blocks_id AS blocks, words, expected_on AS day FROM part_line
     WHERE ticket_id = ? AND here_at IS NULL AND fitted_at IS NULL AND returned_at IS NULL AND blocks_id IS NOT NULL`,
    ticket,
  );
  const sublets = db.sql<{ operation: number; words: string; day: Day | null }>(
    `SELECT operation_id AS operation, supplier_words AS words, expected_on AS day FROM sublet
     WHERE ticket_id = ? AND out_at IS NOT NULL AND back_at IS NULL`,
    ticket,
  );
  const questions = db.sql<{ casting: number; number: number }>(
    'SELECT casting_id AS casting, number FROM added_work WHERE ticket_id = ? AND asked_at IS NOT NULL AND closed_at IS NULL',
    ticket,
  );
  return [
    ...parts.map((row) => ({
      ...row,
      operation: null,
      words: row.day === null ? `${row.words}: no date yet` : `${row.words}, expected`,
    })),
    ...sublets.map((row) => ({
      ...row,
      casting: null,
      blocks: null,
      words: row.day === null ? `${row.words}: no date yet` : `back from ${row.words}`,
    })),
    ...questions.map((row) => ({
      casting: row.casting,
      blocks: null,
      operation: null,
      day: null,
      words: `the answer to A${row.number}`,
    })),
  ];
}

export type Thought = Readonly<{
  type: string;
  material: string;
  operations: readonly Readonly<{ operation: string; quantity?: number | undefined }>[];
  packages: readonly string[];
}>;

/** Steps of a casting that stands on no ticket yet. What does not fit is left out: the wish itself says so. */
export function stepsOfThought(
  db: ReadDb,
  thought: Thought,
  label: string,
  on: Day,
  book: PriceBook = readPriceBook(db),
): Steps {
  const casting = describeType(db, thought.type, thought.material as Material, false);
  const pricing = { list: 'standard', on, factors: book.factors };
  const drafts: DraftOperation[] = [];
  for (const code of thought.packages) {
    const pack = book.packages.get(findIdByCode(db, 'package', code) ?? 0);
    const drafted = pack && draftPackage(book, pack, casting, pricing, { castings: 1, price: null });
    if (drafted && 'draft' in drafted) drafts.push(...drafted.draft.operations);
  }
  for (const { operation, quantity } of thought.operations) {
    const kind = book.kinds.get(findIdByCode(db, 'operation_kind', operation) ?? 0);
    const drafted = kind && draftOperation(book, kind, casting, pricing, quantity ?? null);
    if (drafted && 'draft' in drafted) drafts.push(...drafted.draft.operations);
  }
  const ordered = travellerOrder(
    drafts.map((draft, key) => ({ key, kind: draft.kind })),
    book.rules,
    book.groups,
    casting,
  );
  const centres = new Map(listCentres(db).map((row) => [row.id as number, row.code]));
  const waits = new Map(
    db
      .sql<{ id: number; after: PromiseStep['waitAfter']; days: number }>(
        'SELECT id, wait_after AS after, wait_days AS days FROM operation_kind',
      )
      .map((row) => [row.id, row]),
  );
  return {
    label,
    steps: ordered.flatMap(({ key }) => {
      const draft = drafts[key];
      if (!draft) return [];
      const wait = waits.get(draft.kind.id);
      return [
        {
          centre: centres.get(draft.kind.workCentreId ?? 0) ?? '',
          seconds: draft.planned,
          unattended: draft.unattended,
          waitAfter: wait?.after ?? 'none',
          waitDays: wait?.days ?? 0,
          waitsFor: [],
        },
      ];
    }),
  };
}
