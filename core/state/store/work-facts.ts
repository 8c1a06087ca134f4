/** Operations of a ticket with everything the bench wrote about them. */
import type { Groups, OrderRule, Waiver } from '../../catalogue/compute/order-rules.ts';
import { listGroups, listRules } from '../../catalogue/store/operations.ts';
import { keptQuery } from '../../db/kept-query.ts';
import { keptRead } from '../../db/kept-read.ts';
import type { ReadDb } from '../../db/query.ts';
import type { TicketId } from '../../kernel/ids.ts';
import type { HoldFact, OperationFact, RunFact, SignOffFact } from '../compute/facts.ts';

/** What rules need of the catalogue; the same for every ticket of one request. */
export type RuleBook = Readonly<{
  rules: readonly OrderRule[];
  groups: Groups;
  groupsOfKind: ReadonlyMap<number, readonly string[]>;
  kindWords: ReadonlyMap<string, string>;
}>;

/** The order rules in force with their groups; about a hundred rows, kept until something is written. */
export const readRuleBook = keptRead((db): RuleBook => {
  const kinds = db.all(db.q.selectFrom('operation_kind').select(['id', 'code', 'shop_words']));
  const codes = new Map(kinds.map((kind) => [kind.id as number, kind.code]));
  const groups = new Map<string, Set<string>>();
  const groupsOfKind = new Map<number, string[]>();
  for (const { code, kind } of listGroups(db)) {
    const members = groups.get(code) ?? new Set();
    groups.set(code, members.add(codes.get(kind) ?? ''));
    groupsOfKind.set(kind, [...(groupsOfKind.get(kind) ?? []), code]);
  }
  return {
    rules: listRules(db).map((row) => ({
      id: row.id,
      no: row.no,
      first: row.first_group,
      next: row.then_group,
      strength: row.strength,
      need: row.need,
      scope: row.scope,
      ifKind: row.if_kind,
      ifMetal: row.if_metal,
      ifCamLayout: row.if_cam_layout,
      ifFuel: row.if_fuel,
      waiver: row.waiver,
      why: row.why,
    })),
    groups,
    groupsOfKind,
    kindWords: new Map(kinds.map((kind) => [kind.code, kind.shop_words])),
  };
});

const operationRows = keptQuery((q, ticket: TicketId) =>
  q
    .selectFrom('operation as o')
    .innerJoin('operation_kind as k', 'k.id', 'o.operation_kind_id')
    .innerJoin('work_centre as c', 'c.id', 'o.work_centre_id')
    .select([
      'o.id',
      'o.casting_id',
      'o.version',
      'o.operation_kind_id',
      'o.work_line_id',
      'o.option_id',
      'o.position',
      'o.work_centre_id',
      'c.name as centre_name',
      'o.instruction',
      'o.units',
      'o.planned_s',
      'o.unattended_s',
      'o.queue_rank',
      'o.redo_of_id',
      'o.finished_at',
      'o.finished_by',
      'o.not_needed_at',
      'k.code',
      'k.gate',
      'k.section',
      'k.shop_words',
      'k.position as kind_position',
      'k.two_signatures',
    ])
    .where('o.ticket_id', '=', ticket)
    .orderBy('o.casting_id')
    .orderBy('o.position')
    .orderBy('o.id'),
);

/** In traveller order of each casting: position, then id. */
export function listOperations(db: ReadDb, ticket: TicketId, book: RuleBook): OperationFact[] {
  const setUps = readSetUps(db, ticket);
  return operationRows(db, ticket).map((row) => ({
    id: row.id,
    castingId: row.casting_id,
    version: row.version,
    kind: {
      id: row.operation_kind_id,
      code: row.code,
      gate: row.gate,
      section: row.section,
      words: row.shop_words,
      position: row.kind_position,
      twoSignatures: row.two_signatures === 1,
      groups: book.groupsOfKind.get(row.operation_kind_id) ?? [],
    },
    lineId: row.work_line_id,
    optionId: row.option_id,
    position: row.position,
    centreId: row.work_centre_id,
    centreName: row.centre_name,
    instruction: row.instruction,
    setUp: setUps.get(row.id) ?? '',
    plannedSeconds: row.planned_s,
    unattendedSeconds: row.unattended_s,
    units: row.units,
    rank: row.queue_rank,
    redoOf: row.redo_of_id,
    finishedAt: row.finished_at,
    finishedBy: row.finished_by,
    notNeededAt: row.not_needed_at,
  }));
}

