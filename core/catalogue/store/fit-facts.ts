/** The catalogue in the shape the pure rules of fit and order read it. */
import type { ReadDb } from '../../db/query.ts';
import type { CastingTypeId, OperationKindId } from '../../kernel/ids.ts';
import type { FitCasting, FitKind, Material } from '../compute/fit.ts';
import { getCastingType } from './castings.ts';
import { listFits, listGroups, listKinds, listUses } from './operations.ts';

/** Every operation in use as the fit rule sees it on one kind of casting, in catalogue order. */
export function fitKindsOf(db: ReadDb, castingKind: string): (FitKind & { id: OperationKindId })[] {
  const uses = listUses(db).filter((u) => u.castingKind === castingKind);
  const fits = listFits(db);
  const groups = listGroups(db);
  return listKinds(db)
    .filter((k) => k.retiredOn === null)
    .map((k) => ({
      id: k.id,
      code: k.code,
      words: k.shopWords,
      section: k.section,
      fits: fits.filter((f) => f.kind === k.id),
      countFrom: uses.find((u) => u.kind === k.id)?.countFrom ?? null,
      groups: groups.filter((g) => g.kind === k.id).map((g) => g.code),
    }));
}

/** A casting of a type in this metal as the fit rule sees it. `valves` = intake + exhaust. */
export function fitCastingOf(db: ReadDb, type: CastingTypeId, material: Material): FitCasting {
  const t = getCastingType(db, type);
  return {
    kind: t.kind,
    material,
    camLayout: t.camLayout,
    fuel: t.fuel,
    guideStyle: t.guideStyle,
    waterJacket: t.waterJacket,
    counts: { ...t.counts, valves: (t.counts.intake_valves ?? 0) + (t.counts.exhaust_valves ?? 0) },
  };
}
