/** Sizes wanted: the limits that judge a casting, in both units, with where they come from. */
import { showBoth, typedDecimals } from '../../kernel/measure-show.ts';
import { type UnitCode, unitShape } from '../../kernel/measure-units.ts';
import { composeSheet } from '../../readings/compute/sheet.ts';
import type { LimitShown, Sheet, SheetRow } from '../../readings/compute/sheet-model.ts';
import { readFacts } from '../../readings/store/facts.ts';
import { findTable, listTableCodes } from '../../readings/store/known.ts';
import type { TravellerPaper } from '../contract/papers.ts';
import type { PrintedCasting } from './castings.ts';
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

/** Every bench table of a casting, filled in. */
export function readSheets({ db, today }: Scene, casting: PrintedCasting): Sheet[] {
  const facts = readFacts(db, casting.id, today);
  return listTableCodes(db, casting.kind).flatMap((code) => {
    const table = findTable(db, code, casting.id);
    const has = table && (table.spotKind === null || facts.spots.some((spot) => spot.kind === table.spotKind));
    return has ? [composeSheet(facts, table)] : [];
  });
}

/** One row a quantity that has a limit, the source of all last. */
export function readSpec(scene: Scene, casting: PrintedCasting): Spec[] {
  const rows = readSheets(scene, casting).flatMap((sheet) => sheet.rows.filter((row) => row.limits.length > 0));
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

const SIDES = { I: 'I ', E: 'E ', any: '' };

function specOf(row: SheetRow): Spec {
  const texts = row.limits.map((limit) => ({ side: SIDES[limit.side], ...both(limit) }));
  return {
    label: row.words.charAt(0).toUpperCase() + row.words.slice(1),
    chosen: texts.map(({ side, first }) => `${side}${first}`).join(', '),
    other: texts
      .map(({ second }) => second)
      .filter(Boolean)
      .join(', '),
  };
}

/** A limit in its own unit and, computed from the exact value, in the other. */
function both(limit: LimitShown): { first: string; second: string } {
  const mark = unitShape(limit.unit).mark;
  const first = [limit.text === '' ? (limit.targetText ?? '') : limit.text, mark]
    .filter(Boolean)
    .join(mark === '°' ? '' : ' ');
  const decimals = typedDecimals(limit.targetText ?? limit.text.split(' ').at(-1) ?? '');
  const figures = [limit.low, limit.high].filter((value) => value !== null);
  const values = figures.length === 0 && limit.target !== null ? [limit.target] : figures;
  const others = values.flatMap((value) => showBoth(value, limit.unit, decimals).second ?? []);
  return { first, second: others.length === 2 ? `${figureOf(others[0])} – ${others[1]}` : (others[0] ?? '') };
}

const figureOf = (text: string | undefined): string => text?.split(' ')[0] ?? '';

/** Unit marks of sheets, each once. */
export const unitsOf = (sheets: readonly Sheet[]): string[] => {
  const units = sheets.flatMap(({ rows }) => rows.flatMap((row) => (row.unit === null ? [] : [row.unit])));
  return [...new Set(units.map((unit: UnitCode) => unitShape(unit).mark))].filter(Boolean);
};
