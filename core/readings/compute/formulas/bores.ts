/**
 * Bores: taper, roundness, wear, the piston in them, what is left of the wall, and how they were honed.
 * Meaning of the figures: common practice, no source; three levels and two directions as makers print it.
 */
import { divideRounded } from '../../../kernel/units.ts';
import { includedAngle } from '../geometry/crosshatch.ts';
import { gapGrowth } from '../geometry/ring-gap.ts';
import { type Known, type Look, made } from '../look.ts';
import { difference, type Formula, largest, range } from './formula.ts';
import { asFarAsRead, most, type PointRead, readPoints, unlessEmpty } from './points.ts';

/** Beyond the usual six: read where a liner or a two-stroke needs them. */
export const OPTIONAL: readonly string[] = [
  'up-x',
  'low-x',
  'up-y',
  'low-y',
  'top-a',
  'mid-a',
  'bot-a',
  'top-b',
  'mid-b',
  'bot-b',
  'gauge-x',
];

const readBore = (look: Look) => readPoints(look, 'bore', OPTIONAL);

/** Readings that share what stands before (depth) or after (axis) the hyphen of their point. */
const groups = (read: readonly PointRead[], by: 'depth' | 'axis'): Known[][] =>
  [...Map.groupBy(read, ({ code }) => code.split('-')[by === 'depth' ? 0 : 1]).values()].map((group) =>
    group.map(({ known }) => known),
  );

/** Worst range within the groups. */
function worst(quantity: string, by: 'depth' | 'axis'): Formula {
  return (look) => {
    const bore = readBore(look);
    return unlessEmpty(bore, () =>
      asFarAsRead(look, quantity, largest(groups(bore.read, by).map(range)), bore.missing),
    );
  };
}

/** Top less bottom, the greater of the axes: a bore that is larger below gives a figure below zero. */
function simpleTaper(look: Look): Known | null {
  const bore = readBore(look);
  const at = (point: string) => bore.read.find((it) => it.code === point)?.known ?? null;
  const axes = ['x', 'y', 'a', 'b'].map((axis) => difference(at(`top-${axis}`), at(`bot-${axis}`)));
  const ends = bore.missing.filter((words) => !words.endsWith('middle'));
  return unlessEmpty(bore, () => asFarAsRead(look, 'bore-taper-simple', largest(axes), ends));
}

/** The largest reading, with the place where it was read. */
function largestReading(look: Look): Known | null {
  const bore = readBore(look);
  const top = most(bore.read);
  const known = top ? { ...top.known, marks: [...top.known.marks, top.words] } : null;
  return unlessEmpty(bore, () => asFarAsRead(look, 'bore-largest', known, bore.missing));
}

/** The size wear is counted from: as last bored, else standard. */
const startSize = (look: Look): number | null =>
  look.either('bore-present')?.value ?? look.target('bore') ?? look.facts.engine?.bore ?? null;

function wear(look: Look): Known | null {
  const bore = readBore(look);
  const [top, start] = [most(bore.read), startSize(look)];
  if (start === null) return null;
  const worn = top ? made([top.known], top.value - start) : null;
  return unlessEmpty(bore, () => asFarAsRead(look, 'bore-wear', worn, bore.missing));
}

/** The reading that lies farthest from the size wanted. What was wanted is a figure, not a reading, and has no doubt. */
function errorOfBore(look: Look): Known | null {
  const [bore, wanted] = [readBore(look), look.either('bore-wanted')?.value ?? null];
  if (wanted === null) return null;
  const far = bore.read
    .map(({ known, value, words }) => made([known], value - wanted, [words]))
    .reduce<Known | null>(
      (best, it) => (best === null || Math.abs(it.value ?? 0) > Math.abs(best.value ?? 0) ? it : best),
      null,
    );
  return unlessEmpty(bore, () => asFarAsRead(look, 'bore-error', far, bore.missing));
}

