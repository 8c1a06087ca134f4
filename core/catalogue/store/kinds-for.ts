/** Operations as a screen lists them, with their fit on the casting at hand. */
import type { ReadDb } from '../../db/query.ts';
import type { CastingTypeId } from '../../kernel/ids.ts';
import { type FitCasting, type FitKind, fitOf, type Material } from '../compute/fit.ts';
import { fitCastingOf, fitKindsOf } from './fit-facts.ts';
import { listKinds, listUses } from './operations.ts';

type For = Readonly<{ castingKind: string; material: Material; castingType?: CastingTypeId | null | undefined }>;

/** All operations; with `asked` only those done on that kind of casting, with fit, count and the reason in words. */
export function listKindsFor(db: ReadDb, asked: For | undefined) {
  const uses = listUses(db);
  const fitKinds = new Map(asked ? fitKindsOf(db, asked.castingKind).map((k) => [k.id, k]) : []);
  const casting = asked?.castingType ? fitCastingOf(db, asked.castingType, asked.material) : undefined;
  const kinds = listKinds(db).map(({ retiredOn, position: _, ...kind }) => ({
    ...kind,
    retired: retiredOn !== null,
    uses: uses
      .filter((u) => u.kind === kind.id)
      .map(({ id, castingKind, chargeUnit, countFrom }) => ({ id, castingKind, chargeUnit, countFrom })),
    ...fitFields(fitKinds.get(kind.id), casting),
  }));
  return asked ? kinds.filter((k) => !k.retired && k.uses.some((u) => u.castingKind === asked.castingKind)) : kinds;
}

function fitFields(kind: FitKind | undefined, casting: FitCasting | undefined) {
  if (!kind || !casting) return { fit: null, count: kind?.countFrom === 'one' ? 1 : null, why: null };
  const { fit, words } = fitOf(kind, casting);
  return {
    fit: fit === 'does not arise' ? ('does_not_arise' as const) : fit,
    count: countOf(kind, casting),
    why: words || null,
  };
}

/** What it would be charged by; null where somebody has to say how many. */
function countOf(kind: FitKind, casting: FitCasting): number | null {
  if (kind.countFrom === null || kind.countFrom === 'ask') return null;
  return kind.countFrom === 'one' ? 1 : (casting.counts[kind.countFrom] ?? 0);
}
