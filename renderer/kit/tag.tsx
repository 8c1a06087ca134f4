/** The one shape that means a thing on the floor: a casting, or a box, bag or tray. Never a label or a filter. */
import { classes } from './class-names.ts';
import css from './tag.module.css';

/** What the metal of a casting is known to be. */
export type Metal = 'iron' | 'aluminium' | 'other' | 'not_known';

/** Words as printed, in capitals. The outline alone never says the metal. */
const METAL_WORDS: Readonly<Record<Metal, string>> = {
  iron: 'IRON',
  aluminium: 'ALUMINIUM',
  other: 'OTHER METAL',
  not_known: 'METAL NOT KNOWN',
};

/** The metal class of a material as stored: grey, ductile iron and steel are `iron`. Empty is not known. */
export function metalOf(material: string | null | undefined): Metal {
  if (!material || material === 'not_known') return 'not_known';
  if (material === 'aluminium') return 'aluminium';
  return material.startsWith('iron') || material === 'steel' ? 'iron' : 'other';
}

/** A tag with its full number. `metal` empty means a container; `blank` a tag that is not hung yet. */
export function Tag({
  number,
  metal,
  size = 's',
  blank = false,
}: {
  number: string | number;
  metal?: Metal | undefined;
  size?: 's' | 'm' | 'l' | 'xl';
  blank?: boolean;
}) {
  const look = tagLook(metal, blank);
  return (
    <span className={classes(css.tag, css[size], css[look])}>
      <span className={css.number}>{number}</span>
      {metal && <span className={css.spoken}>, {METAL_WORDS[metal].toLowerCase()}</span>}
    </span>
  );
}

function tagLook(metal: Metal | undefined, blank: boolean): 'iron' | 'outlined' | 'box' | 'dashed' {
  if (blank || metal === 'not_known') return 'dashed';
  if (metal === undefined) return 'box';
  return metal === 'iron' ? 'iron' : 'outlined';
}

/** Section lining in a small box and the word: even strokes iron, crossed aluminium, dotted not known. */
export function MetalMark({ metal }: { metal: Metal }) {
  return <span className={classes(css.metal, css[`lining-${metal}`])}>{METAL_WORDS[metal]}</span>;
}

/** White on black (black on white in evening light), capitals, never coloured: `ALUMINIUM - NO CAUSTIC`. */
export function WarningBar({ children }: { children: React.ReactNode }) {
  return <div className={css.bar}>{children}</div>;
}
