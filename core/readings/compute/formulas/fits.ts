/** Parts that are pressed or dropped in: the range of the fit, the heat that lets them in, and what is left of it hot. */
import { CASTING_METALS, growthWords, type Metal, PART_METALS } from '../../../catalogue/compute/metals.ts';
import { divideRounded } from '../../../kernel/units.ts';
import { type Band, fitRangeOf, outside, oversized } from '../fit-range.ts';
import { type DropIn, dropInSlopes, dropInTemperature, fitWhenWarm, growthOf, growthSlope } from '../geometry/heat.ts';
import { fromSheet, type Known, type Look, made, madeBy, unknown } from '../look.ts';
import { difference, type Formula, largest } from './formula.ts';

/** Codes of the quantities one kind of part is made of. */
type Part = Readonly<{ code: string; hole: string; part: string }>;

const INSERT: Part = { code: 'insert', hole: 'counterbore-id', part: 'insert-od' };
const GUIDE: Part = { code: 'guide', hole: 'guide-bore-in-head', part: 'guide-od' };
const PLUG = { hole: 'plug-hole', part: 'plug-od' } as const;
const SLEEVE: Part = { code: 'sleeve', hole: 'sleeve-hole', part: 'sleeve-od' };

/** Sizes hold at 20 °C (ISO 1, from memory). */
const REFERENCE = 20_000;

/** Metal of the casting; null when it is not known or has no figure. */
const castingMetal = (look: Look): Metal | null => CASTING_METALS[look.facts.casting.material] ?? null;

/** What growth makes of a diameter when it is warmer than 20 °C: a warm bore reads too big. */
function warmError(look: Look, size: Known | null): Known | null {
  const warm = look.figure('part-temperature');
  if (size?.value == null || warm?.value == null) return null;
  const metal = castingMetal(look);
  if (!metal) return unknown('metal of the casting not known');
  const { low: alpha } = metal.alpha;
  const error = growthOf(size.value, alpha, warm.value - REFERENCE);
  return madeBy([[warm, growthSlope(size.value, alpha)]], error, [`${growthWords(metal, alpha)} µm/m for each °C`]);
}

const INCH: Known = { value: 25_400_000, uncertainty: 0, marks: [], planned: false };

/** Everything heat needs. */
type Task = Readonly<{
  task: DropIn;
  known: Readonly<Record<'hole' | 'part' | 'room' | 'clearance', Known>>;
  chilled: Known | null;
  metals: string;
}>;

/** What heat needs, or why it cannot be said; null while the sizes are not measured. */
function taskOf(look: Look, { code, hole, part }: Part): Task | Readonly<{ why: string }> | null {
  const [holeAt, partAt] = [look.either(hole), look.either(part)];
  if (holeAt?.value == null || partAt?.value == null) return null;
  const casting = castingMetal(look);
  if (!casting) return { why: 'metal of the casting not known' };
  const word = look.words(`${code}-metal`, 'after') ?? look.words(`${code}-metal`, 'before');
  const metal = word === null ? undefined : PART_METALS[word];
  if (!metal) return { why: `choose the metal of the ${code}s` };
  const [room, clearance] = [look.figure('room-temperature'), look.figure('drop-in-clearance')];
  if (room?.value == null) return { why: 'measure the room temperature' };
  if (clearance?.value == null) return { why: 'say how much clearance is wanted to drop it in' };
  const chilled = look.figure(`${code}-chilled`);
  const [alphaHole, alphaPart] = [casting.alpha.low, metal.alpha.low];
  return {
    task: {
      hole: holeAt.value,
      part: partAt.value,
      alphaHole,
      alphaPart,
      room: room.value,
      partAt: chilled?.value ?? room.value,
      clearance: clearance.value,
    },
    known: { hole: holeAt, part: partAt, room, clearance },
    chilled,
    metals: `${growthWords(casting, alphaHole)}, ${growthWords(metal, alphaPart)} µm/m for each °C`,
  };
}

