/** What goes to the host for one entry: a new reading, one in place of another, or taking one back. */
import type { ReadOn } from '#core/readings/compute/model.ts';
import type { ReadingShown } from '#core/readings/compute/sheet-model.ts';
import type { Entry, NewEntry, Parcel } from '../../client/outbox.ts';
import { columnKey, placeOf, type Spot } from './reading-view.ts';

/** How a figure was entered. */
export type Typing = Readonly<{
  text: string;
  tool: number | null;
  readOn: ReadOn | null;
  operation: number | null;
  /** A UTC moment. */
  takenAt: string;
  /** The person has answered the question about an unlikely figure. */
  sure?: boolean;
}>;

const ADD = 'readings/add-readings';
const SUPERSEDE = 'readings/supersede-reading';
const TAKE_BACK = 'readings/take-back-reading';

/**
 * The entry for a typed figure; null when the same figure already stands there.
 *
 * `waiting` is what this tablet still holds for the same cell: the new figure then follows it instead of doubling it.
 */
export function entryFor(spot: Spot, typing: Typing, waiting: Entry | undefined, key: string): NewEntry | null {
  const { sheet, row, column, cell } = spot;
  const standing = cell?.reading ?? null;
  if (!waiting && standing && sameFigure(standing, typing.text)) return null;
  const figure = {
    typed: typing.text,
    unit: row.unit,
    tool: typing.tool,
    readOn: row.quantity === 'installed-height' ? typing.readOn : null,
    takenAt: typing.takenAt,
    sure: typing.sure ?? false,
  };
  const fresh: Parcel = {
    name: ADD,
    input: {
      casting: sheet.casting.id,
      operation: typing.operation,
      rows: [{ quantity: row.quantity, spot: column.spot, point: row.point, stage: row.stage, ...figure }],
    },
  };
  const common = { key, place: placeOf(sheet.casting.id, row, columnKey(column)), shown: typing.text };
  if (waiting)
    return { ...common, parcel: fresh, after: { key: waiting.key, parcel: { name: SUPERSEDE, input: figure } } };
  if (standing) return { ...common, parcel: { name: SUPERSEDE, input: { reading: standing.id, ...figure } } };
  return { ...common, parcel: fresh };
}

const sameFigure = (standing: ReadingShown, text: string): boolean => standing.typed === text.trim();

/** One entry that can be undone: what stood there before it. */
export type Undoable = Readonly<{
  key: string;
  place: string;
  row: string;
  column: string;
  text: string;
  was: ReadingShown | null;
}>;

/** Puts back what stood before: the earlier figure again, or nothing. Null when there is nothing to take back. */
export function undoFor(undo: Undoable, standing: ReadingShown | null, waiting: boolean, key: string): NewEntry | null {
  const { was, place } = undo;
  const back: Parcel = was
    ? { name: SUPERSEDE, input: { typed: was.typed, unit: was.unit, readOn: was.readOn, sure: true } }
    : { name: TAKE_BACK, input: {} };
  const common = { key, place, shown: was?.text ?? '' };
  if (waiting) return { ...common, parcel: null, after: { key: undo.key, parcel: back } };
  if (!standing) return null;
  return { ...common, parcel: { name: back.name, input: { ...back.input, reading: standing.id } } };
}

/** Takes the reading that stands in a cell back, so that it reads as not measured. */
export const takeBackFor = (place: string, standing: ReadingShown, key: string): NewEntry => ({
  key,
  place,
  shown: '',
  parcel: { name: TAKE_BACK, input: { reading: standing.id } },
});

/** What was kept here and not yet sent, by place; the last entry of a place wins. */
export function waitingByPlace(entries: readonly Entry[]): ReadonlyMap<string, string> {
  return new Map(entries.filter((entry) => !entry.refused).map((entry) => [entry.place, entry.shown]));
}

/** The last unsent entry of a place, and the refused one, if any. */
export const entriesAt = (
  entries: readonly Entry[],
  place: string,
): { waiting: Entry | undefined; refused: Entry | undefined } => ({
  waiting: entries.findLast((entry) => entry.place === place && !entry.refused),
  refused: entries.findLast((entry) => entry.place === place && entry.refused !== undefined),
});

/** Nothing to measure here: the cell shows a dash. */
export const notHereFor = (spot: Spot, operation: number | null, key: string): NewEntry => {
  const { sheet, row, column } = spot;
  const cell = { quantity: row.quantity, spot: column.spot, point: row.point, stage: row.stage };
  return {
    key,
    place: placeOf(sheet.casting.id, row, columnKey(column)),
    shown: '\u2013',
    parcel: { name: 'readings/mark-not-applicable', input: { casting: sheet.casting.id, operation, cells: [cell] } },
  };
};
