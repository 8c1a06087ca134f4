/** What came with a casting, as the bench reads it. */
import type { ReadDb } from '../../db/query.ts';
import { countWords, isShort, MIX_WORDS } from '../../intake/compute.ts';
import { type BenchHead, listArrivalItems, listMarks } from '../store/bench.ts';

type Row = ReturnType<typeof listArrivalItems>[number];

const counted = (row: Row) => ({
  expected: row.expected,
  counted: row.counted,
  missing: row.missing_at_arrival === 1,
});

/** Items, marks and one sentence for each thing worth knowing before the first spanner. */
export function arrivalOf(db: ReadDb, head: BenchHead) {
  const rows = listArrivalItems(db, head.id);
  const toRemove = rows.filter((row) => row.remove_before_wash === 1 && row.removed_at === null && isHere(row));
  return {
    items: rows.map((row) => ({
      id: row.id,
      words: row.words,
      expected: row.expected,
      counted: row.counted,
      countWords: countWords(counted(row)),
      container: row.label,
      removeBeforeWash: row.remove_before_wash === 1,
      removedAt: row.removed_at,
      customersOwn: row.customers_own === 1,
      marks: marksOf(row),
    })),
    cameWith: rows.filter(isHere).map(cameWithWords).join(', '),
    removeFirst: toRemove.map((row) => row.words),
    customersOwn: rows.filter((row) => row.customers_own === 1 && isHere(row)).map((row) => row.words),
    notes: notesOf(head),
    marks: listMarks(db, head.id).map((mark) => ({
      id: mark.id,
      words: [mark.shop_words, mark.words, mark.seen === 'cannot_tell' ? 'cannot tell' : null]
        .filter(Boolean)
        .join(', '),
      view: mark.view,
      x: mark.x_bp,
      y: mark.y_bp,
      seen: mark.seen,
    })),
  };
}

const isHere = (row: Row): boolean => row.missing_at_arrival === 0 && row.counted !== 0;

function marksOf(row: Row): string[] {
  const marks = [
    row.bolted_in_place === 1 ? 'bolted in place' : null,
    row.numbers_seen === 1 ? 'numbers seen' : null,
    row.arrows_seen === 1 ? 'arrows seen' : null,
    MIX_WORDS[row.mix_rule],
    row.words_more,
  ];
  return marks.filter((mark) => mark !== null);
}

/** "8 caps bolted in place", "1 dowel of 2". */
function cameWithWords(row: Row): string {
  const count = counted(row);
  const place = row.bolted_in_place === 1 ? ' bolted in place' : '';
  if (row.counted === null) return `${row.words}${place}`;
  const of = isShort(count) && row.expected !== null ? ` of ${row.expected}` : '';
  return `${row.counted} ${row.words}${of}${place}`;
}

function notesOf(head: BenchHead): string[] {
  const notes = [
    head.engine_words,
    head.came_assembled === 1 ? 'Came assembled: count the inside when it is taken apart.' : null,
    said('Dressed with', head.dress_words),
    said('Their marks', head.own_marks),
    said('They call it', head.customer_position_words),
    said('Use', head.use_words),
    said('Fuel', head.fuel_words),
    said('History', head.history_words),
    said('Earlier stamps', head.earlier_stamps),
  ];
  return notes.filter((note) => note !== null);
}

const said = (what: string, words: string | null): string | null => (words === null ? null : `${what}: ${words}`);
