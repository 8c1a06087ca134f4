/**
 * Chambers. Each change is the cut and the sunk valves together: a cut alone is said to be one. Exact mathematics; 1 cc of
 * spread for stock and half of it for performance, and measuring again past 0.030 in, are common practice, no source.
 */
import { measureOf } from '../../../kernel/measure-units.ts';
import { divideRounded } from '../../../kernel/units.ts';
import {
  circleOfLayer,
  circleOfSquares,
  circleOfString,
  depthOfLayer,
  discVolume,
} from '../geometry/cylinder-volume.ts';
import { type Known, type Look, made, madeBy, unknown } from '../look.ts';
import type { Spot } from '../model.ts';
import { dataOf, type Figure, figureOf, meanOf, notKnown, valueAt } from './engine-data.ts';
import { difference, type Formula, largest, range } from './formula.ts';
import { sayLength } from './say.ts';

/** Walls slope: past this much the area at the deck is another one. */
const MEASURE_AGAIN = measureOf('0.030', 'in');
const ONE_CC = measureOf('1', 'cc');

/** Circle as large as the chamber at the deck, by the best way it was measured. */
function circle(look: Look): Known | null {
  const of = (quantity: string) => figureOf(look.either(quantity));
  const [squares, side] = [of('chamber-squares'), of('chamber-square-side')];
  if (squares && side)
    return made([side], circleOfSquares(squares.value, side.value), ['area traced on squared paper']);
  const [full, lowered, by] = [of('chamber-full'), of('chamber-lowered'), of('chamber-lowered-by')];
  if (full && lowered && by && full.value > lowered.value && by.value > 0) {
    const found = circleOfLayer(full.value - lowered.value, by.value);
    const slopes = [
      [full, found.perVolume],
      [lowered, found.perVolume],
      [by, found.perDepth],
    ] as const;
    return madeBy(slopes, found.diameter, ['area from two fillings']);
  }
  const string = of('chamber-string');
  if (string) {
    return madeBy([[string, 1 / Math.PI]], circleOfString(string.value), [
      'area by string: too large for a long shape',
    ]);
  }
  return (
    look.targetKnown('chamber-circle', 'area of the chamber from the sheet') ??
    unknown('trace the chamber, fill it twice, or lay a string round its edge')
  );
}

/** What the cut makes of one chamber. */
function byCut(look: Look): Known | null {
  const cut = valueAt(look, 'head-cut', 'after');
  if (!cut) return null;
  const round = figureOf(look.either('chamber-circle'));
  if (!round) return look.either('chamber-circle');
  const { volume, perDiameter, perHeight } = discVolume(round.value, cut.value);
  const again =
    cut.value > MEASURE_AGAIN ? [`more than ${sayLength(look, MEASURE_AGAIN)} off: measure the chamber again`] : [];
  return madeBy(
    [
      [round, perDiameter],
      [cut, perHeight],
    ],
    volume === 0 ? 0 : -volume,
    again,
  );
}

/**
 * How far this valve sank into the head: by what its seat and face lost, else by its recession. The second recession is read
 * from the deck as it is then: what came off the deck made it less and is added again.
 */
function sink(look: Look): Known | null {
  const done = valueAt(look, 'valve-rise', 'after');
  if (done) return done;
  const sunk = difference(valueAt(look, 'recession', 'after'), valueAt(look, 'recession', 'before'));
  if (sunk?.value == null) return null;
  const cut = valueAt(look, 'stock-removed', 'after');
  return made([sunk, cut], sunk.value + (cut?.value ?? 0), [
    cut ? 'by recession, read again from the surfaced deck' : 'by recession',
  ]);
}

/** The same, or as it would be once seat and face are cut as planned. */
export function sinkOfValve(look: Look): Figure | null {
  const known = valueAt(look, 'valve-sink', 'after');
  if (known) return known;
  const plan = valueAt(look, 'valve-rise', 'before');
  return plan && figureOf({ ...plan, marks: [...plan.marks, 'sink as planned'], planned: true });
}

/** Volume that this valve gives the chamber by sinking. */
function sinkVolume(look: Look): Known | null {
  const [head, sunk] = [dataOf(look, 'valve-head-diameter'), sinkOfValve(look)];
  if (!head || !sunk) return null;
  const { volume, perDiameter, perHeight } = discVolume(head.value, sunk.value);
  return madeBy(
    [
      [head, perDiameter],
      [sunk, perHeight],
    ],
    volume,
  );
}

/** Volume that these valves give together; null while one of them is not known. */
function sinkOf(look: Look, valves: readonly Spot[]): Figure | null {
  const known = look.all('valve-sink-volume', { stage: 'after' });
  const parts = valves.map((spot) => known.find((it) => it.spot.id === spot.id)?.known ?? null);
  if (parts.length === 0 || parts.some((it) => it === null)) return null;
  const sum = parts.reduce((total, it) => total + (it?.value ?? 0), 0);
  return figureOf(made(parts, sum));
}

