/** Sizes wanted: the limits that judge a casting, in both units, with where they come from. */
import type { SheetRow } from '../../readings/compute/sheet-model.ts';
import { bothOf } from '../compute/both-units.ts';
import { sentence } from '../compute/words.ts';
import type { TravellerPaper } from '../contract/papers.ts';
import type { PrintedCasting } from './castings.ts';
import { readSheets } from './measured.ts';
import type { Scene } from './scene.ts';

type Spec = TravellerPaper['spec'][number];

/** Rows of a traveller's size box; more would push the work off the page. */
const MOST_ROWS = 8;

/** What a hand needs first; the others follow in the order of the bench. Common practice, no source. */
const FIRST = [
  'stem',
  'guide-clearance',
  'seat-angle',
  'seat-width',
  'seat-runout',
  'margin',
  'installed-height',
  'height-with-shim',
  'thickness',
  'deck-flatness',
  'finish-ra',
  'bore',
  'piston-clearance',
  'main-size',
];
const rankOf = (quantity: string): number => (FIRST.includes(quantity) ? FIRST.indexOf(quantity) : FIRST.length);

/** One row a quantity that has a limit, the source of all last. */
export function readSpec(scene: Scene, casting: PrintedCasting): Spec[] {
  const rows = readSheets(scene, casting).flatMap(({ sheet }) => sheet.rows.filter((row) => row.limits.length > 0));
  const seen = new Set<string>();
  const once = rows.filter((row) => {
    const known = seen.has(row.quantity);
    seen.add(row.quantity);
    return !known;
  });
  once.sort((a, b) => rankOf(a.quantity) - rankOf(b.quantity));
  const shown = once.slice(0, MOST_ROWS).map(specOf);
  const limits = once.flatMap((row) => row.limits);
  if (limits.length === 0) return [{ label: 'Sizes', chosen: 'no limit known', other: 'ask a lead before cutting' }];
  const sources = [...new Set(limits.map(({ source }) => source))];
  const unchecked = limits.some(({ checked }) => !checked) ? ', not checked by a second person' : '';
  const more = once.length > MOST_ROWS ? `, ${once.length - MOST_ROWS} more on the bench screen` : '';
  return [...shown, { label: 'From', chosen: '', other: `${sources.join('; ')}${unchecked}${more}` }];
}

function specOf(row: SheetRow): Spec {
  const { limit, other } = bothOf(row.limits);
  return { label: sentence(row.words), chosen: limit.replaceAll('\n', ', '), other: other.replaceAll('\n', ', ') };
}
