/**
 * A survey of a deck as the host answers it: five columns and three rows over 18 by 6 inches, a bowed head. The readings are
 * tenths of a thou; the figures of the planes are exact mathematics of these readings.
 */
import type {
  CutWay,
  DeckSurvey,
  Figure,
  GridPoint,
  GridSection,
  JudgedFigure,
  StageSurvey,
  StraightedgeLine,
} from '#core/readings/compute/deck-survey-model.ts';
import type { Cell } from '#core/readings/compute/sheet-model.ts';
import { cellOf } from './sheets.ts';

export const BOWED = [
  [0, -28, -40, -26, 6],
  [-6, -36, -52, -34, -2],
  [-8, -38, -50, -30, 8],
] as const;

const TENTH = 2_540;
const NOT: Cell = { ...cellOf(null), verdict: null, word: '' };

const figureOf = (text: string, value: number | null = text === '' ? null : 1): Figure => ({
  value,
  uncertainty: null,
  text,
  marks: [],
});

const verdictOf = (name: 'pass' | 'fail' | 'not measured' | 'no limit known') =>
  ({ name, direction: name === 'fail' ? 'over' : null, cannotProve: false }) as const;

export const judgedOf = (
  quantity: string,
  words: string,
  text: string,
  name: 'pass' | 'fail' | 'not measured' | 'no limit known',
  most: string | null = null,
): JudgedFigure =>
  ({
    ...figureOf(text),
    quantity,
    words,
    limit:
      most === null ? null : { unit: 'in', text: `at most ${most}`, source: 'casting type sheet [demo]', notes: [] },
    verdict: verdictOf(name),
    word: name === 'fail' ? 'too much' : name,
    decision: null,
  }) as unknown as JudgedFigure;

const signed = (steps: number): string => (steps > 0 ? `+${steps}` : String(steps).replace('-', '\u2212'));

type Steps = readonly (readonly (number | null)[])[];

const UPPER = ['c1r1', 'c1r3', 'c5r3'];

const pointOf = (step: number | null, column: number, row: number): GridPoint => {
  const code = `c${column}r${row}`;
  const place = { code, words: `column ${column}, row ${row}`, column, row };
  const lies = { along: (column - 1) / 4, across: (row - 1) / 2 };
  if (step === null) return { ...place, ...lies, cell: NOT, steps: '', height: null, heightSteps: '', touches: null };
  const touches = code === 'c3r2' ? 'lower' : UPPER.includes(code) ? 'upper' : null;
  const cell = { ...cellOf(String(step), 100 + 10 * row + column), text: signed(step) };
  const height = { height: (step + 52) * TENTH, heightSteps: String(step + 52) };
  return { ...place, ...lies, cell, steps: signed(step), ...height, touches };
};

const pointsOf = (steps: Steps): GridPoint[] =>
  steps.flatMap((row, r) => row.map((step, c) => pointOf(step, c + 1, r + 1)));

export const sectionOf = (
  code: string,
  words: string,
  kind: GridSection['kind'],
  gap: string,
  more: Partial<GridSection> = {},
): GridSection => ({
  code,
  words,
  kind,
  isMiddle: false,
  points: [
    { code: 'c1r2', at: 0, height: 0 },
    { code: 'c3r2', at: 0.5, height: -48 * TENTH },
    { code: 'c5r2', at: 1, height: 0 },
  ],
  gap: figureOf(gap),
  rock: figureOf('0', 0),
  worst: figureOf(gap),
  word: 'hollow',
  worstAt: 'c3r2',
  ...more,
});

const lineOf = (code: string, words: string, gap: string | null): StraightedgeLine => ({
  code,
  words,
  kind: 'along',
  from: { along: 0, across: 0 },
  to: { along: 1, across: 0 },
  cell: gap === null ? NOT : cellOf(gap, 300),
  place: NOT,
  section: null,
});

const wayOf = (code: CutWay['code'], words: string, cut: string, left: JudgedFigure | null): CutWay => ({
  code,
  words,
  cleanUp: figureOf('.0056'),
  cut: figureOf(cut),
  decidedBy: 'flatness',
  left,
  total: null,
});

