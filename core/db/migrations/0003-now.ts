/**
 * Step 3: what lists read. Shipped: never edited.
 *
 * `ticket_now` and `operation_now` are written by core/state in the transaction of the command that touched the ticket and
 * can be made anew from facts at any time. Nothing in them depends on today. Two triggers keep caustic and magnet off every
 * casting that is not iron, whoever writes the row.
 */
import type { Database } from 'better-sqlite3';

const MOMENT = "'____-__-__T__:__:__.___Z'";
const flag = (name: string): string => `${name} INTEGER NOT NULL CHECK (${name} IN (0, 1))`;

const ticketNow = `CREATE TABLE ticket_now (
  ticket_id INTEGER PRIMARY KEY REFERENCES ticket (id) ON DELETE RESTRICT,
  number INTEGER NOT NULL,
  customer_id INTEGER NOT NULL REFERENCES customer (id) ON DELETE RESTRICT,
  word TEXT NOT NULL,
  ${flag('over')},
  ${flag('ready')},
  ${flag('promise_open')},
  ${flag('stuck')},
  held INTEGER NOT NULL CHECK (held >= 0),
  unanswered INTEGER NOT NULL CHECK (unanswered >= 0),
  ${flag('rush')},
  ${flag('comeback')},
  ${flag('partly_out')},
  ${flag('goods_here')},
  arrived_at TEXT CHECK (arrived_at LIKE ${MOMENT}),
  promised_on TEXT CHECK (promised_on LIKE '____-__-__'),
  promised_minute INTEGER,
  ${flag('own_time')},
  first_promised_on TEXT CHECK (first_promised_on LIKE '____-__-__'),
  depends_words TEXT,
  where_words TEXT NOT NULL,
  left_s INTEGER NOT NULL CHECK (left_s >= 0),
  asked_kind TEXT CHECK (asked_kind IN ('estimate', 'added work')),
  asked_id INTEGER,
  asked_number INTEGER,
  asked_at TEXT CHECK (asked_at LIKE ${MOMENT}),
  asked_end TEXT,
  asked_words TEXT,
  ring_at TEXT CHECK (ring_at LIKE ${MOMENT}),
  ring_words TEXT,
  told_at TEXT CHECK (told_at LIKE ${MOMENT}),
  tags INTEGER NOT NULL CHECK (tags >= 0),
  invoiced_cents INTEGER NOT NULL,
  balance_cents INTEGER NOT NULL,
  to_pay_cents INTEGER NOT NULL,
  due_on TEXT CHECK (due_on LIKE '____-__-__'),
  parts_due_on TEXT CHECK (parts_due_on LIKE '____-__-__'),
  parts_words TEXT
) STRICT`;

const operationNow = `CREATE TABLE operation_now (
  operation_id INTEGER PRIMARY KEY REFERENCES operation (id) ON DELETE RESTRICT,
  ticket_id INTEGER NOT NULL REFERENCES ticket (id) ON DELETE RESTRICT,
  casting_id INTEGER NOT NULL REFERENCES casting (id) ON DELETE RESTRICT,
  work_centre_id INTEGER NOT NULL REFERENCES work_centre (id) ON DELETE RESTRICT,
  word TEXT NOT NULL,
  slot TEXT NOT NULL CHECK (slot IN ('running', 'next', 'waiting', 'held', 'asked')),
  right_words TEXT NOT NULL,
  hold_reason TEXT,
  set_up TEXT NOT NULL,
  position INTEGER NOT NULL,
  rank INTEGER,
  planned_s INTEGER NOT NULL CHECK (planned_s >= 0),
  promised_on TEXT CHECK (promised_on LIKE '____-__-__'),
  promised_minute INTEGER,
  ${flag('own_time')},
  ${flag('rush')},
  arrived_at TEXT CHECK (arrived_at LIKE ${MOMENT})
) STRICT`;

const indexes = [
  'CREATE INDEX ticket_now__customer_id ON ticket_now (customer_id)',
  'CREATE INDEX ticket_now__promised ON ticket_now (promised_on, promised_minute, number) WHERE over = 0',
  'CREATE INDEX ticket_now__promise_open ON ticket_now (promised_on, promised_minute, number) WHERE promise_open = 1',
  'CREATE INDEX ticket_now__ready ON ticket_now (told_at, number) WHERE ready = 1',
  'CREATE INDEX ticket_now__asked ON ticket_now (over, asked_at, number) WHERE unanswered > 0',
  'CREATE INDEX ticket_now__ring ON ticket_now (ring_at, number) WHERE ring_at IS NOT NULL',
  'CREATE INDEX ticket_now__parts ON ticket_now (over, parts_due_on, number) WHERE parts_due_on IS NOT NULL',
  'CREATE INDEX ticket_now__over ON ticket_now (over, number)',
  'CREATE INDEX operation_now__ticket_id ON operation_now (ticket_id)',
  'CREATE INDEX operation_now__casting_id ON operation_now (casting_id, position)',
  'CREATE INDEX operation_now__work_centre_id ON operation_now (work_centre_id, slot)',
  'CREATE INDEX hold__due ON hold (follow_up_on, id) WHERE closed_at IS NULL',
  'CREATE INDEX sublet__out ON sublet (expected_on, id) WHERE out_at IS NOT NULL AND back_at IS NULL',
  'CREATE INDEX contact_log__unreached ON contact_log (ticket_id, id) WHERE reached = 0',
];

/** Groups that only iron and steel bear; `not_known` is no iron. */
const LIVE = 'o.not_needed_at IS NULL AND o.finished_at IS NULL';
const IRON = "('iron_grey', 'iron_ductile', 'steel')";
const inGroup = (operationKind: string): string =>
  `EXISTS (SELECT 1 FROM op_group g WHERE g.operation_kind_id = ${operationKind} AND g.code IN ('caustic', 'magnet'))`;

const triggers = [
  `CREATE TRIGGER operation__only_on_iron BEFORE INSERT ON operation
WHEN ${inGroup('NEW.operation_kind_id')}
  AND NOT EXISTS (SELECT 1 FROM casting c WHERE c.id = NEW.casting_id AND c.material IN ${IRON})
BEGIN SELECT RAISE(ABORT, 'caustic and magnet are for iron only'); END`,
  `CREATE TRIGGER casting__metal_bears_its_work BEFORE UPDATE OF material ON casting
WHEN NEW.material NOT IN ${IRON}
  AND EXISTS (SELECT 1 FROM operation o WHERE o.casting_id = NEW.id AND ${LIVE} AND ${inGroup('o.operation_kind_id')})
BEGIN SELECT RAISE(ABORT, 'caustic and magnet are for iron only'); END`,
  `CREATE TRIGGER operation__back_only_on_iron BEFORE UPDATE OF not_needed_at, finished_at ON operation
WHEN NEW.not_needed_at IS NULL AND ${inGroup('NEW.operation_kind_id')}
  AND NOT EXISTS (SELECT 1 FROM casting c WHERE c.id = NEW.casting_id AND c.material IN ${IRON})
BEGIN SELECT RAISE(ABORT, 'caustic and magnet are for iron only'); END`,
];

export function up(sqlite: Database): void {
  for (const sql of [ticketNow, operationNow, ...indexes, ...triggers]) sqlite.exec(sql);
}
