/** Reads and writes of the lines of a ticket: what is charged, at which frozen price. */
import type { ReadDb, WriteDb } from '../../db/query.ts';
import type { Day, Moment } from '../../kernel/days.ts';
import { notFound } from '../../kernel/errors.ts';
import type { CastingId, Id, TicketId, WorkLineId } from '../../kernel/ids.ts';
import type { Cents, Seconds } from '../../kernel/units.ts';
import type { TaxClass } from '../../rates/compute.ts';
import type { LineKind, PriceTerms } from '../compute/line.ts';

export type WorkLine = PriceTerms &
  Readonly<{
    id: WorkLineId;
    version: number;
    ticketId: TicketId;
    castingId: CastingId | null;
    castingIds: readonly CastingId[];
    kind: LineKind;
    operationKindId: Id<'operation_kind'> | null;
    packageId: Id<'package'> | null;
    castingTypeId: Id<'casting_type'> | null;
    words: string;
    wishedWords: string | null;
    position: number;
    priceFrom: 'rate' | 'typed' | 'stock';
    priceWhy: string | null;
    net: boolean;
    amount: Cents;
    taxClass: TaxClass;
    priceDay: Day;
    optionId: Id<'added_work_option'> | null;
    countNote: string | null;
    actualSeconds: Seconds | null;
    withdrawnAt: Moment | null;
    withdrawnWhy: string | null;
  }>;

/** All lines of a ticket in the order they were added, withdrawn ones included. */
export function listWorkLines(db: ReadDb, ticket: TicketId): WorkLine[] {
  const factors = Map.groupBy(
    db.all(
      db.q
        .selectFrom('work_line_factor')
        .select(['work_line_id', 'code', 'factor'])
        .where('ticket_id', '=', ticket)
        .orderBy('id'),
    ),
    (row) => row.work_line_id,
  );
  const castings = Map.groupBy(
    db.all(
      db.q
        .selectFrom('work_line_casting')
        .select(['work_line_id', 'casting_id'])
        .where('ticket_id', '=', ticket)
        .orderBy('id'),
    ),
    (row) => row.work_line_id,
  );
  return db
    .all(db.q.selectFrom('work_line').selectAll().where('ticket_id', '=', ticket).orderBy('position').orderBy('id'))
    .map((row) => ({
      id: row.id,
      version: row.version,
      ticketId: row.ticket_id,
      castingId: row.casting_id,
      castingIds: castings.get(row.id)?.map((c) => c.casting_id) ?? (row.casting_id === null ? [] : [row.casting_id]),
      kind: row.kind,
      operationKindId: row.operation_kind_id,
      packageId: row.package_id,
      castingTypeId: row.casting_type_id,
      words: row.words,
      wishedWords: row.wished_words,
      position: row.position,
      quantity: row.quantity,
      per: row.per,
      unitPrice: row.unit_price_e4,
      factors: (factors.get(row.id) ?? []).map(({ code, factor }) => ({ code, factor })),
      lineMinimum: row.line_minimum_cents,
      priceFrom: row.price_from,
      priceWhy: row.price_why,
      net: row.net === 1,
      amount: row.amount_cents,
      taxClass: row.tax_class,
      priceDay: row.price_day,
      optionId: row.option_id,
      countNote: row.count_note,
      actualSeconds: row.billed_s as Seconds | null,
      withdrawnAt: row.withdrawn_at,
      withdrawnWhy: row.withdrawn_why,
    }));
}

/** @throws AppError `not-found` `lines/no-such-line` */
export function getWorkLine(db: ReadDb, id: WorkLineId): WorkLine {
  const row = db.one(db.q.selectFrom('work_line').select('ticket_id').where('id', '=', id));
  const found = row && listWorkLines(db, row.ticket_id).find((line) => line.id === id);
  if (!found) throw notFound('lines/no-such-line', 'This line');
  return found;
}

export type NewLine = PriceTerms &
  Readonly<{
    ticketId: TicketId;
    kind: LineKind;
    /** The castings it covers, each once; empty for a line of the ticket as a whole. */
    castings: readonly CastingId[];
    operationKindId?: Id<'operation_kind'> | null;
    packageId?: Id<'package'> | null;
    castingTypeId?: Id<'casting_type'> | null;
    words: string;
    wishedWords?: string | null;
    priceFrom: WorkLine['priceFrom'];
    priceWhy?: string | null;
    net?: boolean;
    amount: Cents;
    taxClass: TaxClass;
    priceDay: Day;
    optionId?: Id<'added_work_option'> | null;
    countNote?: string | null;
  }>;

/** Add a line with its frozen factors, after those that stand. */
export function insertWorkLine(db: WriteDb, line: NewLine): WorkLineId {
  const last = db.one(
    db.q
      .selectFrom('work_line')
      .select((eb) => eb.fn.max('position').as('position'))
      .where('ticket_id', '=', line.ticketId),
  );
  const [first, ...others] = line.castings;
  const id = db.add('work_line', {
    ticket_id: line.ticketId,
    casting_id: others.length === 0 ? (first ?? null) : null,
    kind: line.kind,
    operation_kind_id: line.operationKindId ?? null,
    package_id: line.packageId ?? null,
    casting_type_id: line.castingTypeId ?? null,
    words: line.words,
    wished_words: line.wishedWords ?? null,
    position: Number(last?.position ?? 0) + 1,
    quantity: line.quantity,
    per: line.per,
    unit_price_e4: line.unitPrice,
    price_from: line.priceFrom,
    price_why: line.priceWhy ?? null,
    line_minimum_cents: line.lineMinimum,
    net: line.net ? 1 : 0,
    amount_cents: line.amount,
    tax_class: line.taxClass,
    price_day: line.priceDay,
    option_id: line.optionId ?? null,
    count_note: line.countNote ?? null,
  });
  for (const { code, factor } of line.factors) {
    db.add('work_line_factor', { work_line_id: id, ticket_id: line.ticketId, code, factor });
  }
  if (others.length > 0) {
    for (const casting of new Set(line.castings)) {
      db.add('work_line_casting', { work_line_id: id, ticket_id: line.ticketId, casting_id: casting });
    }
  }
  return id;
}

/** New quantity or price of a line that was not asked yet. @returns the new version */
export const repriceLine = (
  db: WriteDb,
  line: WorkLine,
  seen: number,
  changes: Partial<Pick<WorkLine, 'quantity' | 'unitPrice' | 'countNote' | 'net' | 'priceFrom' | 'priceWhy'>>,
  amount: Cents,
): number =>
  db.step('work_line', line.id, seen, {
    ...(changes.quantity === undefined ? {} : { quantity: changes.quantity }),
    ...(changes.unitPrice === undefined ? {} : { unit_price_e4: changes.unitPrice }),
    ...(changes.countNote === undefined ? {} : { count_note: changes.countNote }),
    ...(changes.net === undefined ? {} : { net: changes.net ? 1 : 0 }),
    ...(changes.priceFrom === undefined ? {} : { price_from: changes.priceFrom }),
    ...(changes.priceWhy === undefined ? {} : { price_why: changes.priceWhy }),
    amount_cents: amount,
  });

/** Cross a line out; it stays readable. @returns the new version */
export const withdrawLine = (db: WriteDb, id: WorkLineId, seen: number, at: Moment, why: string): number =>
  db.step('work_line', id, seen, { withdrawn_at: at, withdrawn_why: why });

/** What was worked on a line sold by the hour. @returns the new version */
export const setWorkedSeconds = (db: WriteDb, id: WorkLineId, seen: number, worked: Seconds): number =>
  db.step('work_line', id, seen, { billed_s: worked });