/** One stage with what was read so far; figures are there once every point is. */
export function stageOf(stage: 'before' | 'after', steps: Steps, more: Partial<StageSurvey> = {}): StageSurvey {
  const read = steps.flat().filter((step) => step !== null).length;
  const whole = read === steps.flat().length;
  const flat = (quantity: string, words: string) =>
    judgedOf(quantity, words, '', whole ? 'no limit known' : 'not measured');
  return {
    stage,
    points: pointsOf(steps),
    lines: [lineOf('along-1', 'along, intake side', null), lineOf('along-2', 'along, middle', null)],
    planes: whole
      ? ({
          read,
          wanted: 15,
          zone: figureOf('.0056'),
          leastSquares: figureOf('.0059'),
          corners: [{ words: 'levelled on three corners', points: [], flatness: figureOf('.0061') }],
          span: null,
          upper: ['c1r1', 'c1r3', 'c5r3'],
          lower: ['c3r2'],
          sections: [
            sectionOf('row-1', 'along, intake side', 'along', '.0043'),
            sectionOf('row-2', 'along, middle', 'along', '.0048', { isMiddle: true }),
            sectionOf('diagonal-1', 'corner to corner', 'diagonal', '.0056'),
          ],
        } as unknown as StageSurvey['planes'])
      : null,
    readWords: `${read} of 15 points`,
    basis: whole ? 'grid' : 'none',
    flatness: whole
      ? judgedOf('deck-flatness', 'deck flatness', '.0056', 'fail', '.0040')
      : judgedOf('deck-flatness', 'deck flatness', '', 'not measured', '.0040'),
    along: flat('deck-along', 'deck, along'),
    across: flat('deck-across', 'deck, across'),
    span: flat('deck-span', 'deck, in any span'),
    pattern: whole ? { word: 'hollow', because: 'the middle lies lowest', steps: [] } : null,
    cut: whole
      ? {
          finish: figureOf('.0010'),
          pit: null,
          ways: [
            wayOf(
              'best',
              'Levelled best',
              '.0066',
              judgedOf('thickness', 'thickness left', '3.9534', 'pass', '3.9520'),
            ),
            wayOf('corners', 'Levelled on three corners', '.0071', null),
          ],
          leftOut: ['Parallel to the cam line: measure deck to cam line at both ends'],
          thickness: figureOf('3.9600'),
          thicknessWords: 'thickness now',
          earlier: [],
        }
      : null,
    advice: whole ? ['Straighten before surfacing.'] : [],
    measureFirst: null,
    ...more,
  };
}

const fieldOf = (quantity: string, words: string, text: string, typed: boolean, unit: 'in' | 'count') => ({
  quantity,
  point: null,
  words,
  stage: 'before' as const,
  cell: typed ? cellOf(text, 400) : NOT,
  figure: figureOf(text),
  unit,
  unitMark: unit === 'count' ? '' : unit,
  fromSheet: false,
});

export const EMPTY_GRID: Steps = BOWED.map((row) => row.map(() => null));

export function surveyOf(before: Steps, after: Steps = EMPTY_GRID, more: Partial<DeckSurvey> = {}): DeckSurvey {
  return {
    casting: { id: 1, ticket: 1, tag: 30921 },
    faces: [
      { code: 'deck', words: 'Deck', summary: 'over .0040' },
      { code: 'intake-face', words: 'Intake face', summary: 'not measured' },
    ],
    face: {
      code: 'deck',
      words: 'Deck',
      sides: ['intake side', 'exhaust side'],
      table: 'surface',
      quantities: { dial: 'deck-dial', gap: 'deck-gap', gapPlace: 'deck-gap-place' },
    },
    unit: 'in',
    unitMark: 'in',
    step: { value: TENTH, words: 'tenths of a thou' },
    grid: { columns: 5, rows: 3, length: 457_200_000, width: 152_400_000 },
    mostColumns: 15,
    mostRows: 9,
    fields: [
      fieldOf('deck-columns', 'columns', '5', false, 'count'),
      fieldOf('deck-length', 'length of the grid', '18', true, 'in'),
      fieldOf('deck-width', 'width of the grid', '', false, 'in'),
    ],
    placeChoices: ['middle', 'one end'],
    before: stageOf('before', before),
    after: stageOf('after', after),
    tools: [],
    notes: [],
    guard: false,
    locked: false,
    ...more,
  } as unknown as DeckSurvey;
}
