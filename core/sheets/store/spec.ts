/** Sizes wanted: the limits that judge a casting, in both units, with where they come from. */
import type { SheetRow } from '../../readings/compute/sheet-model.ts';
import { bothOf } from '../compute/both-units.ts';
import { sizesToMake } from '../compute/sizes-to-make.ts';
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
/** Then what the work wants to know, then the rest. */
function rankOf(quantity: string, wanted: ReadonlySet<string>): number {
  if (FIRST.includes(quantity)) return FIRST.indexOf(quantity);
  return wanted.has(quantity) ? FIRST.length : FIRST.length + 1;
}

/**
 * One row a quantity that has a limit, the source of all last: data of this casting and engine, and what the work wants to
 * know. Other defaults of the shop stay on the bench screen.
 */
export function readSpec(scene: Scene, casting: PrintedCasting, wanted: ReadonlySet<string>): Spec[] {
  const sheets = readSheets(scene, casting);
  const sizes = sizesToMake(sheets).map(({ label, first, second }) => ({ label, chosen: first, other: second }));
  const rows = sheets.flatMap((sheet) => {
    const isWork = sheet.rows.some((row) => row.shown && wanted.has(row.quantity));
    return sheet.rows.filter((row) => row.limits.some(({ forWhat }) => isWork || forWhat !== 'shop'));
  });
  const seen = new Set<string>();
  const once = rows.filter((row) => {
    const known = seen.has(row.quantity);
    seen.add(row.quantity);
    return !known;
  });
  once.sort((a, b) => rankOf(a.quantity, wanted) - rankOf(b.quantity, wanted));
  const shown = once.slice(0, MOST_ROWS);
  const limits = shown.flatMap((row) => row.limits);
  if (limits.length === 0)
    return [...sizes, { label: 'Sizes', chosen: 'no limit known', other: 'ask a lead before cutting' }];
  const sources = [...new Set(limits.map(({ source }) => source))];
  const unchecked = limits.some(({ checked }) => !checked) ? ', not checked by a second person' : '';
  const more = once.length > MOST_ROWS ? `, ${once.length - MOST_ROWS} more on the bench screen` : '';
  return [
    ...sizes,
    ...shown.map(specOf),
    { label: 'From', chosen: '', other: `${sources.join('; ')}${unchecked}${more}` },
  ];
}

function specOf(row: SheetRow): Spec {
  const { limit, other } = bothOf(row.limits);
  return { label: sentence(row.words), chosen: limit.replaceAll('\n', ', '), other: other.replaceAll('\n', ', ') };
}
