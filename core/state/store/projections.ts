/** Writes the rows that lists read, and compares them with the facts. */
import type { ReadDb, WriteDb } from '../../db/query.ts';
import type { TicketId } from '../../kernel/ids.ts';
import type { TicketFacts } from '../compute/facts.ts';
import { operationRows, ticketRow } from '../compute/rows.ts';
import { ticketNow } from '../compute/tickets.ts';
import { keptFacts, loadFacts } from './load-facts.ts';
import { type RuleBook, readRuleBook } from './work-facts.ts';

type Rows = Readonly<{
  ticket: ReturnType<typeof ticketRow>;
  operations: ReturnType<typeof operationRows>;
}>;

function rowsOf(facts: TicketFacts): Rows {
  const now = ticketNow(facts);
  return { ticket: ticketRow(now), operations: operationRows(now) };
}

/** Write the rows of these tickets anew, in the transaction of the command that touched them. */
export function projectTickets(db: WriteDb, touched: readonly TicketId[]): void {
  if (touched.length === 0) return;
  const unknown = touched.filter((id) => keptFacts(db, id) === undefined);
  const book = unknown.length === 0 ? undefined : readRuleBook(db);
  for (const id of touched) {
    const { ticket, operations } = rowsOf(keptFacts(db, id) ?? loadFacts(db, id, book));
    db.exec('DELETE FROM operation_now WHERE ticket_id = ?', id);
    db.exec('DELETE FROM ticket_now WHERE ticket_id = ?', id);
    db.run(db.q.insertInto('ticket_now').values(ticket));
    for (const operation of operations) db.run(db.q.insertInto('operation_now').values(operation));
  }
}

/** A ticket whose kept rows are not what its facts say. */
export type Stale = Readonly<{ ticketNumber: number; column: string; kept: unknown; facts: unknown }>;

/** Compute every ticket again and compare. Empty: all rows are as the facts say. Some ms a ticket. */
export function compareAll(db: ReadDb): Stale[] {
  const book = readRuleBook(db);
  const tickets = db.all(db.q.selectFrom('ticket').select(['id', 'number']).orderBy('id'));
  return tickets.flatMap(({ id, number }) => compareOne(db, id, number, book));
}

/** Write all rows anew. @returns what was stale before */
export function recomputeAll(db: WriteDb): Stale[] {
  const stale = compareAll(db);
  projectTickets(
    db,
    db.all(db.q.selectFrom('ticket').select('id').orderBy('id')).map((row) => row.id),
  );
  return stale;
}

function compareOne(db: ReadDb, id: TicketId, number: number, book: RuleBook): Stale[] {
  const { ticket, operations } = rowsOf(loadFacts(db, id, book));
  const kept = db.one(db.q.selectFrom('ticket_now').selectAll().where('ticket_id', '=', id));
  const keptOperations = db.all(
    db.q.selectFrom('operation_now').selectAll().where('ticket_id', '=', id).orderBy('operation_id'),
  );
  const wanted = [...operations].sort((a, b) => a.operation_id - b.operation_id);
  const ids = [...new Set([...keptOperations, ...wanted].map((row) => row.operation_id))];
  return [
    ...differences(number, kept, ticket),
    ...ids.flatMap((operation) =>
      differences(
        number,
        keptOperations.find((row) => row.operation_id === operation),
        wanted.find((row) => row.operation_id === operation),
      ),
    ),
  ];
}

type Row = Readonly<Record<string, unknown>>;

function differences(ticketNumber: number, kept: Row | undefined, facts: Row | undefined): Stale[] {
  if (!kept || !facts) return [{ ticketNumber, column: 'row', kept: kept ?? null, facts: facts ?? null }];
  return Object.keys(facts)
    .filter((column) => kept[column] !== facts[column])
    .map((column) => ({ ticketNumber, column, kept: kept[column], facts: facts[column] }));
}
