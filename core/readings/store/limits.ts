/** Reads and writes limits, their checks and a lead's choices. */
import type { ReadDb, WriteDb } from '../../db/query.ts';
import type { Day } from '../../kernel/days.ts';
import type { CastingId, Id, LimitId, TicketId } from '../../kernel/ids.ts';
import { isUnitCode } from '../../kernel/measure-units.ts';
import type { Limit, LimitChoice } from '../compute/model.ts';

/** For whom limits are asked. */
export type LimitsFor = Readonly<{
  casting: CastingId;
  ticket: TicketId;
  castingType: number;
  engineType: number | null;
  /** Catalogue limits count from their first day; what is typed for the job counts at once. */
  day: Day;
}>;

const COLUMNS = `l.id, q.code AS quantity, l.stage, l.for_what, l.casting_id, l.side, l.material, l.low, l.high, l.target,
  l.unit, l.typed_low, l.typed_high, l.typed_target, l.second_unit_text, l.source_tag, l.source_words, l.from_on,
  l.replaces_id, l.created_by, EXISTS (SELECT 1 FROM limit_check c WHERE c.limit_row_id = l.id) AS checked`;

type LimitSql = Readonly<{
  id: LimitId;
  quantity: string;
  stage: Limit['stage'];
  for_what: Limit['forWhat'];
  casting_id: CastingId | null;
  side: Limit['side'];
  material: string | null;
  low: number | null;
  high: number | null;
  target: number | null;
  unit: string;
  typed_low: string | null;
  typed_high: string | null;
  typed_target: string | null;
  second_unit_text: string | null;
  source_tag: string | null;
  source_words: string;
  from_on: Day;
  replaces_id: LimitId | null;
  created_by: number | null;
  checked: 0 | 1;
}>;

/** Every limit that could judge this casting, oldest first. */
export function listLimitsFor(db: ReadDb, { casting, ticket, castingType, engineType, day }: LimitsFor): Limit[] {
  const rows = db.sql<LimitSql>(
    `SELECT ${COLUMNS} FROM limit_row l JOIN quantity q ON q.id = l.quantity_id
     WHERE l.id IN (
       SELECT id FROM limit_row WHERE casting_type_id = ? AND from_on <= ?
       UNION SELECT id FROM limit_row WHERE engine_type_id = ? AND from_on <= ?
       UNION SELECT id FROM limit_row WHERE ticket_id = ? AND (casting_id IS NULL OR casting_id = ?)
       UNION SELECT id FROM limit_row WHERE casting_id = ?
       UNION SELECT id FROM limit_row
         WHERE ticket_id IS NULL AND casting_id IS NULL AND casting_type_id IS NULL AND engine_type_id IS NULL
           AND from_on <= ?)
     ORDER BY l.id`,
    castingType,
    day,
    engineType,
    day,
    ticket,
    casting,
    casting,
    day,
  );
  return rows.map(asLimit);
}

/** Limits of the catalogue for a type on a day, those that another one replaced left out; by quantity, then the newest first. */
export function listCatalogueLimits(
  db: ReadDb,
  castingType: Id<'casting_type'>,
  day: Day,
): (Limit & Readonly<{ words: string }>)[] {
  const rows = db.sql<LimitSql & { words: string }>(
    `SELECT ${COLUMNS}, q.words FROM limit_row l JOIN quantity q ON q.id = l.quantity_id
     WHERE l.ticket_id IS NULL AND l.casting_id IS NULL AND l.from_on <= ?
       AND (l.casting_type_id = ? OR l.engine_type_id = (SELECT engine_type_id FROM casting_type WHERE id = ?)
         OR (l.casting_type_id IS NULL AND l.engine_type_id IS NULL))
       AND NOT EXISTS (SELECT 1 FROM limit_row r WHERE r.replaces_id = l.id AND r.from_on <= ?)
     ORDER BY q.id, l.stage DESC, l.from_on DESC, l.id DESC`,
    day,
    castingType,
    castingType,
    day,
  );
  return rows.map((row) => ({ ...asLimit(row), words: row.words }));
}

/** One limit with who typed it, or undefined. */
export function findLimit(db: ReadDb, id: LimitId): (Limit & { typedBy: number | null }) | undefined {
  const [row] = db.sql<LimitSql>(
    `SELECT ${COLUMNS} FROM limit_row l JOIN quantity q ON q.id = l.quantity_id WHERE l.id = ?`,
    id,
  );
  return row && { ...asLimit(row), typedBy: row.created_by };
}

/** Every quantity, stage and side that ever had a limit of the shop. */
export const listShopPlaces = (
  db: ReadDb,
): readonly Readonly<{ quantity: string; stage: Limit['stage']; side: Limit['side'] }>[] =>
  db.all(
    db.q
      .selectFrom('limit_row as l')
      .innerJoin('quantity as q', 'q.id', 'l.quantity_id')
      .select(['q.code as quantity', 'l.stage', 'l.side'])
      .where('l.for_what', '=', 'shop')
      .distinct(),
  );

