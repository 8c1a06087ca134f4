/** The build sheet: every reading after work beside what was found, in the order the parts sit; kept for ever. */
import { codeText } from '../kernel/codes.ts';
import { type Block, beside, stack, text } from '../paper/block.ts';
import { faceGrid } from '../paper/face-grid.ts';
import type { Fonts } from '../paper/fonts.ts';
import type { Rich } from '../paper/lines.ts';
import { tag, verdictMark } from '../paper/marks.ts';
import { finishSheet, type SheetTitle, startSheet } from '../paper/page.ts';
import { heading, paragraph, ruledParagraph, signatures, titleBlock } from '../paper/parts.ts';
import { leave, need, type Part, type Pen, place, twoColumns, widthOf } from '../paper/pen.ts';
import { readingGrid, struckBlock } from '../paper/reading-grid.ts';
import { type Ink, STYLES } from '../paper/styles.ts';
import { table } from '../paper/table.ts';
import type { BuildSheetPaper } from './contract/papers.ts';
import type { Certified, FaceSurvey, FactTable, Figure, ReadingTable, Said } from './contract/reading-tables.ts';

type Words = BuildSheetPaper['texts'][number];

/** Draw a build sheet; a certified one says so in its title. */
export function drawBuildSheet(fonts: Fonts, paper: BuildSheetPaper): Promise<Uint8Array> {
  const title: SheetTitle = {
    title: paper.certified ? 'Certified build sheet' : 'Build sheet',
    number: paper.number,
    code: codeText('ticket', paper.number),
  };
  const pen = startSheet(fonts, paper.head, title);
  place(pen, titleBlock(pen, aboutOf(paper), widthOf(pen)), 3);
  if (paper.guard) {
    const lead = paper.certified ? 'Certified. ' : 'Judged with a guard band. ';
    paragraph(pen, [{ b: lead }, paper.guard], STYLES.small, 3);
  }
  if (paper.tables.length > 0) paragraph(pen, legendOf(paper), STYLES.small, 3);
  for (const grid of paper.tables) {
    readingGrid(pen, grid);
    drawNotes(pen, grid);
  }
  drawBeside(pen, paper);
  if (paper.certified) drawGauges(pen, paper.certified);
  // Names and what they do not answer for stay on one page.
  need(pen, 46 + text(pen, paper.disclaimer, STYLES.small, widthOf(pen)).height);
  signatures(
    pen,
    paper.signatures.map(({ label, written }) => ({ label, written })),
    4,
  );
  ruledParagraph(pen, paper.disclaimer);
  return finishSheet(pen, paper.head, title);
}

const aboutOf = (paper: BuildSheetPaper) => [
  {
    label: 'Customer',
    value: [{ b: paper.customer.name }, paper.customer.more ? `, ${paper.customer.more}` : ''],
    share: 1.3,
  },
  { label: 'Casting', value: paper.casting, share: 2.2, lead: (ink: Ink) => tag(ink, paper.tag.number) },
  { label: 'Finished', value: paper.finished },
  { label: 'Units', value: paper.units, share: 0.7 },
];

function legendOf(paper: BuildSheetPaper): Rich {
  const bold = paper.tables.some(({ rows }) => rows.some(({ key }) => key))
    ? 'Bold rows: check these again before you bolt it down. '
    : '';
  return [{ b: bold }, 'Places stand in the order they lie on the bench, front to rear.'];
}

function drawNotes(pen: Pen, { verdict, verdictWords, notes }: ReadingTable): void {
  const width = widthOf(pen);
  if (verdictWords !== '') {
    const words = text(pen, verdictWords, STYLES.small, width - 16);
    place(pen, verdict ? beside([verdictMark(pen, verdict), words], 4) : words, 1);
  }
  paragraph(pen, saidOf(notes), STYLES.small, 8);
}

/** Notes run on as one paragraph, their first words bold. */
const saidOf = (notes: readonly Said[]): Rich =>
  notes.flatMap(({ label, words }, index) => [
    ...(index > 0 ? [' '] : []),
    ...(label === '' ? [] : [{ b: label }, ' ']),
    words,
  ]);

function drawBeside(pen: Pen, paper: BuildSheetPaper): void {
  const facts = paper.facts.map((fact): Part => ({ tall: tallOfFacts(fact), draw: (at) => drawFacts(at, fact) }));
  twoColumns(pen, [
    ...facts.slice(0, 1),
    ...paper.faces.map((face) => ({ tall: tallOfFace(face), draw: (at: Pen) => drawFace(at, face) })),
    ...facts.slice(1),
    ...paper.texts.map((one) => ({ tall: tallOfWords(one), draw: (at: Pen) => drawWords(at, one) })),
  ]);
}

/** Letters on a line of small print in half a page. */
const LETTERS = 60;

const linesOf = (words: string): number => Math.ceil(words.length / LETTERS);

const tallOfFacts = ({ rows, notes }: FactTable): number =>
  34 +
  rows.reduce((sum, { small, after, found }) => sum + 19 + 11 * Math.max(linesOf(small), after || found ? 1 : 0), 0) +
  11 * linesOf(notes.map(({ label, words }) => `${label} ${words}`).join(' '));

