/** A lead's decisions on failed or close readings, given with the signature. */
import type { CastingRow } from '../../castings/store.ts';
import type { Ctx } from '../../host/implement.ts';
import { AppError, badField } from '../../kernel/errors.ts';
import type { Id, SpotId } from '../../kernel/ids.ts';
import { openBench } from '../../readings/compute/bench.ts';
import { readFacts } from '../../readings/store/facts.ts';
import { insertDecision } from '../../readings/store/readings.ts';

type Decided = Readonly<{
  quantityId: Id<'quantity'>;
  spotId: SpotId | null;
  stage: 'before' | 'after';
  point: string | null;
  words: string;
}>;

/**
 * Write the decisions down with the figure they are about.
 *
 * @throws AppError `not-allowed` when the signer is no lead.
 */
export function decide({ db, session, today }: Ctx, casting: CastingRow, decisions: readonly Decided[]): void {
  if (!session.may.has('leads:decide')) {
    throw new AppError('not-allowed', 'sign-off/lead-decides', 'A lead decides on a reading that fails. Call one.');
  }
  const bench = openBench(readFacts(db, casting.id, today));
  for (const [index, { quantityId, spotId, stage, point, words }] of decisions.entries()) {
    const code = db.one(db.q.selectFrom('quantity').select('code').where('id', '=', quantityId))?.code;
    if (code === undefined) {
      throw badField('sign-off/no-such-reading', `decisions.${index}.quantityId`, 'This reading is not on the sheet.');
    }
    const spot = bench.facts.spots.find((s) => s.id === spotId) ?? null;
    insertDecision(db, {
      casting: casting.id,
      ticket: casting.ticket_id,
      quantityId,
      spot: spotId,
      stage,
      point,
      value: bench.known(code, spot, point, stage)?.value ?? null,
      accepted: true,
      words,
    });
  }
}
