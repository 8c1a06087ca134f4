/** One leaf an operation, like a feeler set; always with its words: `5 of 13 done`. */
import { classes } from './class-names.ts';
import css from './leaves.module.css';

/** filled, dye with a scribed line, paint with a dot, edge, dashed, or left out of the work. */
export type Leaf = 'done' | 'started' | 'stopped' | 'waiting' | 'not-approved' | 'not-needed';

export function Leaves({ leaves }: { leaves: readonly Leaf[] }) {
  return (
    <span className={css.leaves} aria-hidden="true">
      {leaves.map((leaf, position) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a leaf is its place in the traveller's order.
        <i key={position} className={classes(css[leaf])} />
      ))}
    </span>
  );
}

/** `5 of 13 done`; operations not needed are not counted. */
export function leafWords(leaves: readonly Leaf[]): string {
  const live = leaves.filter((leaf) => leaf !== 'not-needed');
  return `${live.filter((leaf) => leaf === 'done').length} of ${live.length} done`;
}

/** The leaf of an operation's word as the shop says it. */
export function leafOf(word: string): Leaf {
  if (word === 'done' || word === 'signed' || word === 'redone') return 'done';
  if (word === 'started' || word === 'stopped') return word;
  if (word === 'not needed' || word === 'declined') return 'not-needed';
  return word === 'requested' || word === 'quoted' ? 'not-approved' : 'waiting';
}