const tallOfWords = ({ words, named = [] }: Words): number =>
  24 + 13 * (linesOf(words) + named.reduce((sum, one) => sum + linesOf(`${one.label} ${one.words}`), 0));

const FACE_ROW = 26;

const tallOfFace = ({ rows, points, lines, said }: FaceSurvey): number =>
  30 + (points.length > 0 ? rows * FACE_ROW + 38 : 0) + lines.length * 15 + 11 * linesOf(said);

/** The relief of a face in figures, its straightedge lines, and what both come to. */
function drawFace(pen: Pen, face: FaceSurvey): void {
  const width = widthOf(pen);
  const hasGrid = face.points.length > 0;
  heading(pen, face.heading, hasGrid ? face.rows * FACE_ROW + 36 : 40);
  if (hasGrid) {
    place(pen, faceGrid(pen, face, width, FACE_ROW), 2);
    const legend = `Front at the left; ${face.scale}. Filled triangle: touches the upper plane, open one: the lower.`;
    paragraph(pen, legend, STYLES.small, 2);
  }
  if (face.lines.length > 0) {
    table(pen, {
      columns: [{ width: { share: 1 } }, { width: 150, align: 'end' }],
      rows: face.lines.map(({ words, text: said }) => ({ cells: [words, said] })),
      flush: true,
      padY: 1.2,
    });
    leave(pen, 2);
  }
  paragraph(pen, face.said, STYLES.small, 2);
  leave(pen, 6);
}

const FIGURE = 66;

function drawFacts(pen: Pen, { heading: title, rows, notes }: FactTable): void {
  const hasFound = rows.some(({ found }) => found !== null);
  const hasAfter = rows.some(({ after }) => after !== null);
  // A heading with one row at a foot is soon overlooked.
  need(pen, 96);
  const column = (name: string) => ({ title: name, width: FIGURE, align: 'end' as const });
  table(pen, {
    heading: title,
    columns: [
      { ...(hasFound && { title: '' }), width: { share: 1 } },
      ...(hasFound ? [column('Found')] : []),
      ...(hasAfter ? [hasFound ? column('After') : { width: FIGURE, align: 'end' as const }] : []),
    ],
    rows: rows.map(({ words, small, found, after, strong = false }) => ({
      cells: [
        (width: number) => wordsBlock(pen, words, small, strong, width),
        ...(hasFound ? [(width: number) => figureBlock(pen, found, false, width)] : []),
        ...(hasAfter ? [(width: number) => figureBlock(pen, after, strong, width)] : []),
      ],
    })),
    flush: true,
    padY: 2,
  });
  leave(pen, 2);
  paragraph(pen, saidOf(notes), STYLES.small, 2);
  leave(pen, 6);
}

const wordsBlock = (ink: Ink, words: string, small: string, strong: boolean, width: number): Block =>
  stack([
    text(ink, words, strong ? STYLES.strong : STYLES.body, width),
    ...(small === '' ? [] : [text(ink, small, { ...STYLES.small, lead: 1.15 }, width)]),
  ]);

/** The figure with its mark before it; below, small, the same in the other unit and its doubt. */
function figureBlock(ink: Ink, figure: Figure | null, strong: boolean, width: number): Block {
  if (!figure) return text(ink, '', STYLES.figure, width);
  const mark = figure.verdict && figure.verdict !== 'pass' ? verdictMark(ink, figure.verdict, 8) : undefined;
  const value = text(
    ink,
    figure.text,
    strong || mark ? STYLES.strongFigure : STYLES.figure,
    mark ? width - mark.width - 3 : width,
    { align: 'end' },
  );
  const below = [figure.word, figure.doubt, figure.other].filter(Boolean);
  return stack([
    ...(figure.struck ? [struckBlock(ink, figure.struck, width)] : []),
    mark ? beside([mark, value], 3, 'middle') : value,
    ...below.map((words) =>
      text(ink, words ?? '', { ...STYLES.figure, size: 8.5, lead: 1.15 }, width, { align: 'end' as const }),
    ),
  ]);
}

function drawWords(pen: Pen, { heading: title, words, named = [] }: Words): void {
  heading(pen, title, 16);
  paragraph(pen, words, STYLES.body, 2);
  for (const { label, words: said } of named) paragraph(pen, [{ b: label }, ' ', said], STYLES.body, 2);
}

/** Gauges one by one: what each is worth and when it was checked. */
function drawGauges(pen: Pen, { gauges }: Certified): void {
  leave(pen, 4);
  table(pen, {
    heading: 'Measured with',
    columns: [
      { title: 'Gauge', width: { share: 1.5 } },
      { title: 'Number', width: { share: 0.8 } },
      { title: 'Uncertainty, k = 2', width: { share: 1.1 } },
      { title: 'Last check', width: { share: 1.5 } },
      { title: 'Next check', width: { share: 1.5 } },
    ],
    rows: gauges.map(({ name, kind, serial, doubt, checked, due }) => ({
      cells: [[{ b: name }, ` ${kind}`], serial || 'not given', doubt || 'not stated', checked, due],
    })),
    flush: true,
    padY: 2,
  });
  if (gauges.length === 0) paragraph(pen, 'No gauge was named: nothing here is certified by a gauge.', STYLES.body, 2);
}
