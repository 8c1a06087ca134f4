/** Which castings have faces to survey, and which tables of figures belong to one. */
import { FACES } from '#core/catalogue/compute/faces.ts';

/** Whether a straightedge or a dial is taken over a face of such a casting. */
export const isSurveyed = (kind: string): boolean =>
  FACES.some((face) => face.castingKinds.some((one) => one === kind));

/**
 * The face whose flatness stands in a table; null for tables without one. Undefined where the table has several faces: the
 * first the casting has is shown, the others beside it.
 */
export function faceOfTable(kind: string, table: string): string | undefined | null {
  const faces = FACES.filter((face) => Object.entries(face.tables).some(([of, code]) => of === kind && code === table));
  const [first] = faces;
  if (!first) return null;
  return faces.length === 1 || kind === 'head' ? first.code : undefined;
}
