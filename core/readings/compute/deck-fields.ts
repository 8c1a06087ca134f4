/** The fields beside a grid: how it is laid out, and what a cut needs to know. Each is a reading like any other. */
import { type Face, faceQuantities, USUAL_COLUMNS, USUAL_ROWS } from '../../catalogue/compute/faces.ts';
import { type UnitCode, unitShape } from '../../kernel/measure-units.ts';
import type { Bench } from './bench.ts';
import { cellAt } from './cells.ts';
import { figureOf } from './deck-figures.ts';
import type { SurveyField } from './deck-survey-model.ts';
import { fromSheet, type Known } from './look.ts';
import { rowDecimals } from './row-units.ts';

type Wanted = Readonly<{ quantity: string; words: string; point?: string; usual?: number; isCount?: boolean }>;

/** Kept before the work; what stands there counts for after it too, but for the deck to cam line, which a cut changes. */
const STAGE = 'before';

function wantedOf(bench: Bench, face: Face): readonly Wanted[] {
  const of = faceQuantities(face);
  const { kind, camLayout } = bench.facts.casting;
  const isHeadDeck = kind === 'head' && face.code === 'deck';
  const hasCam = isHeadDeck && (camLayout === 'sohc' || camLayout === 'dohc');
  return [
    { quantity: of.columns, words: 'Columns', usual: USUAL_COLUMNS, isCount: true },
    { quantity: of.rows, words: 'Rows', usual: USUAL_ROWS, isCount: true },
    { quantity: of.length, words: 'Length' },
    { quantity: of.width, words: 'Width' },
    { quantity: of.spanLength, words: 'Span judged' },
    { quantity: 'cut-finish', words: 'Cut for the finish' },
    { quantity: of.pit, words: 'Deepest pit, groove or weld' },
    ...(isHeadDeck ? [{ quantity: 'earlier-removal', words: 'Taken off before' }] : []),
    ...(hasCam
      ? ['front', 'rear'].map((point) => ({ quantity: 'deck-to-cam', words: `Deck to cam line, ${point}`, point }))
      : []),
  ];
}

/** Every field of a face, in the order a hand fills them. */
export function fieldsOf(bench: Bench, face: Face, unit: UnitCode): readonly SurveyField[] {
  const look = bench.look({ spot: null, stage: STAGE });
  return wantedOf(bench, face).flatMap(({ quantity: code, words, point, usual, isCount }): SurveyField[] => {
    const quantity = bench.quantity(code);
    if (!quantity) return [];
    const shown = isCount ? 'count' : unit;
    const cell = cellAt(bench, { quantity, spot: null, point: point ?? null, stage: STAGE, unit: shown });
    const known: Known | null = point === undefined ? look.figure(code) : look.value(code, { point });
    const counts = known?.value == null && usual !== undefined ? fromSheet(usual, 'usual') : known;
    return [
      {
        quantity: code,
        point: point ?? null,
        words,
        stage: STAGE,
        cell,
        figure: figureOf(counts, shown, rowDecimals(quantity, shown)),
        unit: shown,
        unitMark: unitShape(shown).mark,
        fromSheet: cell.state !== 'read' && counts?.value != null,
      },
    ];
  });
}
