/** A metal that is confirmed or corrected: what it forbids gives way to what fits, before anybody starts it. */
import { metalView } from '../../castings/compute.ts';
import { type CastingRow, forbiddenBy, getCasting } from '../../castings/store.ts';
import { fitsInstead, metalForbids } from '../../catalogue/compute/fit.ts';
import { fitKindsOf } from '../../catalogue/store/fit-facts.ts';
import type { WriteDb } from '../../db/query.ts';
import { type Ctx, type Handlers, personOf } from '../../host/implement.ts';
import { ruleBroken } from '../../kernel/errors.ts';
import type { OperationId } from '../../kernel/ids.ts';
import { draftOperation } from '../../lines/compute/book.ts';
import { finishJob, type Job, openJob } from '../../lines/store/add-lines.ts';
import { insertOperations } from '../../lines/store/operations.ts';
import type { TicketCasting } from '../../lines/store/priced-castings.ts';
import type { checkInContract } from '../contract.ts';

export const confirming: Pick<Handlers<typeof checkInContract>, 'castings/confirm-metal'> = {
  'castings/confirm-metal': {
    run({ castingId, material, how }, ctx) {
      const { db, now } = ctx;
      const row = getCasting(db, castingId);
      if (row.out_at !== null) throw ruleBroken('castings/out', `${row.tag_no} is out of the house.`);
      const version = db.step('casting', row.id, row.version, {
        material,
        material_how: how,
        metal_confirmed_at: now,
        metal_confirmed_by: personOf(ctx),
      });
      const warnings = material === row.material ? [] : fitToMetal(ctx, row.id);
      const metal = metalView(material, now);
      const changed = material === row.material ? 'Confirmed' : 'Corrected';
      return {
        output: { version, metal, warnings },
        activity: [
          {
            subject: ['casting', row.id],
            ticket: row.ticket_id,
            words: `${changed} the metal of ${row.tag_no}: ${metal.word}${how === 'magnet' ? ', by magnet' : ''}`,
            before: { material: row.material },
            after: { material, how, warnings },
          },
        ],
        touched: [row.ticket_id],
      };
    },
  },
};

type Open = Readonly<{ id: OperationId; kindId: number; lineId: number | null; begun: boolean }>;

/**
 * Every operation not begun that the metal forbids is closed with the reason, and the one that fits stands in its place on
 * the same line: its price was agreed and does not move by itself.
 *
 * @returns sentences for the person; one for each operation that was begun already comes first
 */
export function fitToMetal(ctx: Ctx, castingId: CastingRow['id']): string[] {
  const { db } = ctx;
  const row = getCasting(db, castingId);
  if (forbiddenBy(db, castingId, row.material).length === 0) return [];
  const job = openJob(db, row.ticket_id);
  const casting = job.castings.find((one) => one.id === castingId);
  if (!casting || casting.metal === 'not_known') return [];
  const words = openOperations(db, castingId).flatMap((operation) => replaceOne(ctx, job, casting, operation));
  job.touched.add(castingId);
  finishJob(db, job);
  return words.sort((a, b) => Number(b.startsWith('STOP')) - Number(a.startsWith('STOP')));
}

const openOperations = (db: WriteDb, casting: CastingRow['id']): Open[] =>
  db
    .sql<{ id: OperationId; kindId: number; lineId: number | null; begun: number }>(
      `SELECT o.id, o.operation_kind_id AS kindId, o.work_line_id AS lineId,
         EXISTS (SELECT 1 FROM operation_run r WHERE r.operation_id = o.id) AS begun
       FROM operation o LEFT JOIN work_line l ON l.id = o.work_line_id
       WHERE o.casting_id = ? AND o.finished_at IS NULL AND o.not_needed_at IS NULL AND l.withdrawn_at IS NULL ORDER BY o.position`,
      casting,
    )
    .map((one) => ({ ...one, begun: one.begun === 1 }));

function replaceOne(ctx: Ctx, job: Job, casting: TicketCasting, operation: Open): string[] {
  const kind = job.book.kinds.get(operation.kindId);
  const forbidden = kind && metalForbids(kind, casting.metal);
  if (!(kind && forbidden)) return [];
  if (operation.begun) return [`STOP: ${kind.words} was begun on ${casting.tag}. ${forbidden}`];
  const kinds = fitKindsOf(ctx.db, casting.kind);
  const own = kinds.find((one) => one.id === kind.id);
  const code = own && fitsInstead(own, kinds, casting)[0];
  const instead = [...job.book.kinds.values()].find((one) => one.code === code);
  ctx.db.set('operation', operation.id, {
    not_needed_at: ctx.now,
    not_needed_by: personOf(ctx),
    not_needed_why: forbidden,
  });
  const drafted = instead && draftOperation(job.book, instead, casting, job.pricing, null);
  if (!(instead && drafted && 'draft' in drafted) || operation.lineId === null)
    return [`${forbidden} ${kind.words} was taken off; choose what is done instead.`];
  insertOperations(ctx.db, casting, drafted.draft.operations, {
    ticketId: job.ticket.id,
    lineId: operation.lineId as never,
    optionId: null,
    instruction: null,
    spots: [],
  });
  return [`${forbidden} ${kind.words} is now ${instead.words}; the price of its line stays.`];
}
