/** Loads every fact of one ticket that a state depends on. Guards, pages and projections all start here. */
import { keptQuery } from '../../db/kept-query.ts';
import type { ReadDb, WriteDb } from '../../db/query.ts';
import { notFound } from '../../kernel/errors.ts';
import type { TicketId } from '../../kernel/ids.ts';
import { authorisedAmount } from '../../lines/compute/authorised.ts';
import { readTicketMoney } from '../../lines/store/ticket-money.ts';
import type { TicketFacts, TicketHead } from '../compute/facts.ts';
import { type TicketNow, ticketNow } from '../compute/tickets.ts';
import { listContacts, listContainers, listItems, listPromises } from './goods-facts.ts';
import { listCastings, readTicketHead } from './job-facts.ts';
import { lineFacts, listEstimateFacts, listParts, listQuestions, readMoneyFact } from './money-facts.ts';
import {
  listOpenHolds,
  listOperations,
  listRuns,
  listShown,
  listSignOffs,
  listWaivers,
  type RuleBook,
  readRuleBook,
} from './work-facts.ts';

const disposalRows = keptQuery((q, ticket: TicketId) =>
  q.selectFrom('disposal').select('id').where('ticket_id', '=', ticket),
);

/**
 * Read the facts of a ticket. Taxes are those of its price day, so that nothing here depends on today.
 *
 * @param book given by a caller that reads many tickets
 * @throws AppError `not-found` `tickets/no-such-ticket`
 */
export function loadFacts(db: ReadDb, ticket: TicketId, book: RuleBook = readRuleBook(db)): TicketFacts {
  const head = readTicketHead(db, ticket);
  const disposal = disposalRows(db, ticket)[0];
  return {
    ticket: head,
    castings: listCastings(db, ticket),
    operations: listOperations(db, ticket, book),
    runs: listRuns(db, ticket),
    waivers: listWaivers(db, ticket),
    shown: listShown(db, ticket),
    signOffs: listSignOffs(db, ticket),
    holds: listOpenHolds(db, ticket),
    ...readMoneyPart(db, head),
    estimates: listEstimateFacts(db, ticket),
    questions: listQuestions(db, ticket),
    parts: listParts(db, ticket),
    containers: listContainers(db, ticket),
    items: listItems(db, ticket),
    promises: listPromises(db, ticket),
    contacts: listContacts(db, ticket),
    disposed: disposal !== undefined,
    rules: book.rules,
    groups: book.groups,
    kindWords: book.kindWords,
  };
}

/** What is charged, answered and owed: it moves with the work, because begun work is spent money. */
function readMoneyPart(db: ReadDb, { id, priceDay }: TicketHead) {
  const money = readTicketMoney(db, id, priceDay);
  return {
    lines: lineFacts(money),
    answers: money.answers,
    authorised: authorisedAmount(money.answers).amount,
    money: readMoneyFact(db, id, money),
  };
}

/** The state of a ticket, computed from its facts at this moment. */
export const readTicketNow = (db: ReadDb, ticket: TicketId): TicketNow =>
  ticketNow(keptFacts(db, ticket) ?? loadFacts(db, ticket));

/** Facts that commands know already, by the handle of their request: they end with it. */
const kept = new WeakMap<ReadDb, Map<TicketId, TicketFacts>>();

/**
 * Say what a ticket's operations and runs are after what was just written, so that they need not be read again in this
 * request; the money that moves with them is read anew. Whoever writes anything else of the ticket must not use this.
 *
 * @returns the whole facts
 */
export function keepWork(db: WriteDb, facts: TicketFacts, work: Pick<TicketFacts, 'operations' | 'runs'>): TicketFacts {
  const after = { ...facts, ...work, ...readMoneyPart(db, facts.ticket) };
  const known = kept.get(db) ?? new Map<TicketId, TicketFacts>();
  kept.set(db, known.set(facts.ticket.id, after));
  return after;
}

/** What a command of this request said; undefined when the facts must be read. */
export const keptFacts = (db: ReadDb, ticket: TicketId): TicketFacts | undefined => kept.get(db)?.get(ticket);

/** The ticket an operation is on. @throws AppError `not-found` `floor/no-such-operation` */
export function ticketOfOperation(db: ReadDb, operation: number): TicketId {
  const row = db.sql<{ ticket_id: TicketId }>('SELECT ticket_id FROM operation WHERE id = ?', operation)[0];
  if (!row) throw notFound('floor/no-such-operation', 'This operation');
  return row.ticket_id;
}
