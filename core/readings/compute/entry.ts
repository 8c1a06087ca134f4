/**
 * What becomes of a figure, a word or a count that somebody types into a cell: kept, asked about, doubted or refused. The
 * screen asks this while typing and the host decides by it, so that both always say the same.
 */
import { choicesFor } from '../../catalogue/compute/choices-by-metal.ts';
import { type Field, type ReadFigure, readTyped, type Typed } from '../../kernel/measure.ts';
import { type Doubt, doubtOf } from '../../kernel/measure-doubt.ts';
import { showTyped, withMark } from '../../kernel/measure-show.ts';
import { type UnitCode, unitShape } from '../../kernel/measure-units.ts';
import type { Bench } from './bench.ts';
import type { CellPlace } from './cells.ts';
import { dialDoubt } from './deck-doubt.ts';
import type { Reading, ReadingKind } from './model.ts';
import { entryRuleOf, rowDecimals } from './row-units.ts';
import { readStack } from './shims.ts';

/** The part of a reading that the typed text decides. */
export type Kept = Readonly<Pick<Reading, 'kind' | 'typed' | 'unit' | 'value' | 'mark'>>;

export type Entry = Readonly<{
  read: Typed;
  /** `= 0.3438 in` where what is kept is not what was typed; else empty. */
  becomes: string;
  doubt: Doubt | null;
  /** Null when nothing can be kept yet. */
  keep: Kept | null;
}>;

const nothing = (read: Typed): Entry => ({ read, becomes: '', doubt: null, keep: null });
const refused = (code: string, message: string): Entry =>
  nothing({ kind: 'refused', code: `readings/${code}`, message });

/** Read what was typed into a cell. `unit`: what the sender says the row is in; the cell's own otherwise. */
export function readEntry(bench: Bench, place: CellPlace, text: string, unit: UnitCode | null): Entry {
  const { quantity } = place;
  if (quantity.derived !== null && !quantity.orTyped)
    return refused('computed', `${quantity.words} is computed. Type what it is made from.`);
  if (quantity.family === 'choice' || quantity.family === 'text') return readWords(bench, place, text);
  const rowUnit = unit !== null && unitShape(unit).family === quantity.family ? unit : place.unit;
  if (rowUnit === null) return refused('no-unit', 'No unit is known for this row. Type it behind the figure.');
  const read = readTyped(text, fieldOf(bench, place, rowUnit));
  if (read.kind !== 'figure') return nothing(read);
  const { kind: _, ...kept } = read;
  return {
    read,
    becomes: becomesOf(text, read),
    doubt: quantity.countsSteps ? dialDoubt(bench, place, read) : doubtOf(read, expectedAt(bench, place)),
    keep: { ...kept, kind: 'number', mark: quantity.compared ? 'compared' : kept.mark },
  };
}

function readWords(bench: Bench, { quantity }: CellPlace, text: string): Entry {
  const typed = text.normalize('NFC').trim();
  if (typed === '') return nothing({ kind: 'empty' });
  if (quantity.code === 'shims-fitted' && readStack(typed, bench.facts.shims) === null) {
    const sizes = bench.facts.shims.flatMap((stock) => stock.thicknesses.map((it) => it.text)).join(', ');
    return refused('no-such-shim', `Write none, or sizes the shop has (${sizes}), for example 0.015+0.030.`);
  }
  const { choices, why } = choicesFor(quantity, bench.facts.casting.material);
  if (why !== null) return refused('not-on-this-metal', why);
  if (choices.length > 0 && !choices.includes(typed)) {
    return refused('no-such-choice', `Choose one of: ${choices.join(', ')}.`);
  }
  const kind: ReadingKind = quantity.family === 'choice' ? 'choice' : 'text';
  return { ...nothing({ kind: 'empty' }), keep: { kind, typed, unit: null, value: null, mark: 'entered' } };
}

function fieldOf(bench: Bench, place: CellPlace, unit: UnitCode): Field {
  const { quantity, stage, spot } = place;
  const rule = entryRuleOf(quantity, unit);
  return {
    family: quantity.family,
    unit,
    ...(rule && { rule }),
    target: bench.limit(quantity.code, stage, spot?.side ?? null)?.limit.target ?? null,
    decimals: { in: rowDecimals(quantity, 'in'), mm: rowDecimals(quantity, 'mm') },
    signed: quantity.signed,
  };
}

function expectedAt(bench: Bench, place: CellPlace) {
  const { quantity, stage, spot, point } = place;
  const limit = bench.limit(quantity.code, stage, spot?.side ?? null)?.limit;
  const before = bench.rows(quantity.code, spot, point, stage).current?.value ?? null;
  const beside = limit ? null : sizeBeside(bench, place);
  return {
    target: limit?.target ?? null,
    low: limit?.low ?? null,
    high: limit?.high ?? null,
    before: before ?? beside,
  };
}

/** Alike places of one casting have alike sizes. Smaller lengths are gaps and cuts, which may well be several times another. */
const LEAST_SIZE = 2_000_000;

/** Where no limit says what to expect: the size read last at another place of the same kind; null for none. */
function sizeBeside(bench: Bench, { quantity, spot, point, stage }: CellPlace): number | null {
  if (quantity.family !== 'length' || spot === null) return null;
  const others = bench.facts.spots.filter((it) => it.kind === spot.kind && it.id !== spot.id);
  const sizes = others.flatMap((it) => {
    const read = bench.rows(quantity.code, it, point, stage).current;
    return read?.value != null && read.value >= LEAST_SIZE ? [read] : [];
  });
  return sizes.toSorted((a, b) => b.id - a.id)[0]?.value ?? null;
}

/** Shown before it is kept, whenever the program put something in that the fingers did not. */
function becomesOf(text: string, read: ReadFigure): string {
  const shown = showTyped(read.typed, read.value, read.unit);
  return text.trim() === shown ? '' : `= ${withMark(shown, read.unit)}`;
}
