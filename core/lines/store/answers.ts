/** Questions to the customer and their answers: estimates, added work, approvals. */
import type { NewRow, ReadDb, WriteDb } from '../../db/query.ts';
import { notFound } from '../../kernel/errors.ts';
import type { AddedWorkId, ApprovalId, EstimateId, Id, TicketId, WorkLineId } from '../../kernel/ids.ts';
import type { AnswerFact } from '../compute/authorised.ts';

/** Every answer of a ticket as the rule wants it, oldest first, also those taken back. */
export function listAnswers(db: ReadDb, ticket: TicketId): AnswerFact[] {
  const rows = db.all(db.q.selectFrom('approval').selectAll().where('ticket_id', '=', ticket).orderBy('id'));
  if (rows.length === 0) return [];
  const parts = Map.groupBy(
    db.all(
      db.q
        .selectFrom('approval_line')
        .select(['approval_id', 'work_line_id', 'answer'])
        .where('ticket_id', '=', ticket),
    ),
    (row) => row.approval_id,
  );
  const onEstimate = Map.groupBy(listEstimateLines(db, ticket), (row) => row.estimate_id as number);
  const onOption = Map.groupBy(listOptionLines(db, ticket), (row) => row.option_id as number);
  const options = listOptions(db, ticket);
  const asked = new Map(options.map((o) => [o.id as number, o.asked_at]));
  const optionsOf = Map.groupBy(options, (o) => o.added_work_id as number);
  return rows.map((row) => {
    const own = (parts.get(row.id) ?? []).map((p) => ({ line: p.work_line_id as number, yes: p.answer === 'yes' }));
    const all = [
      ...(onEstimate.get(row.estimate_id ?? 0) ?? []).flatMap((l) => l.work_line_id ?? []),
      ...(onOption.get(row.option_id ?? 0) ?? []).map((l) => l.id),
      // A no to everything that was offered.
      ...(row.option_id === null ? (optionsOf.get(row.added_work_id ?? 0) ?? []) : []).flatMap((o) =>
        (onOption.get(o.id) ?? []).map((l) => l.id),
      ),
    ];
    return {
      id: row.id,
      order: row.id,
      at: row.created_at,
      askedAt: asked.get(row.option_id ?? 0) ?? null,
      about: row.about,
      answer: row.answer,
      question: row.estimate_id ?? row.option_id,
      amount: row.amount_cents,
      taxIn: row.tax_in === 1,
      lines: row.answer === 'part' || own.length > 0 ? own : all.map((line) => ({ line: line as number, yes: true })),
      withdraws: row.withdraws_id,
    };
  });
}

const listEstimateLines = (db: ReadDb, ticket: TicketId) =>
  db.all(
    db.q
      .selectFrom('estimate_line')
      .select(['estimate_id', 'work_line_id'])
      .where('ticket_id', '=', ticket)
      .where('work_line_id', 'is not', null),
  );

const listOptionLines = (db: ReadDb, ticket: TicketId) =>
  db.all(
    db.q
      .selectFrom('work_line')
      .select(['id', 'option_id'])
      .where('ticket_id', '=', ticket)
      .where('option_id', 'is not', null),
  );

/** Options of all added work of a ticket, with when they were asked. */
export const listOptions = (db: ReadDb, ticket: TicketId) =>
  db.all(
    db.q
      .selectFrom('added_work_option as o')
      .innerJoin('added_work as a', 'a.id', 'o.added_work_id')
      .selectAll('o')
      .select(['a.asked_at', 'a.number as added_work_number', 'a.closed_at', 'a.casting_id', 'a.expires_at'])
      .where('o.ticket_id', '=', ticket)
      .orderBy('o.id'),
  );

/** Lines the customer was given a price of: on a sent estimate or an asked option. */
export function listAskedLines(db: ReadDb, ticket: TicketId): Set<number> {
  const asked = new Set(listOptions(db, ticket).flatMap((o) => (o.asked_at === null ? [] : [o.id as number])));
  return new Set([
    ...listEstimateLines(db, ticket).flatMap((row) => row.work_line_id ?? []),
    ...listOptionLines(db, ticket).flatMap((row) =>
      row.option_id !== null && asked.has(row.option_id) ? [row.id] : [],
    ),
  ]);
}

