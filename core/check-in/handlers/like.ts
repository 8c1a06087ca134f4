/** "Like ticket ...": work, packages and limits of an earlier ticket for new castings; never its readings or prices. */
import { KIND_WORDS } from '../../castings/compute.ts';
import { listCastings } from '../../castings/store.ts';
import type { ReadDb, WriteDb } from '../../db/query.ts';
import type { Handlers } from '../../host/implement.ts';
import type { CastingId, TicketId } from '../../kernel/ids.ts';
import { listWorkLines } from '../../lines/store/work-lines.ts';
import { getTicket } from '../../tickets/store.ts';
import type { checkInContract } from '../contract.ts';

const ownLimits = (db: ReadDb, casting: CastingId) =>
  db.all(
    db.q
      .selectFrom('limit_row')
      .selectAll()
      .where('casting_id', '=', casting)
      .where('for_what', '=', 'this_job')
      .orderBy('id'),
  );

/** Copy limits written for the job itself from casting to casting, in order; they wait for a second person again. */
export function copyLimits(db: WriteDb, from: TicketId, to: readonly CastingId[]): void {
  for (const [index, source] of listCastings(db, from).entries()) {
    const target = to[index];
    if (target === undefined) return;
    for (const { id: _, created_at: _at, created_by: _by, replaces_id: _replaces, ...limit } of ownLimits(
      db,
      source.id,
    )) {
      db.add('limit_row', {
        ...limit,
        casting_id: target,
        ticket_id: null,
        source_words: limit.source_words.slice(0, 200),
      });
    }
  }
}

export const likening: Pick<Handlers<typeof checkInContract>, 'tickets/get-like'> = {
  'tickets/get-like': {
    run({ ticketId }, { db }) {
      const ticket = getTicket(db, ticketId);
      const castings = listCastings(db, ticketId);
      const types = new Map(
        db
          .all(
            db.q
              .selectFrom('casting_type')
              .select(['id', 'code', 'name', 'private'])
              .where(
                'id',
                'in',
                castings.map((one) => one.casting_type_id),
              ),
          )
          .map((row) => [row.id, row]),
      );
      return {
        number: ticket.number,
        engine: engineCode(db, ticket.engine_type_id),
        engineWords: ticket.engine_words,
        useWords: ticket.use_words,
        gasket: ticket.gasket,
        valveLift: ticket.valve_lift_typed,
        castings: castings.map((one) => ({
          type: types.get(one.casting_type_id)?.code ?? '',
          typeName: types.get(one.casting_type_id)?.name ?? '',
          typePrivate: types.get(one.casting_type_id)?.private === 1,
          kindWords: KIND_WORDS[one.kind],
          position: one.position,
          closeTolerance: one.close_tolerance === 1,
          pair: one.pair_no,
          limits: ownLimits(db, one.id).length,
        })),
        wishes: wishesOf(
          db,
          ticketId,
          castings.map((one) => one.id),
        ),
      };
    },
  },
};

const engineCode = (db: ReadDb, id: ReturnType<typeof getTicket>['engine_type_id']): string | null =>
  id === null ? null : (db.one(db.q.selectFrom('engine_type').select('code').where('id', '=', id))?.code ?? null);

/** Operations and packages still on the ticket that are no added work. */
function wishesOf(db: ReadDb, ticket: TicketId, castings: readonly CastingId[]) {
  const codes = (table: 'operation_kind' | 'package') =>
    new Map(
      db
        .sql<{ id: number; code: string; words: string }>(`SELECT id, code, shop_words AS words FROM ${table}`)
        .map((row) => [row.id, row]),
    );
  const kinds = codes('operation_kind');
  const packages = codes('package');
  return listWorkLines(db, ticket)
    .filter(
      (line) =>
        line.withdrawnAt === null && line.optionId === null && (line.kind === 'operation' || line.kind === 'package'),
    )
    .map((line) => {
      const found =
        line.kind === 'operation' ? kinds.get(line.operationKindId ?? 0) : packages.get(line.packageId ?? 0);
      return {
        castings: line.castingIds.map((id) => castings.indexOf(id as CastingId)).filter((index) => index >= 0),
        operation: line.kind === 'operation' ? (found?.code ?? null) : null,
        package: line.kind === 'package' ? (found?.code ?? null) : null,
        words: found?.words ?? line.words,
        quantity: line.kind === 'operation' ? line.quantity : null,
      };
    });
}
