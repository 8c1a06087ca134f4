/** A metal that is confirmed or corrected: what it forbids gives way to what fits, before anybody starts it. */
import { metalView } from '../../castings/compute.ts';
import { type CastingRow, forbiddenBy, getCasting } from '../../castings/store.ts';
import { fitsInstead, metalClassOf, metalForbids } from '../../catalogue/compute/fit.ts';
import { fitKindsOf } from '../../catalogue/store/fit-facts.ts';
import type { WriteDb } from '../../db/query.ts';
import { type Ctx, type Handlers, personOf } from '../../host/implement.ts';
import { ruleBroken } from '../../kernel/errors.ts';
import type { OperationId, WorkLineId } from '../../kernel/ids.ts';
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
      // First, because the file itself refuses a metal that does not bear the work on it.
      const warnings = material === row.material ? [] : fitToMetal(ctx, row, material);
      const version = db.step('casting', row.id, row.version, {
        material,
        material_how: how,
        metal_confirmed_at: now,
        metal_confirmed_by: personOf(ctx),
      });
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
 * Make the work of a casting fit another metal: what it forbids is closed with the reason, and the operation that fits stands
 * in its place on the same line, whose price was agreed and does not move by itself.
 *
 * @returns sentences for the person; those about work that was begun already come first
 */
export function fitToMetal(
  ctx: Ctx,
  row: Pick<CastingRow, 'id' | 'ticket_id'>,
  material: CastingRow['material'],
): string[] {
  const { db } = ctx;
  if (forbiddenBy(db, row.id, material).length === 0) return [];
  const opened = openJob(db, row.ticket_id);
  const castings = opened.castings.map((one) =>
    one.id === row.id ? { ...one, material, metal: metalClassOf(material) } : one,
  );
  const job = { ...opened, castings };
  const casting = castings.find((one) => one.id === row.id);
  if (!casting) return [];
  const words = openOperations(db, row.id).flatMap((operation) => replaceOne(ctx, job, casting, operation));
  job.touched.add(row.id);
  finishJob(db, job);
  return words.sort((a, b) => Number(b.startsWith('STOP')) - Number(a.startsWith('STOP')));
}

const openOperations = (db: WriteDb, casting: CastingRow['id']): Open[] =>
  db
    .sql<{ id: OperationId; kindId: number; lineId: number | null; begun: number }>(
      `SELECT o.id, o.operation_kind_id AS kindId, o.work_line_id AS lineId,
         EXISTS (SELECT 1 FROM operation_run r WHERE r.operation_id = o.id) AS begun
       FROM operation o LEFT JOIN work_line l ON l.id = o.work_line_id
       WHERE o.casting_id = ? AND o.finished_at IS NULL AND o.not_needed_at IS NULL ORDER BY o.position`,
      casting,
    )
    .map((one) => ({ ...one, begun: one.begun === 1 }));

/** Harmful groups; an unknown metal keeps its safe wash, which the bench holds until the metal is known. */
const HARMFUL = ['caustic', 'magnet'];

function replaceOne(ctx: Ctx, job: Job, casting: TicketCasting, operation: Open): string[] {
  const kind = job.book.kinds.get(operation.kindId);
  const forbidden = kind?.groups.some((group) => HARMFUL.includes(group)) && metalForbids(kind, casting.metal);
  if (!(kind && forbidden)) return [];
  takeOff(ctx, operation, forbidden);
  const instead = fittingOf(ctx, job, casting, kind.code);
  const drafted = instead && draftOperation(job.book, instead, casting, job.pricing, null);
  const stop = operation.begun ? [`STOP: ${kind.words} was begun on ${casting.tag}. ${forbidden}`] : [];
  if (!(instead && drafted && 'draft' in drafted) || operation.lineId === null) {
    return [...stop, `${forbidden} ${capital(kind.words)} was taken off; choose what is done instead.`];
  }
  insertOperations(ctx.db, casting, drafted.draft.operations, {
    ticketId: job.ticket.id,
    lineId: operation.lineId as WorkLineId,
    optionId: null,
    instruction: null,
    spots: [],
  });
  return [...stop, `${forbidden} ${capital(kind.words)} is now ${instead.words}; the price of its line stays.`];
}

/** Closed with the reason; whoever is on it is off it. */
function takeOff(ctx: Ctx, operation: Open, why: string): void {
  const { db, now } = ctx;
  db.run(
    db.q
      .updateTable('operation_run')
      .set({ ended_at: now, end_kind: 'stopped' })
      .where('operation_id', '=', operation.id)
      .where('ended_at', 'is', null),
  );
  db.set('operation', operation.id, { not_needed_at: now, not_needed_by: personOf(ctx), not_needed_why: why });
}

function fittingOf({ db }: Ctx, job: Job, casting: TicketCasting, code: string) {
  const kinds = fitKindsOf(db, casting.kind);
  const own = kinds.find((one) => one.code === code);
  const wanted = own && fitsInstead(own, kinds, casting)[0];
  return [...job.book.kinds.values()].find((one) => one.code === wanted);
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
