/** Puts what was asked for on the castings: operations, packages, and words that become one of them. */
import type { z } from 'zod';
import { type Fit, fitOf, fitsInstead } from '../../catalogue/compute/fit.ts';
import { findIdByCode } from '../../catalogue/store/codes.ts';
import { fitKindsOf } from '../../catalogue/store/fit-facts.ts';
import type { WriteDb } from '../../db/query.ts';
import { badField } from '../../kernel/errors.ts';
import type { CastingId, Id } from '../../kernel/ids.ts';
import { addOperation, addPackage, type Job } from '../../lines/store/add-lines.ts';
import type { TicketCasting } from '../../lines/store/priced-castings.ts';
import { findSold, type Sold } from '../compute.ts';
import type { Wish } from '../contract.ts';

type Wished = z.output<typeof Wish>;
export type Result = Readonly<{
  /** What became something else, for the person at the counter. */
  notes: readonly string[];
  /** Words that are no operation; they stay as what is wanted. */
  unread: readonly string[];
}>;

/** Add one wish to the castings it names (all of them when it names none). */
export function addWish(db: WriteDb, job: Job, castings: readonly CastingId[], wish: Wished, path: string): Result {
  const on = castingsOf(job, castings, wish, path);
  if (wish.package !== undefined) return addPackageWish(db, job, on, { code: wish.package, said: wish.said }, path);
  if (wish.operation !== undefined) {
    const id = findIdByCode(db, 'operation_kind', wish.operation);
    if (id === undefined)
      throw badField(
        'check-in/no-such-operation',
        `${path}.operation`,
        `The catalogue has no operation "${wish.operation}". Choose one from the list.`,
      );
    for (const casting of on) addOne(db, job, casting.id, id, wish, path);
    return NOTHING;
  }
  if (wish.said === null) throw badField('check-in/empty-wish', path, 'Say what is wanted, or leave the line out.');
  return addSaid(db, job, on, { ...wish, said: wish.said }, path);
}

const NOTHING: Result = { notes: [], unread: [] };

function castingsOf(job: Job, castings: readonly CastingId[], wish: Wished, path: string): TicketCasting[] {
  const wanted = wish.castings.length === 0 ? castings : wish.castings.map((index) => castings[index]);
  return wanted.map((id) => {
    const casting = job.castings.find((one) => one.id === id);
    if (!casting)
      throw badField(
        'check-in/no-such-casting',
        `${path}.castings`,
        'This wish names a casting that is not in the list. Look at it again.',
      );
    return casting;
  });
}

function addOne(db: WriteDb, job: Job, casting: CastingId, id: Id<'operation_kind'>, wish: Wished, path: string): void {
  const quantity = wish.quantity ?? null;
  addOperation(db, job, casting, { operationKindId: id, quantity, countNote: wish.note, wishedWords: wish.said }, path);
}

/** A package is sold by casting type: one line for the castings of each type and metal. */
function addPackageWish(
  db: WriteDb,
  job: Job,
  on: readonly TicketCasting[],
  asked: Readonly<{ code: string; said: string | null }>,
  path: string,
): Result {
  const packageId = findIdByCode(db, 'package', asked.code);
  if (packageId === undefined)
    throw badField(
      'check-in/no-such-package',
      `${path}.package`,
      `The catalogue has no package "${asked.code}". Choose one from the list.`,
    );
  const groups = Map.groupBy(on, (casting) => `${casting.castingTypeId} ${casting.metal}`);
  for (const alike of groups.values()) {
    addPackage(
      db,
      job,
      alike.map((casting) => casting.id),
      { packageId, wishedWords: asked.said },
      `${path}.package`,
    );
  }
  return NOTHING;
}

/** Words alone: looked up per casting; what the metal forbids becomes what does fit. */
function addSaid(
  db: WriteDb,
  job: Job,
  on: readonly TicketCasting[],
  wish: Wished & { said: string },
  path: string,
): Result {
  const sold = findSold(wish.said, soldOf(job));
  if (!sold || on.length === 0) return { notes: [], unread: [wish.said] };
  if (sold.what === 'package') {
    const pack = job.book.packages.get(sold.id);
    return addPackageWish(db, job, on, { code: pack?.code ?? '', said: wish.said }, path);
  }
  const results = on.map((casting) => addSaidOn(db, job, casting, sold.id as Id<'operation_kind'>, wish, path));
  return {
    notes: [...new Set(results.flatMap((one) => one.notes))],
    unread: [...new Set(results.flatMap((one) => one.unread))],
  };
}

function addSaidOn(
  db: WriteDb,
  job: Job,
  casting: TicketCasting,
  id: Id<'operation_kind'>,
  wish: Wished & { said: string },
  path: string,
): Result {
  const kinds = fitKindsOf(db, casting.kind);
  const asked = kinds.find((kind) => kind.id === id);
  const fit: Fit = asked ? fitOf(asked, casting) : { fit: 'does not arise', words: '' };
  if (asked && (fit.fit === 'normal' || fit.fit === 'special')) {
    addOne(db, job, casting.id, id, wish, path);
    return NOTHING;
  }
  const code = asked && fit.fit === 'refused' ? fitsInstead(asked, kinds, casting)[0] : undefined;
  const instead = kinds.find((kind) => kind.code === code);
  if (!instead)
    return {
      notes: [`“${wish.said}” on ${casting.tag}: ${fit.words || 'not done on this casting.'} Kept in their words.`],
      unread: [wish.said],
    };
  addOne(db, job, casting.id, instead.id, wish, path);
  return { notes: [`“${wish.said}” on ${casting.tag}: ${fit.words} It is now: ${instead.words}.`], unread: [] };
}

function soldOf(job: Job): Sold[] {
  const kinds = [...job.book.kinds.values()].filter((kind) => !kind.retired);
  const packages = [...job.book.packages.values()].filter((pack) => !pack.retired);
  return [
    ...packages.map((one) => ({
      what: 'package' as const,
      id: one.id as number,
      names: [one.shopWords, one.customerWords, one.code],
    })),
    ...kinds.map((one) => ({
      what: 'operation' as const,
      id: one.id as number,
      names: [one.words, one.customerWords, one.code],
    })),
  ];
}
