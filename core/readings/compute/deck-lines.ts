/**
 * The straightedge lines of a face: along both sides and the middle, from corner to corner, and across before, between and
 * behind the chambers. At each the thickest feeler that goes under. Common practice, no source.
 */
import { acrossCode, type Face, faceQuantities, LINE_POINTS } from '../../catalogue/compute/faces.ts';
import { largest } from './formulas/formula.ts';
import { type Known, type Look, unknown } from './look.ts';

type End = Readonly<{ along: number; across: number }>;
export type Line = Readonly<{
  code: string;
  words: string;
  kind: 'along' | 'across' | 'diagonal';
  from: End;
  to: End;
}>;

/** Whether the casting is a block with a deck for each bank. */
export function hasBanks(look: Pick<Look, 'facts' | 'places'>): boolean {
  const { casting, engine } = look.facts;
  if (casting.kind !== 'block') return false;
  if (engine) return engine.layout === 'v' || engine.layout === 'flat';
  return look.places('bore').some((it) => it.bank !== 'none');
}

/** The places that stand in a row under the face, front to rear: chambers, else cylinders, by their labels. */
function underFace(look: Pick<Look, 'places'>, face: Face): readonly string[] {
  const inBank = (quantity: string) =>
    look
      .places(quantity)
      .filter((it) => face.bank === null || it.bank === face.bank)
      .toSorted((a, b) => a.benchOrder - b.benchOrder);
  const found = ['chamber-volume', 'bore'].map(inBank).find((spots) => spots.length > 1);
  if (found) return found.map((it) => it.label);
  const cylinders = inBank('installed-height').flatMap((it) => (it.cylinder === null ? [] : [it.cylinder]));
  return [...new Set(cylinders)].toSorted((a, b) => a - b).map(String);
}

/** Lines across: at both ends and between the chambers; at the ends and in the middle where no chambers are known. */
function acrossLines(labels: readonly string[]): Line[] {
  const most = LINE_POINTS.filter(([code]) => code.startsWith('across-')).length;
  const stretches = labels.length >= 2 && labels.length < most ? labels.length : 2;
  return Array.from({ length: stretches + 1 }, (_, n): Line => {
    const isEnd = n === 0 || n === stretches;
    const between = labels.length === stretches ? `between ${labels[n - 1]} and ${labels[n]}` : 'in the middle';
    const along = n / stretches;
    return {
      code: acrossCode(n + 1),
      words: `Across, ${isEnd ? (n === 0 ? 'front end' : 'rear end') : between}`,
      kind: 'across',
      from: { along, across: 0 },
      to: { along, across: 1 },
    };
  });
}

/** Every line of a face, in the order a hand lays them. */
export function linesOf(look: Pick<Look, 'places'>, face: Face): readonly Line[] {
  const lengthwise = [face.sides[0], 'middle', face.sides[1]].map(
    (words, n): Line => ({
      code: `along-${n + 1}`,
      words: `Along, ${words}`,
      kind: 'along',
      from: { along: 0, across: n / 2 },
      to: { along: 1, across: n / 2 },
    }),
  );
  const corners: Line[] = [
    {
      code: 'diagonal-1',
      words: 'Corner to corner',
      kind: 'diagonal',
      from: { along: 0, across: 0 },
      to: { along: 1, across: 1 },
    },
    {
      code: 'diagonal-2',
      words: 'The other corners',
      kind: 'diagonal',
      from: { along: 0, across: 1 },
      to: { along: 1, across: 0 },
    },
  ];
  return [...lengthwise, ...corners, ...acrossLines(underFace(look, face))];
}

/** The gap of one line. What goes under is known to a feeler step: the truth lies between this one and the next. */
export function gapAt(look: Look, face: Face, line: Pick<Line, 'code'>): Known | null {
  const read = look.value(faceQuantities(face).gap, { point: line.code });
  if (read?.value == null) return null;
  const step = look.figure('feeler-step')?.value ?? null;
  const doubts = [read.uncertainty, step].filter((it) => it !== null);
  return { ...read, uncertainty: doubts.length === 0 ? null : Math.max(...doubts) };
}

export type LinesRead = Readonly<{ worst: Known | null; read: number; wanted: number }>;

/** The worst of some lines, and how many of them were laid. Lines marked as nothing to measure are not wanted. */
export function readLines(look: Look, face: Face, lines: readonly Line[]): LinesRead {
  const { gap } = faceQuantities(face);
  const wanted = lines.filter(({ code }) => !look.isDash(gap, { point: code }));
  const read = wanted.map((line) => gapAt(look, face, line)).filter((it) => it !== null);
  return { worst: largest(read), read: read.length, wanted: wanted.length };
}

/** `3 of 5 straightedge lines`. */
export const linesMissing = ({ read, wanted }: LinesRead): Known => unknown(`${read} of ${wanted} straightedge lines`);

/** Lines without which the whole face is not surveyed: along and from corner to corner. Across counts where it was laid. */
export const isNeeded = ({ kind }: Line): boolean => kind !== 'across';
