/** What can be looked at instead of read: rows as bars, a bore as a profile. Chosen by what the sheet holds, never by name. */
import type { SheetRow } from '#core/readings/compute/sheet-model.ts';
import type { Bar } from '../../kit/bench-bars.tsx';
import type { ProfileAxis } from '../../kit/bench-profile.tsx';
import type { ReadingGroup } from '../../kit/bench-reading-table.tsx';
import { pointParts } from './reading-rows.ts';
import { columnKey, isWords, judgedRow, limitFor, markOf, type Spot } from './reading-view.ts';

/** A picture that can be chosen: one row across, or the readings of one quantity down the place the hand is at. */
export type Picture = Readonly<{ key: string; words: string; kind: 'bars' | 'profile'; row: SheetRow }>;

const isFigures = (row: SheetRow): boolean =>
  row.shown && !isWords(row) && row.unit !== null && row.cells.some((cell) => cell.value !== null);

/** Rows worth a picture: judged ones, and such as stand for a whole place. */
const isPictured = (row: SheetRow): boolean =>
  isFigures(row) && (row.point === null || row.limits.some((limit) => limit.text !== ''));

/** Depths that make a profile, in each axis. */
const DEPTHS = 3;

/** All pictures of a table, the profiles first. */
export function picturesOf(spot: Spot): Picture[] {
  const { sheet } = spot;
  const profiles = sheet.rows.flatMap((row, n): Picture[] => {
    const first = sheet.rows.findIndex((one) => one.quantity === row.quantity && one.stage === row.stage) === n;
    const axes = first && isFigures(row) ? profileAxes(spot, row) : [];
    if (axes.filter((axis) => axis.points.length >= DEPTHS).length < 2) return [];
    return [{ key: `profile ${row.key}`, words: capital(`${row.words} ${row.stage} work`), kind: 'profile', row }];
  });
  const bars = sheet.rows
    .filter(isPictured)
    .map((row): Picture => ({ key: row.key, words: capital(barWords(spot, row)), kind: 'bars', row }));
  return [...profiles, ...bars];
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** `taper before`; the stage only where the quantity stands at both. */
function barWords({ sheet }: Spot, row: SheetRow): string {
  const both = sheet.rows.some((one) => one.shown && one.quantity === row.quantity && one.stage !== row.stage);
  return [row.words, row.pointWords, both ? row.stage : ''].filter(Boolean).join(' ');
}

/** The picture to begin with: of what the hand is at, else the first. */
export function firstPicture(spot: Spot, pictures: readonly Picture[]): Picture | null {
  const judged = judgedRow(spot);
  return (
    pictures.find((one) => one.kind === 'profile' && one.row.quantity === spot.row.quantity) ??
    pictures.find((one) => one.row.key === judged.key) ??
    pictures.find((one) => one.row.key === spot.row.key) ??
    pictures.find((one) => one.row.limits.some((limit) => limit.text !== '')) ??
    pictures[0] ??
    null
  );
}

/** One bar for each column of the page. */
export function barsOf({ sheet }: Spot, row: SheetRow, groups: readonly ReadingGroup[]): Bar[] {
  return groups.flatMap((group) =>
    group.columns.flatMap(({ key, label }, nth): Bar[] => {
      const n = sheet.columns.findIndex((column) => columnKey(column) === key);
      const [column, cell] = [sheet.columns[n], row.cells[n]];
      if (!column || !cell) return [];
      const limit = limitFor(row, column.side);
      return [
        {
          key,
          label,
          value: cell.value,
          text: cell.text,
          mark: markOf(cell.verdict),
          words: cell.word,
          low: limit?.low ?? null,
          high: limit?.high ?? null,
          target: limit?.target ?? null,
          starts: nth === 0,
        },
      ];
    }),
  );
}

/** Readings of the row's quantity at the place of the hand: by axis, each from the top down. */
export function profileAxes({ sheet, column }: Spot, of: SheetRow): ProfileAxis[] {
  const n = sheet.columns.indexOf(column);
  const axes = new Map<string, ProfileAxis['points'][number][]>();
  for (const row of sheet.rows) {
    if (!row.shown || row.pointWords === null || row.quantity !== of.quantity || row.stage !== of.stage) continue;
    const { place, axis } = pointParts(sheet, row);
    const cell = row.cells[n];
    axes.set(axis, [...(axes.get(axis) ?? []), { words: place, value: cell?.value ?? null, text: cell?.text ?? '' }]);
  }
  return [...axes].map(([words, points]) => ({ words, points: points.toSorted((a, b) => depthOf(a) - depthOf(b)) }));
}

/** Levels from the top down as the catalogue calls them; others stand where the table has them, after the known ones. */
const LEVELS = ['top', 'a quarter down', 'middle', 'three quarters down', 'bottom'];
const depthOf = ({ words }: Readonly<{ words: string }>): number => {
  const level = LEVELS.indexOf(words);
  return level === -1 ? LEVELS.length : level;
};
