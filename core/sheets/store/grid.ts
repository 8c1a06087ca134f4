/** The blank grid on a traveller's back: what is read at every place, to be written by hand and typed row by row. */
import type { TravellerPaper } from '../contract/papers.ts';
import type { PrintedCasting } from './castings.ts';
import type { Scene } from './scene.ts';
import { readSheets } from './spec.ts';

/** Rows that fit one page with room to write. */
const MOST_ROWS = 20;

/** Valves of a head, bores of a block: the kind of place that has the most tables. Null when nothing is read at places. */
export function readGrid(scene: Scene, casting: PrintedCasting): TravellerPaper['grid'] {
  const sheets = readSheets(scene, casting).filter(({ table }) => table.spotKind !== null);
  const byKind = Map.groupBy(sheets, ({ table }) => table.spotKind);
  const most = [...byKind.values()].sort((a, b) => b.length - a.length)[0];
  const columns = most?.[0]?.columns;
  if (!most || !columns || columns.length === 0) return null;
  const rows = most.flatMap((sheet) =>
    sheet.rows
      .filter((row) => row.shown && !row.derived)
      .map((row) => {
        const point = row.pointWords === null ? '' : `, ${row.pointWords}`;
        const stage = row.stage === 'before' ? ', found' : '';
        return `${row.words.charAt(0).toUpperCase()}${row.words.slice(1)}${point}${stage}${row.unitMark === '' ? '' : `, ${row.unitMark}`}`;
      }),
  );
  return {
    heading: 'Readings, in the order the places lie on the bench. Write them here and type them row by row',
    spots: columns.map(({ label }) => label),
    rows: [...new Set(rows)].slice(0, MOST_ROWS),
  };
}
