/** What is to be done about the places that do not pass, in a few words each and then step by step. */
import { stepsForWord } from '../../catalogue/compute/limits-by-word.ts';
import { showExact } from '../../kernel/measure-show.ts';
import { STEPS_TOO_TALL, STEPS_WEAK, shortOrTall, stepsTooShort } from './advice.ts';
import type { Bench } from './bench.ts';
import type { Placed } from './columns.ts';
import { shimTaskOf } from './formulas/springs.ts';
import { isReplaced } from './replaced.ts';
import type { Cell, Column, SheetRow, ToDo } from './sheet-model.ts';
import type { Doing } from './steps/step.ts';
import { STEPS } from './steps.ts';

/** One entry per failed or close figure, in bench order; empty when everything passes or is not measured. */
export function toDoOf(
  bench: Bench,
  columns: readonly Column[],
  rows: readonly SheetRow[],
  places: readonly Placed[],
): readonly ToDo[] {
  const said = new Set<string>();
  const isFirst = (row: SheetRow, column: Column): boolean => {
    const key = `${row.key}|${column.group}`;
    const isRepeated = STEPS[row.quantity]?.once === true && said.has(key);
    said.add(key);
    return !isRepeated;
  };
  return columns.flatMap((column, index) =>
    rows.flatMap((row) => {
      const cell = row.cells[index];
      if (!cell || isReplaced(rows, row, index)) return [];
      const place = places[index];
      const doing = needsDoing(cell) ? doingFor(bench, row, cell, place) : doubtOn(bench, row, cell, place);
      return doing && isFirst(row, column) ? [{ spot: column.spot, label: column.label, ...doing }] : [];
    }),
  );
}

/** A figure that no limit judges and that looks wrong all the same. */
function doubtOn(bench: Bench, row: SheetRow, cell: Cell, place: Placed | undefined): Doing | null {
  const doubt = STEPS[row.quantity]?.doubt;
  if (!doubt || cell.value === null || cell.decision?.accepted === true) return null;
  return doubt(cell.value, bench.look({ spot: place?.spot ?? null, stage: row.stage }));
}

const needsDoing = (cell: Cell): boolean =>
  (cell.verdict?.name === 'fail' || cell.verdict?.name === 'too close to call' || cell.state === 'two readings') &&
  cell.decision?.accepted !== true;

function doingFor(bench: Bench, row: SheetRow, cell: Cell, place: Placed | undefined): Doing {
  if (cell.state === 'two readings') {
    return { words: `${row.words} read twice: choose which one stands`, steps: ['Choose one, or measure again.'] };
  }
  if (cell.verdict?.word !== undefined) {
    return { words: `${row.words} ${cell.text}: ${cell.word}`, steps: stepsForWord(cell.verdict.word) };
  }
  if (cell.verdict?.name === 'too close to call') {
    return {
      words: `${row.words} ${cell.text} too close to call`,
      steps: ['Measure again.', 'Take a finer gauge.', 'Or a lead decides, by name.'],
    };
  }
  if (row.quantity === 'height-with-shim' && place) return heightDoing(bench, cell, place);
  if (row.quantity === 'spring-strength' || row.quantity === 'seat-load') {
    return {
      words: `${row.words} ${cell.text}${row.unitMark === '' ? '' : ` ${row.unitMark}`}: ${cell.word}`,
      steps: cell.verdict?.direction === 'under' ? STEPS_WEAK : [],
    };
  }
  return { words: `${row.words} ${cell.text}: ${cell.word}`, steps: stepsFor(row.quantity, cell) };
}

/** What the lists of `steps` say of a figure past its limit; nothing for quantities without advice. */
function stepsFor(quantity: string, { verdict }: Cell): readonly string[] {
  const { over = [], under = [] } = STEPS[quantity] ?? {};
  return verdict?.direction === 'under' ? under : over;
}

function heightDoing(bench: Bench, cell: Cell, place: Placed): Doing {
  const look = bench.look({ spot: place.spot, stage: 'after' });
  const task = shimTaskOf(look);
  const limit = bench.limit('height-with-shim', 'after', place.spot?.side ?? null)?.limit;
  const isAluminium = bench.facts.casting.material === 'aluminium';
  if (task && limit) {
    const { target, stock } = task;
    const reach = (end: number | null) => (end === null ? 0 : Math.abs(end - target));
    const need = task.height - target;
    const which = shortOrTall(need, stock.maxStack, need < 0 ? reach(limit.low) : reach(limit.high));
    if (which === 'too tall') {
      const most = showExact(stock.maxStack, stock.unit, 1);
      return { words: `too tall for ${most} of shims: seat insert`, steps: STEPS_TOO_TALL };
    }
    if (which === 'too short') {
      return { words: 'too short without a shim: locks, cup and valve first', steps: stepsTooShort(isAluminium) };
    }
  }
  const isUnder = cell.verdict?.direction === 'under';
  return isUnder
    ? { words: 'too short: take shims out', steps: stepsTooShort(isAluminium) }
    : { words: 'too tall: the shims in stock do not meet it', steps: STEPS_TOO_TALL };
}
