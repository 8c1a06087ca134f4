/** On what an installed height was read, so that a cup is not forgotten and an old shim is not counted twice. */
import type { ReadOn } from './model.ts';

export type HeightRead = Readonly<{
  height: number;
  readOn: ReadOn | null;
  /** Steel cup that goes under the spring; null when not known, 0 where there is none. */
  cup: number | null;
  /** The shim that was under it when it was read; null when not known. */
  oldShim: number | null;
}>;

export type HeightFound =
  | Readonly<{ height: number; note: string | null }>
  /** What must be known first. */
  | Readonly<{ missing: string }>;

/**
 * The height from where new shims will lie, all old ones out.
 *
 * - bare pocket: a cup goes in and takes its thickness;
 * - cup: as it stands;
 * - cup and shim: the old shim comes out and gives its thickness back.
 */
export function heightForShims({ height, readOn, cup, oldShim }: HeightRead): HeightFound {
  if (readOn === 'bare_pocket') {
    if (cup === null) return { missing: 'Read on the bare pocket: measure the cup.' };
    return { height: height - cup, note: cup === 0 ? null : 'read on the bare pocket, cup taken off' };
  }
  if (readOn === 'cup_and_shim') {
    if (oldShim === null) return { missing: 'Read on cup and shim: measure the old shim.' };
    return { height: height + oldShim, note: 'read on cup and shim, old shim added back' };
  }
  return { height, note: null };
}
