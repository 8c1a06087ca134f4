/**
 * Step 2: what the find box looks in, and what stands in the house. Shipped: never edited.
 *
 * Normalised copies of names, numbers and words; written by core/search in the transaction of the command that changed
 * them. Triggers only note which rows to index anew, so that no command can forget it.
 */
import type { Database } from 'better-sqlite3';

const WORDS = "tokenize = 'unicode61 remove_diacritics 2', prefix = '2 3'";

const tables = [
  `CREATE VIRTUAL TABLE find_customer USING fts5 (body, ${WORDS})`,
  `CREATE VIRTUAL TABLE find_ticket USING fts5 (orders, engine, rest, ${WORDS})`,
  `CREATE VIRTUAL TABLE find_phone USING fts5 (digits, tokenize = 'trigram')`,
  `CREATE VIRTUAL TABLE find_number USING fts5 (number, tokenize = 'trigram')`,
  // `number`: capital letters and digits only, ? for an unreadable one; wild = 1 when it holds one.
  `CREATE TABLE find_casting (
    casting_id INTEGER PRIMARY KEY REFERENCES casting (id) ON DELETE RESTRICT,
    number TEXT NOT NULL,
    wild INTEGER NOT NULL CHECK (wild IN (0, 1))
  ) STRICT`,
  'CREATE INDEX find_casting__number ON find_casting (number)',
  'CREATE INDEX find_casting__wild ON find_casting (number) WHERE wild = 1',
  // What stands in the house now, out of years of finished work.
  'CREATE INDEX casting__in_house ON casting (ticket_id) WHERE out_at IS NULL',
  'CREATE INDEX container__in_house ON container (ticket_id) WHERE out_at IS NULL',
  `CREATE TABLE find_dirty (
    subject TEXT NOT NULL CHECK (subject IN ('customer', 'ticket', 'casting')),
    row_id INTEGER NOT NULL,
    PRIMARY KEY (subject, row_id)
  ) STRICT, WITHOUT ROWID`,
];

const note = (subject: string, id: string): string =>
  `INSERT INTO find_dirty (subject, row_id) VALUES ('${subject}', ${id}) ON CONFLICT DO NOTHING;`;

const trigger = (name: string, when: string, body: string): string =>
  `CREATE TRIGGER find__${name} AFTER ${when} BEGIN ${body} END`;

const triggers = [
  trigger('customer_new', 'INSERT ON customer', note('customer', 'NEW.id')),
  trigger(
    'customer_changed',
    'UPDATE OF name, short_name, legal_name, merged_into_id ON customer',
    note('customer', 'NEW.id'),
  ),
  trigger('person_new', 'INSERT ON customer_person', note('customer', 'NEW.customer_id')),
  trigger('person_changed', 'UPDATE OF name, retired_on ON customer_person', note('customer', 'NEW.customer_id')),
  trigger(
    'contact_new',
    'INSERT ON contact_point WHEN NEW.digits IS NOT NULL',
    'INSERT INTO find_phone (rowid, digits) VALUES (NEW.id, NEW.digits);',
  ),
  trigger('ticket_new', 'INSERT ON ticket', note('ticket', 'NEW.id')),
  trigger(
    'ticket_changed',
    'UPDATE OF order_number, engine_words, engine_type_id, wanted_words, brought_by, use_words ON ticket',
    note('ticket', 'NEW.id'),
  ),
  trigger('casting_new', 'INSERT ON casting', note('casting', 'NEW.id') + note('ticket', 'NEW.ticket_id')),
  trigger(
    'casting_changed',
    'UPDATE OF ticket_id, casting_type_id, casting_number, serial, own_marks ON casting',
    note('casting', 'NEW.id') + note('ticket', 'NEW.ticket_id') + note('ticket', 'OLD.ticket_id'),
  ),
];

export function up(sqlite: Database): void {
  for (const sql of [...tables, ...triggers]) sqlite.exec(sql);
}
