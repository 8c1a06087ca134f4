/** What was recorded outside every table of a casting: counts, results, words. One line each, so that nothing kept is lost. */
import { isShopOnly } from '../../catalogue/compute/bench-tables.ts';
import { FACES, faceQuantities } from '../../catalogue/compute/faces.ts';
import { withMark } from '../../kernel/measure-show.ts';
import { cellAt } from '../../readings/compute/cells.ts';
import { cellKey } from '../../readings/compute/current.ts';
import type { Reading } from '../../readings/compute/model.ts';
import { placeAt } from '../../readings/compute/place.ts';
import type { FactRow, FactTable } from '../contract/reading-tables.ts';
import { isRead, type Measured, replacedIn } from './measured.ts';
import { marksOf } from './table-notes.ts';
import { list, sentence } from './words.ts';

/** A survey prints its own readings. */
const OF_SURVEYS = new Set(FACES.flatMap((face) => Object.values(faceQuantities(face)) as string[]));

/** Empty when everything stands in a table. */
export function recordTable(measured: Measured): FactTable[] {
  const { facts, tables } = measured;
  const inTables = new Set(
    tables.flatMap(({ rows }) => rows.map((row) => `${row.quantity}|${row.point ?? ''}|${row.stage}`)),
  );
  const outside = facts.readings.filter(
    ({ quantity, point, stage }) =>
      !OF_SURVEYS.has(quantity) && !isShopOnly(quantity) && !inTables.has(`${quantity}|${point ?? ''}|${stage}`),
  );
  const rows = [...Map.groupBy(outside, cellKey).values()].flatMap(([first]) =>
    first ? recordRow(measured, first) : [],
  );
  return rows.length === 0 ? [] : [{ heading: 'Also recorded', rows, notes: [] }];
}

function recordRow(measured: Measured, reading: Reading): FactRow[] {
  const place = placeAt(measured.bench, reading);
  if (!place) return [];
  const cell = cellAt(measured.bench, place);
  const replaced = replacedIn(measured, cell).map(({ words }) => words);
  if (!isRead(cell) && replaced.length === 0) return [];
  const point = place.quantity.points.find(({ code }) => code === place.point)?.words;
  const text = cell.unit === null || cell.state !== 'read' ? cell.text : withMark(cell.text, cell.unit);
  const figure = { text: isRead(cell) ? text : 'not measured' };
  return [
    {
      words: list([[place.spot?.label, sentence(place.quantity.words)].filter(Boolean).join(' '), point]),
      small: list([...marksOf(cell), ...replaced]),
      found: place.stage === 'before' ? figure : null,
      after: place.stage === 'after' ? figure : null,
    },
  ];
}