const setUpRows = keptQuery((q, ticket: TicketId) =>
  q
    .selectFrom('size_wanted as s')
    .innerJoin('quantity as q', 'q.id', 's.quantity_id')
    .select(['s.operation_id', 's.typed', 's.unit', 'q.words'])
    .where('s.ticket_id', '=', ticket)
    .orderBy('s.id'),
);

/** Sizes wanted by operation, in words. */
function readSetUps(db: ReadDb, ticket: TicketId): Map<number, string> {
  const rows = setUpRows(db, ticket);
  const result = new Map<number, string>();
  for (const row of rows) {
    const words = `${row.words} ${row.typed} ${row.unit}`;
    const before = result.get(row.operation_id);
    result.set(row.operation_id, before === undefined ? words : `${before}, ${words}`);
  }
  return result;
}

const runRows = keptQuery((q, ticket: TicketId) =>
  q
    .selectFrom('operation_run')
    .select(['operation_id', 'staff_id', 'started_at', 'ended_at'])
    .where('ticket_id', '=', ticket)
    .orderBy('id'),
);

export const listRuns = (db: ReadDb, ticket: TicketId): RunFact[] =>
  runRows(db, ticket).map((row) => ({
    operationId: row.operation_id,
    staffId: row.staff_id,
    startedAt: row.started_at,
    endedAt: row.ended_at,
  }));

const waiverRows = keptQuery((q, ticket: TicketId) =>
  q
    .selectFrom('order_waiver as w')
    .leftJoin('staff as s', 's.id', 'w.created_by')
    .select(['w.order_rule_id', 'w.operation_id', 'w.reason', 'w.created_at', 's.initials'])
    .where('w.ticket_id', '=', ticket)
    .orderBy('w.id'),
);

/** Waivers of a ticket's operations, with the initials of who gave them. */
export const listWaivers = (db: ReadDb, ticket: TicketId): Waiver[] =>
  waiverRows(db, ticket).map((row) => ({
    ruleId: row.order_rule_id,
    operationId: row.operation_id,
    reason: row.reason,
    by: row.initials ?? '',
    at: row.created_at,
  }));

const shownRows = keptQuery((q, ticket: TicketId) =>
  q.selectFrom('rule_shown').select(['operation_id', 'order_rule_id']).where('ticket_id', '=', ticket),
);

/** Soft rules that were shown, as `<operation>:<rule>`. */
export const listShown = (db: ReadDb, ticket: TicketId): ReadonlySet<string> =>
  new Set(shownRows(db, ticket).map((row) => `${row.operation_id}:${row.order_rule_id}`));

const signOffRows = keptQuery((q, ticket: TicketId) =>
  q
    .selectFrom('sign_off as s')
    .leftJoin('sign_off_reopened as r', 'r.sign_off_id', 's.id')
    .select([
      's.id',
      's.casting_id',
      's.place',
      's.staff_id',
      's.same_person_ok_by',
      's.created_at',
      'r.id as reopened_id',
    ])
    .where('s.ticket_id', '=', ticket)
    .orderBy('s.id'),
);

export const listSignOffs = (db: ReadDb, ticket: TicketId): SignOffFact[] =>
  signOffRows(db, ticket).map((row) => ({
    id: row.id,
    castingId: row.casting_id,
    place: row.place,
    staffId: row.staff_id,
    at: row.created_at,
    samePersonOkBy: row.same_person_ok_by,
    reopened: row.reopened_id !== null,
  }));

const holdRows = keptQuery((q, ticket: TicketId) =>
  q
    .selectFrom('hold')
    .select(['id', 'casting_id', 'operation_id', 'reason', 'words', 'follow_up_on', 'owner_id', 'created_at'])
    .where('ticket_id', '=', ticket)
    .where('closed_at', 'is', null)
    .orderBy('id'),
);

/** Open holds. */
export const listOpenHolds = (db: ReadDb, ticket: TicketId): HoldFact[] =>
  holdRows(db, ticket).map((row) => ({
    id: row.id,
    castingId: row.casting_id,
    operationId: row.operation_id,
    reason: row.reason,
    words: row.words,
    followUpOn: row.follow_up_on,
    ownerId: row.owner_id,
    at: row.created_at,
  }));