/** Who typed each limit and who compared it with its source last, by initials; empty where the program brought it. */
export function readLimitPeople(
  db: ReadDb,
  ids: readonly LimitId[],
): ReadonlyMap<LimitId, Readonly<{ typedBy: string; checkedBy: string }>> {
  const typed = db.all(
    db.q
      .selectFrom('limit_row as l')
      .leftJoin('staff as s', 's.id', 'l.created_by')
      .select(['l.id', 's.initials'])
      .where('l.id', 'in', [...ids]),
  );
  const checked = new Map(
    db
      .all(
        db.q
          .selectFrom('limit_check as c')
          .innerJoin('staff as s', 's.id', 'c.created_by')
          .select(['c.limit_row_id', 's.initials'])
          .where('c.limit_row_id', 'in', [...ids])
          .orderBy('c.id'),
      )
      .map((row) => [row.limit_row_id, row.initials]),
  );
  return new Map(typed.map((row) => [row.id, { typedBy: row.initials ?? '', checkedBy: checked.get(row.id) ?? '' }]));
}

function asLimit(row: LimitSql): Limit {
  if (!isUnitCode(row.unit)) throw new RangeError(`no such unit is known: ${row.unit}`);
  return {
    id: row.id,
    quantity: row.quantity,
    stage: row.stage,
    forWhat: row.for_what,
    casting: row.casting_id,
    side: row.side,
    material: row.material,
    low: row.low,
    high: row.high,
    target: row.target,
    unit: row.unit,
    typedLow: row.typed_low,
    typedHigh: row.typed_high,
    typedTarget: row.typed_target,
    secondUnitText: row.second_unit_text,
    sourceTag: row.source_tag,
    sourceWords: row.source_words,
    checked: row.checked === 1,
    from: row.from_on,
    replaces: row.replaces_id,
  };
}

/** A lead's choices for one casting, oldest first. */
export const listChoices = (db: ReadDb, casting: CastingId): LimitChoice[] =>
  db
    .all(
      db.q
        .selectFrom('limit_choice as c')
        .innerJoin('quantity as q', 'q.id', 'c.quantity_id')
        .leftJoin('staff as s', 's.id', 'c.created_by')
        .select(['q.code', 'c.stage', 'c.side', 'c.limit_row_id', 'c.reason', 's.initials'])
        .where('c.casting_id', '=', casting)
        .orderBy('c.id'),
    )
    .map((row) => ({
      quantity: row.code,
      stage: row.stage,
      side: row.side,
      limit: row.limit_row_id,
      reason: row.reason,
      by: row.initials ?? '',
    }));

export type NewLimit = Readonly<{
  quantity: number;
  stage: Limit['stage'];
  forWhat: Limit['forWhat'];
  castingType: number | null;
  engineType: number | null;
  ticket: TicketId | null;
  casting: CastingId | null;
  side: Limit['side'];
  material: string | null;
  low: number | null;
  high: number | null;
  target: number | null;
  unit: string;
  typedLow: string | null;
  typedHigh: string | null;
  typedTarget: string | null;
  secondUnitText: string | null;
  sourceTag: string | null;
  sourceWords: string;
  from: Day;
  replaces: LimitId | null;
}>;

/** Add one limit. @returns its id. */
export const insertLimit = (db: WriteDb, limit: NewLimit): LimitId =>
  db.add('limit_row', {
    quantity_id: limit.quantity,
    stage: limit.stage,
    for_what: limit.forWhat,
    casting_type_id: limit.castingType,
    engine_type_id: limit.engineType,
    ticket_id: limit.ticket,
    casting_id: limit.casting,
    side: limit.side,
    material: limit.material,
    low: limit.low,
    high: limit.high,
    target: limit.target,
    unit: limit.unit,
    typed_low: limit.typedLow,
    typed_high: limit.typedHigh,
    typed_target: limit.typedTarget,
    second_unit_text: limit.secondUnitText,
    source_tag: limit.sourceTag,
    source_words: limit.sourceWords,
    from_on: limit.from,
    replaces_id: limit.replaces,
  } as never);

export const insertCheck = (db: WriteDb, limit: LimitId, words: string | null): void =>
  void db.add('limit_check', { limit_row_id: limit, words });

export const insertChoice = (
  db: WriteDb,
  choice: Readonly<{ casting: CastingId; ticket: TicketId; quantity: number; limit: Limit; reason: string }>,
): void =>
  void db.add('limit_choice', {
    casting_id: choice.casting,
    ticket_id: choice.ticket,
    quantity_id: choice.quantity as never,
    stage: choice.limit.stage,
    side: choice.limit.side,
    limit_row_id: choice.limit.id,
    reason: choice.reason,
  });