/** How hot the casting must be; never below the room. */
function heatFor(look: Look, kind: Part): Known | null {
  const found = taskOf(look, kind);
  if (found === null) return null;
  if ('why' in found) return unknown(found.why);
  const { task, known, chilled, metals } = found;
  const heat = dropInTemperature(task);
  const { size, partAt } = dropInSlopes(task);
  const marks = [
    metals,
    ...(chilled?.value == null ? [`${kind.code} not chilled`] : []),
    ...(heat > task.room ? [] : ['goes in without heat']),
  ];
  const parts = [
    [known.hole, size],
    [known.part, size],
    [known.clearance, size],
    [known.room, 1],
    [chilled, partAt],
  ] as const;
  return madeBy(
    parts.filter(([it]) => it !== null),
    Math.max(heat, task.room),
    marks,
  );
}

/** What is left of the fit when casting and part are at running heat. */
function fitHot(look: Look, kind: Part): Known | null {
  const found = taskOf(look, kind);
  if (found === null) return null;
  if ('why' in found) return unknown(found.why);
  const warm = look.figure('running-temperature');
  if (warm?.value == null) return unknown('say how warm the casting runs');
  const { task, known, metals } = found;
  const slope = growthSlope(task.hole, task.alphaHole - task.alphaPart);
  return madeBy(
    [
      [known.part, 1],
      [known.hole, 1],
      [warm, slope],
    ],
    fitWhenWarm(task, warm.value - task.room),
    [metals],
  );
}

/** Limits of a size as a band; null when one end is missing. */
function bandOf(look: Look, quantity: string): Band | null {
  const [low, high] = [look.low(quantity), look.high(quantity)];
  return low === null || high === null ? null : { low, high };
}

function rangeEnd(look: Look, { hole, part }: Omit<Part, 'code'>, end: 'tightest' | 'loosest'): Known | null {
  const [holes, parts] = [bandOf(look, hole), bandOf(look, part)];
  if (!holes || !parts) return null;
  const range = fitRangeOf(holes, parts);
  return fromSheet(range[end], `from the sizes of the sheet: ${range.kind}`);
}

/** The size to cut a hole to: the part less what its fit aims at, else the middle of its limits. */
function holeWanted(look: Look, part: string, fit: string): Known | null {
  const size = look.either(part);
  if (size?.value == null) return null;
  const band = bandOf(look, fit);
  const aim = look.target(fit) ?? (band && divideRounded(BigInt(band.low + band.high), 2n));
  if (aim === null) return unknown('no fit known to aim at');
  return made([size], size.value - aim, [look.target(fit) === null ? 'middle of the fit' : 'fit of the sheet']);
}

/** How far an insert lies outside the size its oversize stands for; zero within. */
function sizeOff(look: Look): Known | null {
  const [size, by, band] = [look.either('insert-od'), look.either('insert-oversize'), bandOf(look, 'insert-od')];
  if (size?.value == null || by?.value == null || !band) return null;
  return made([size], outside(size.value, oversized(band, by.value)));
}

const largestOf = (look: Look, quantity: string): Known | null => largest(look.all(quantity).map(({ known }) => known));

const partFormulas = (part: Part): Record<string, Formula> => ({
  [`${part.code}-heat`]: (look) => heatFor(look, part),
  [`${part.code}-heat-most`]: (look) => largestOf(look, `${part.code}-heat`),
  [`${part.code}-fit-hot`]: (look) => fitHot(look, part),
  [`${part.code}-tightest`]: (look) => rangeEnd(look, part, 'tightest'),
  [`${part.code}-loosest`]: (look) => rangeEnd(look, part, 'loosest'),
});

export const FIT_FORMULAS: Readonly<Record<string, Formula>> = {
  ...partFormulas(INSERT),
  ...partFormulas(GUIDE),
  ...partFormulas(SLEEVE),
  'sleeve-fit': (look) => difference(look.either('sleeve-od'), look.either('sleeve-hole')),
  'plug-interference': (look) => difference(look.either('plug-od'), look.either('plug-hole')),
  'plug-tightest': (look) => rangeEnd(look, PLUG, 'tightest'),
  'plug-loosest': (look) => rangeEnd(look, PLUG, 'loosest'),
  'counterbore-wanted': (look) => holeWanted(look, 'insert-od', 'insert-interference'),
  'guide-hole-wanted': (look) => holeWanted(look, 'guide-od', 'guide-interference'),
  'insert-size-off': sizeOff,
  'warm-inch': (look) => warmError(look, INCH),
  'counterbore-warm': (look) => warmError(look, look.either('counterbore-id')),
  'bore-warm': (look) =>
    warmError(look, look.value('bore', { point: 'mid-x' }) ?? look.targetKnown('bore', 'bore of the sheet')),
};