const SINK_UNKNOWN = 'surfacing only; chamber not measured';

/** Mean volume that sunk valves give a chamber. */
function bySink(look: Look): Known | null {
  const chambers = look.places('chamber-volume').length;
  const sum = sinkOf(look, look.places('valve-sink-volume'));
  if (!sum || chambers === 0) return unknown('sink or size of a valve not known');
  return madeBy([[sum, 1 / chambers]], divideRounded(BigInt(sum.value), BigInt(chambers)));
}

/** Measured where burette readings stand on both sides of the work, else reckoned. */
function change(look: Look): Known | null {
  const measured = meanOf(
    look.places('chamber-volume').flatMap((spot) => measuredAt(look, spot) ?? []),
    'measured',
  );
  if (measured) return measured;
  const cut = valueAt(look, 'chamber-by-cut', 'after');
  if (!cut) return look.value('chamber-by-cut', { stage: 'after' });
  const sunk = valueAt(look, 'chamber-by-sink', 'after');
  if (!sunk) return made([cut], cut.value, [SINK_UNKNOWN]);
  return made([cut, sunk], cut.value + sunk.value, ['cut and sunk valves']);
}

function measuredAt(look: Look, spot: Spot): Known | null {
  const at = (stage: 'before' | 'after') =>
    look.all('chamber-volume', { stage }).find((it) => it.spot.id === spot.id)?.known ?? null;
  return difference(at('after'), at('before'));
}

/** What this chamber should hold after the work, to be held against the burette. */
function expected(look: Look): Known | null {
  const { spot } = look.place;
  const before = valueAt(look, 'chamber-volume', 'before');
  const cut = valueAt(look, 'chamber-by-cut', 'after');
  if (!spot || !before || !cut) return null;
  const valves = look.places('valve-sink-volume').filter((it) => it.cylinder === spot.cylinder);
  const sunk = sinkOf(look, valves);
  const marks = sunk ? [] : ['surfacing only: sink of its valves not known'];
  return made([before, cut, sunk], before.value + cut.value + (sunk?.value ?? 0), marks);
}

function mean(look: Look): Known | null {
  const read = look.all('chamber-volume').map((it) => it.known);
  const all = look.places('chamber-volume').length;
  return meanOf(read, ...(read.length < all ? [`${read.length} of ${all} chambers read`] : []));
}

function spread(look: Look): Known | null {
  const read = look.all('chamber-volume').toSorted((a, b) => (a.known.value ?? 0) - (b.known.value ?? 0));
  const found = range(read.map((it) => it.known));
  if (found?.value == null) return null;
  const [least, most] = [read.at(0)?.spot.label, read.at(-1)?.spot.label];
  const which = found.value === 0 ? 'all alike' : `smallest ${least}, largest ${most}`;
  return made([found], found.value, [which]);
}

function toLargest(look: Look): Known | null {
  const most = largest(look.all('chamber-volume').map((it) => it.known));
  return difference(most, look.value('chamber-volume'));
}

/** Volume the ratio is reckoned with. */
function forRatio(look: Look): Known | null {
  const read = valueAt(look, 'chamber-mean');
  if (read) return read;
  const before =
    valueAt(look, 'chamber-mean', 'before') ?? figureOf(look.targetKnown('chamber-volume', 'chamber from the sheet'));
  if (look.place.stage === 'before' || !before) return before ?? notKnown(['chamber volume']);
  if (look.facts.casting.kind !== 'head') return before;
  const by = look.value('chamber-change', { stage: 'after' });
  const changed = figureOf(by);
  return changed ? made([before, changed], before.value + changed.value) : (by ?? before);
}

export const CHAMBER_FORMULAS: Readonly<Record<string, Formula>> = {
  'chamber-changed': (look) => (look.place.spot ? measuredAt(look, look.place.spot) : null),
  'chamber-expected': expected,
  'chamber-to-largest': toLargest,
  'chamber-mean': mean,
  'chamber-spread': spread,
  'chamber-circle': circle,
  'cut-per-cc': (look) => {
    const round = dataOf(look, 'chamber-circle');
    if (!round) return null;
    const { depth, perDiameter } = depthOfLayer(ONE_CC, round.value);
    return madeBy([[round, perDiameter]], depth);
  },
  'valve-sink': sink,
  'valve-sink-volume': sinkVolume,
  'chamber-by-cut': byCut,
  'chamber-by-sink': bySink,
  'chamber-change': change,
  'chamber-for-ratio': forRatio,
};
