/** What was taken off castings beside this one: the other of its pair, and the same one on earlier visits. */
import type { ReadDb } from '../../db/query.ts';
import type { CastingId, TicketId } from '../../kernel/ids.ts';
import type { OtherCut } from '../compute/model.ts';

type CastingRow = Readonly<{ id: CastingId; tag_no: number; position: string }>;

/** Thickness as it stands at one stage: the last reading that nobody replaced; null when there is none. */
function thicknessAt(db: ReadDb, casting: CastingId, stage: 'before' | 'after'): number | null {
  const rows = db.all(
    db.q
      .selectFrom('reading as r')
      .innerJoin('quantity as q', 'q.id', 'r.quantity_id')
      .leftJoin('reading as later', 'later.supersedes_id', 'r.id')
      .select(['r.kind', 'r.value'])
      .where('r.casting_id', '=', casting)
      .where('q.code', '=', 'thickness')
      .where('r.stage', '=', stage)
      .where('later.id', 'is', null)
      .orderBy('r.id'),
  );
  const last = rows.at(-1);
  return last?.kind === 'number' ? last.value : null;
}

function cutOf(db: ReadDb, casting: CastingRow): OtherCut {
  const [before, after] = [thicknessAt(db, casting.id, 'before'), thicknessAt(db, casting.id, 'after')];
  return {
    tag: casting.tag_no,
    position: casting.position,
    removed: before === null || after === null ? null : before - after,
  };
}

/** The other castings of the same kind that carry the same pair number on this ticket, by tag. */
export function listPairCuts(
  db: ReadDb,
  { casting, ticket, pair }: Readonly<{ casting: CastingId; ticket: TicketId; pair: number }>,
): OtherCut[] {
  return db
    .all(
      db.q
        .selectFrom('casting')
        .select(['id', 'tag_no', 'position'])
        .where('ticket_id', '=', ticket)
        .where('pair_no', '=', pair)
        .where('id', '<>', casting)
        .orderBy('tag_no'),
    )
    .map((row) => cutOf(db, row));
}

/** More visits than any casting sees; also the end of a chain that was tied into a ring. */
const MOST_VISITS = 20;

/** The same casting on earlier visits, the last one first. */
export function listEarlierCuts(db: ReadDb, from: CastingId): OtherCut[] {
  const cuts: OtherCut[] = [];
  let next: CastingId | null = from;
  while (next !== null && cuts.length < MOST_VISITS) {
    const row: (CastingRow & { previous_casting_id: CastingId | null }) | undefined = db.one(
      db.q.selectFrom('casting').select(['id', 'tag_no', 'position', 'previous_casting_id']).where('id', '=', next),
    );
    if (!row) break;
    cuts.push(cutOf(db, row));
    next = row.previous_casting_id;
  }
  return cuts;
}
