/** What start, stop and done share: the operations acted on with their state, and how a refusal is said. */
import type { ReadDb } from '../../db/query.ts';
import { type Ctx, type Done, NotedRefusal } from '../../host/implement.ts';
import { AppError, type ErrorDetails, notFound, ruleBroken } from '../../kernel/errors.ts';
import type { OperationId, TicketId } from '../../kernel/ids.ts';
import type { CastingFact, OperationFact } from '../../state/compute/facts.ts';
import type { OperationNow } from '../../state/compute/operations.ts';
import type { Reason } from '../../state/compute/reasons.ts';
import type { TicketNow } from '../../state/compute/tickets.ts';
import { readTicketNow, ticketOfOperation } from '../../state/store/load-facts.ts';
import { capital } from '../compute/bench-words.ts';
import { insertIncident } from '../store.ts';

export type Acting = Readonly<{
  operation: OperationFact;
  state: OperationNow;
  casting: CastingFact;
  ticket: TicketId;
  now: TicketNow;
}>;

/** An operation with the state of its ticket. @throws AppError `not-found` */
export function readActing(db: ReadDb, id: OperationId): Acting {
  const ticket = ticketOfOperation(db, id);
  const now = readTicketNow(db, ticket);
  const { facts, castings } = now.known;
  const operation = facts.operations.find((o) => o.id === id);
  const state = now.operations.find((o) => o.id === id);
  const casting = operation && castings.get(operation.castingId);
  if (!operation || !state || !casting) throw notFound('floor/no-such-operation', 'This operation');
  return { operation, state, casting, ticket, now };
}

/** "Seat cut on 30918". */
export const named = ({ operation, casting }: Acting): string => `${capital(operation.kind.words)} on ${casting.tag}`;

const CODES: Readonly<Record<Reason['kind'], string>> = {
  rule: 'floor/order-rule',
  approval: 'floor/not-approved',
  hold: 'floor/on-hold',
  identity: 'floor/identity-in-doubt',
  part: 'floor/part-missing',
  metal: 'floor/metal',
  items: 'floor/still-on',
  fit: 'floor/does-not-fit',
  reading: 'floor/not-measured',
  operation: 'floor/not-now',
};

/** The refusal of the first stop, the others in its facts. Wrong or unknown metal is kept as a near miss. */
export function refusalOf(acting: Acting, stops: readonly Reason[], tried: string): AppError | NotedRefusal {
  const [first] = stops;
  if (!first) throw new RangeError('a refusal needs a reason');
  const details: ErrorDetails = {
    facts: { operation: acting.operation.id, tag: acting.casting.tag, stops },
    ...(first.wayOn && {
      offers: [
        {
          words: first.wayOn.words,
          ...(first.wayOn.request !== null && { request: first.wayOn.request, input: first.wayOn.input }),
        },
      ],
    }),
  };
  const refusal = ruleBroken(CODES[first.kind], first.words, details);
  const nearMiss = stops.find((stop) => stop.kind === 'metal' && stop.short !== 'metal not confirmed');
  return nearMiss
    ? new NotedRefusal(refusal, (ctx) => noteNearMiss(ctx, acting, `${tried}: ${nearMiss.words}`))
    : refusal;
}

function noteNearMiss({ db }: Ctx, { casting, ticket, operation }: Acting, words: string): Done<null> {
  const id = insertIncident(db, { casting_id: casting.id, ticket_id: ticket, kind: 'near_miss', words });
  return {
    output: null,
    activity: [
      {
        subject: ['incident', id],
        ticket,
        words: `Near miss on ${casting.tag}: ${operation.kind.words} was tried and refused`,
        after: { words },
      },
    ],
    touched: [ticket],
  };
}

/** What stops it although it is begun: danger, and not knowing which casting it is. */
export const dangers = (state: OperationNow): Reason[] =>
  state.stops.filter((stop) => stop.kind === 'metal' || stop.kind === 'items' || stop.kind === 'identity');

/** @throws AppError when the operation is done, not needed, declined or redone: there is nothing to act on. */
export function refuseEnded({ operation, state, casting }: Acting): void {
  if (operation.finishedAt !== null) {
    throw ruleBroken('floor/already-done', `${capital(operation.kind.words)} on ${casting.tag} is done already.`);
  }
  if (!state.live) {
    throw ruleBroken(
      'floor/not-live',
      `${capital(operation.kind.words)} on ${casting.tag} does not count any more: ${state.word}. Load the page again.`,
    );
  }
}

/** @throws AppError `conflict` when somebody changed the operation since the person looked. */
export function refuseStale({ operation }: Acting, seen: number): void {
  if (operation.version === seen) return;
  throw new AppError(
    'conflict',
    'host/changed-meanwhile',
    'Somebody else changed this while you had it open. Look at the new state, then do it again.',
  );
}