/** Answers with the people of them, latest first. */
export const listApprovals = (db: ReadDb, ticket: TicketId) =>
  db.all(
    db.q
      .selectFrom('approval as a')
      .leftJoin('staff as w', 'w.id', 'a.created_by')
      .leftJoin('staff as o', 'o.id', 'a.override_by')
      .leftJoin('estimate as e', 'e.id', 'a.estimate_id')
      .leftJoin('added_work_option as p', 'p.id', 'a.option_id')
      .leftJoin('added_work as d', 'd.id', 'a.added_work_id')
      .selectAll('a')
      .select([
        'w.name as written_by',
        'o.name as override_name',
        'e.revision as estimate_revision',
        'p.letter as option_letter',
        'd.number as added_work_number',
      ])
      .where('a.ticket_id', '=', ticket)
      .orderBy('a.id', 'desc'),
  );

/** @throws AppError `not-found` `approvals/no-such-answer` */
export function getApproval(db: ReadDb, id: ApprovalId) {
  const row = db.one(db.q.selectFrom('approval').selectAll().where('id', '=', id));
  if (!row) throw notFound('approvals/no-such-answer', 'This answer');
  return row;
}

/** Write an answer down; `lines` for a part answer, and for the line of an overrun. */
export function insertApproval(
  db: WriteDb,
  row: NewRow<'approval'>,
  lines: readonly Readonly<{ line: WorkLineId; answer: 'yes' | 'no' }>[],
): ApprovalId {
  const id = db.add('approval', row);
  for (const { line, answer } of lines) {
    db.add('approval_line', { approval_id: id, ticket_id: row.ticket_id, work_line_id: line, answer });
  }
  return id;
}

/** Estimates of a ticket, oldest first. */
export const listEstimates = (db: ReadDb, ticket: TicketId) =>
  db.all(
    db.q
      .selectFrom('estimate as e')
      .leftJoin('staff as s', 's.id', 'e.created_by')
      .selectAll('e')
      .select('s.name as sent_by')
      .where('e.ticket_id', '=', ticket)
      .orderBy('e.revision'),
  );

/** @throws AppError `not-found` `pricing/no-such-estimate` */
export function getEstimate(db: ReadDb, id: EstimateId) {
  const row = db.one(db.q.selectFrom('estimate').selectAll().where('id', '=', id));
  if (!row) throw notFound('pricing/no-such-estimate', 'This estimate');
  return row;
}

/** Lines of an estimate as they were sent, in printing order. */
export const listLinesOfEstimate = (db: ReadDb, id: EstimateId) =>
  db.all(db.q.selectFrom('estimate_line').selectAll().where('estimate_id', '=', id).orderBy('id'));

export function insertEstimate(
  db: WriteDb,
  row: NewRow<'estimate'>,
  lines: readonly Omit<NewRow<'estimate_line'>, 'estimate_id' | 'ticket_id'>[],
): EstimateId {
  const id = db.add('estimate', row);
  for (const line of lines) db.add('estimate_line', { ...line, estimate_id: id, ticket_id: row.ticket_id });
  return id;
}

/** Added work of a ticket, oldest first. */
export const listAddedWork = (db: ReadDb, ticket: TicketId) =>
  db.all(db.q.selectFrom('added_work').selectAll().where('ticket_id', '=', ticket).orderBy('number'));

/** @throws AppError `not-found` `approvals/no-such-question` */
export function getAddedWork(db: ReadDb, id: AddedWorkId) {
  const row = db.one(db.q.selectFrom('added_work').selectAll().where('id', '=', id));
  if (!row) throw notFound('approvals/no-such-question', 'This question');
  return row;
}

/** Options of one added work by letter. */
export const listOptionsOf = (db: ReadDb, id: AddedWorkId) =>
  db.all(db.q.selectFrom('added_work_option').selectAll().where('added_work_id', '=', id).orderBy('letter'));

export function insertAddedWork(
  db: WriteDb,
  row: NewRow<'added_work'>,
  findings: readonly Id<'finding'>[],
): AddedWorkId {
  const id = db.add('added_work', row);
  for (const finding of findings) {
    db.add('added_work_finding', { added_work_id: id, ticket_id: row.ticket_id, finding_id: finding });
  }
  return id;
}

export const insertOption = (db: WriteDb, row: NewRow<'added_work_option'>): Id<'added_work_option'> =>
  db.add('added_work_option', row);