/** Across the thrust faces at the height where the piston is gauged, else half way down. */
const boreAtPiston = (look: Look): Known | null =>
  look.value('bore', { point: 'gauge-x' }) ?? look.value('bore', { point: 'mid-x' });

/** What boring to the size wanted leaves of the wall as it was measured; the bar off its centre takes more on one side. */
function wallLeft(look: Look): Known | null {
  const [wall, wanted, start] = [
    look.either('wall-thickness'),
    look.either('bore-wanted')?.value ?? null,
    startSize(look),
  ];
  if (wall?.value == null || wanted === null || start === null) return null;
  const shift = look.figure('centre-shift');
  const known = made([wall, shift], wall.value - halfUp(wanted - start) - (shift?.value ?? 0));
  return shift ? known : { ...known, marks: [...known.marks, 'bored on its own centre'] };
}

/** Half of a difference, never too little taken away: rounded away from the wall. */
export const halfUp = (nanometres: number): number => Math.ceil(nanometres / 2);

/** Included angle of the pattern from how the hone ran. */
function crosshatch(look: Look): Known | null {
  const [speed, strokes, length] = ['hone-speed', 'hone-strokes', 'hone-stroke'].map((it) => look.figure(it));
  const bore = look.either('bore-wanted') ?? look.value('bore', { point: 'mid-x' });
  const parts = [speed, strokes, length, bore].flatMap((it) => (it?.value == null || it.value <= 0 ? [] : [it.value]));
  const [turns = 0, full = 0, stroke = 0, diameter = 0] = parts;
  if (parts.length < 4) return null;
  return {
    ...made([speed ?? null, strokes ?? null, length ?? null, bore], includedAngle({ diameter, turns, full, stroke })),
    uncertainty: 0,
  };
}

/** The bore that the rings run in: as wanted, else as read, else as it stands. */
function boreForRings(look: Look): Known | null {
  const start = startSize(look);
  const wanted = look.either('bore-wanted');
  return (
    wanted ?? most(readBore(look).read)?.known ?? (start === null ? null : made([], start, ['bore from the sheet']))
  );
}

const ringWanted =
  (ring: 'top' | 'second'): Formula =>
  (look) => {
    const [factor, bore] = [look.figure(`ring-factor-${ring}`)?.value ?? null, boreForRings(look)];
    if (factor === null || bore?.value == null) return null;
    // A factor is kept in ten-thousandths.
    return { ...made([bore], divideRounded(BigInt(bore.value) * BigInt(factor), 10_000n)), uncertainty: 0 };
  };

/** The gap of a ring grows with the bore it runs in; its doubt grows likewise, by less than three and a seventh. */
function ringGrowth(look: Look): Known | null {
  const worn = look.value('bore-wear');
  if (worn?.value == null) return worn;
  const doubt = worn.uncertainty === null ? null : Math.ceil((worn.uncertainty * 22) / 7);
  return { ...worn, value: gapGrowth(worn.value), uncertainty: doubt };
}

export const BORE_FORMULAS: Readonly<Record<string, Formula>> = {
  'bore-taper': worst('bore-taper', 'axis'),
  'bore-taper-simple': simpleTaper,
  'bore-out-of-round': worst('bore-out-of-round', 'depth'),
  'bore-largest': largestReading,
  'bore-wear': wear,
  'bore-error': errorOfBore,
  'piston-clearance': (look) => difference(boreAtPiston(look), look.either('piston-size')),
  'wall-left': wallLeft,
  crosshatch,
  'ring-wanted-top': ringWanted('top'),
  'ring-wanted-second': ringWanted('second'),
  'ring-growth': ringGrowth,
  'ring-spare-top': (look) => difference(look.value('ring-gap-top'), look.value('ring-wanted-top')),
  'ring-spare-second': (look) => difference(look.value('ring-gap-second'), look.value('ring-wanted-second')),
};
