/**
 * Compression before and after, with gasket, deck clearance, pistons and bore: what the casting is cut and what goes with it are
 * reckoned together. Exact mathematics; the room round the top land is left out unless it is measured, as is usual.
 */

import { showValue, withMark } from '../../../kernel/measure-show.ts';
import { measureOf } from '../../../kernel/measure-units.ts';
import { clearanceFor, pistonDown, ratioOf } from '../geometry/compression.ts';
import { depthOfLayer, discVolume, ringVolume } from '../geometry/cylinder-volume.ts';
import { type Known, type Look, made, madeBy, unknown } from '../look.ts';
import {
  because,
  boreOf,
  changingAt,
  dataOf,
  type Figure,
  figureOf,
  inShort,
  missing,
  notKnown,
  overall,
  strokeOf,
  valueAt,
} from './engine-data.ts';
import type { Formula } from './formula.ts';
import { sayLength } from './say.ts';

const HALF_TURN = measureOf('180', 'deg');
const MEASURE_AGAIN = measureOf('0.030', 'in');

function disc(diameter: Figure, height: Figure, marks: readonly string[] = []): Figure | null {
  const { volume, perDiameter, perHeight } = discVolume(diameter.value, height.value);
  return figureOf(
    madeBy(
      [
        [diameter, perDiameter],
        [height, perHeight],
      ],
      volume,
      marks,
    ),
  );
}

function swept(look: Look): Known | null {
  const [bore, stroke] = [boreOf(look), strokeOf(look)];
  return bore && stroke ? disc(bore, stroke) : notKnown(missing({ bore, stroke }));
}

function displacement(look: Look): Known | null {
  const one = valueAt(look, 'swept-volume');
  const cylinders = look.facts.engine?.cylinders ?? null;
  if (!one || cylinders === null) return null;
  const all = one.value * cylinders;
  return madeBy([[one, cylinders]], all, [`${cylinders} cylinders, ${withMark(showValue(all, 'in3', 1), 'in3')}`]);
}

/** The maker's figure where it is typed; else the ring of the gasket; else the sheet's cc. */
function gasket(look: Look): Known | null {
  const bore = changingAt(look, 'gasket-bore', 'gasket bore');
  const thickness = changingAt(look, 'gasket-thickness', 'gasket thickness');
  if (bore && thickness) return disc(bore, thickness);
  const sheet = look.targetKnown('gasket-volume', 'gasket volume from the sheet');
  return sheet ?? notKnown(missing({ 'gasket bore': bore, 'gasket thickness': thickness }));
}

/** Gasket of this stage: where nothing is known of the new one it is as the old one, which is said. */
function gasketAt(look: Look): Known | null {
  const own = look.value('gasket-volume');
  if (own?.value != null || look.place.stage === 'before') return own;
  const old = valueAt(look, 'gasket-volume', 'before');
  return old ? made([old], old.value, ['new gasket taken as the old one']) : own;
}

function crevice(look: Look): Known | null {
  const [bore, land, height] = [boreOf(look), dataOf(look, 'land-diameter'), dataOf(look, 'land-height')];
  if (!bore || !land || !height) return null;
  return made([bore, land, height], ringVolume(bore.value, land.value, height.value));
}

/** Room of the piston's crown: dish less dome. One of both is enough; a flat piston is typed as a dish of nothing. */
function crown(look: Look): Figure | null {
  const [dish, dome] = [dataOf(look, 'piston-dish'), dataOf(look, 'piston-dome')];
  return dish || dome ? figureOf(made([dish, dome], (dish?.value ?? 0) - (dome?.value ?? 0))) : null;
}

const FLAT = 'piston dish or dome (0 for a flat piston)';

/** Everything above the piston but the chamber. */
function aroundChamber(look: Look): Known {
  const [bore, crownHere] = [boreOf(look), crown(look)];
  const gasketHere = figureOf(gasketAt(look));
  const deck = valueAt(look, 'deck-clearance');
  if (!bore || !deck || !crownHere || !gasketHere) {
    return notKnown(
      missing({
        bore,
        'gasket bore and thickness, or its cc': gasketHere,
        'piston below the deck': deck,
        [FLAT]: crownHere,
      }),
    );
  }
  const room = disc(bore, overall(deck));
  const land = figureOf(look.either('crevice-volume'));
  const sum = gasketHere.value + (room?.value ?? 0) + crownHere.value + (land?.value ?? 0);
  return made([gasketHere, room, crownHere, land], sum, land ? [] : ['room round the top land left out']);
}

function clearance(look: Look): Known | null {
  const chamber = look.value('chamber-for-ratio');
  const around = aroundChamber(look);
  if (chamber?.value == null || around.value === null) return because(chamber, around);
  return made([chamber, around], chamber.value + around.value);
}

function ratio(look: Look): Known | null {
  const [all, above] = [look.value('swept-volume'), look.value('clearance-volume')];
  if (all?.value == null || above?.value == null) return because(all, above);
  return ratioKnown(all, above, all.value) ?? unknown('nothing left above the piston: look at the figures again');
}

function ratioKnown(all: Known, above: Known, sweptVolume: number, marks: readonly string[] = []): Known | null {
  const found = ratioOf(sweptVolume, above.value ?? 0);
  return (
    found &&
    madeBy(
      [
        [all, found.perSwept],
        [above, found.perClearance],
      ],
      found.ratio,
      marks,
    )
  );
}

/** The ratio's own rows carry the small print: here only what it is a change of. */
function ratioChange(look: Look): Known | null {
  const [before, after] = [valueAt(look, 'compression-ratio', 'before'), valueAt(look, 'compression-ratio', 'after')];
  if (!before || !after) return unknown('ratio before or after not known');
  const change = made([before, after], after.value - before.value);
  return { ...change, marks: [] };
}

/** Chamber that makes the wanted ratio with everything else as it is. */
function chamberWanted(look: Look): Known | null {
  const goal = dataOf(look, 'ratio-wanted');
  if (!goal) return null;
  const all = look.value('swept-volume');
  const around = aroundChamber(look);
  if (all?.value == null || around.value === null) return around.value === null ? around : all;
  const above = clearanceFor(all.value, goal.value);
  if (above === null || above <= around.value) return unknown('no chamber makes this ratio');
  return made([all, around], above - around.value);
}

function cutForRatio(look: Look): Known | null {
  const goal = look.value('chamber-wanted');
  if (goal?.value == null) return goal;
  const [chamber, round] = [valueAt(look, 'chamber-for-ratio'), figureOf(look.either('chamber-circle'))];
  if (!chamber) return look.value('chamber-for-ratio');
  if (!round) return look.either('chamber-circle');
  const { depth, perDiameter } = depthOfLayer(chamber.value - goal.value, round.value);
  const { perHeight } = discVolume(round.value, 1);
  return madeBy(
    [
      [chamber, 1 / perHeight],
      [goal, 1 / perHeight],
      [round, perDiameter],
    ],
    depth,
    cutWarnings(look, depth),
  );
}

function cutWarnings(look: Look, depth: number): string[] {
  if (depth < 0) return ['ratio is higher already: a thicker gasket, or open the chambers'];
  const [thickness, least] = [figureOf(look.either('thickness')), look.low('thickness')];
  const left = thickness && least !== null ? thickness.value - least : null;
  return [
    ...(left !== null && left < depth ? [`leaves the head ${sayLength(look, depth - left)} below its minimum`] : []),
    ...(depth > MEASURE_AGAIN
      ? [`more than ${sayLength(look, MEASURE_AGAIN)}: fill the chamber again on the way`]
      : []),
  ];
}

/** The ratio that counts from where the intake closes; a late cam closes it later. */
function closingRatio(look: Look): Known | null {
  const [closes, stroke, rod] = [dataOf(look, 'intake-closes'), strokeOf(look), dataOf(look, 'rod-length')];
  const [all, above] = [valueAt(look, 'swept-volume'), valueAt(look, 'clearance-volume')];
  if (!closes || !stroke || !rod || !all || !above) return null;
  const late = look.place.stage === 'after' ? valueAt(look, 'crank-retard', 'after') : null;
  const down = pistonDown(stroke.value, rod.value, HALF_TURN + closes.value + (late?.value ?? 0));
  if (down === null) return unknown('the rod is too short for this stroke');
  const { volume } = discVolume(boreOf(look)?.value ?? 0, down);
  return ratioKnown(all, above, volume, late ? ['cam late by the cut counted in'] : []);
}

export const COMPRESSION_FORMULAS: Readonly<Record<string, Formula>> = {
  'swept-volume': inShort(swept),
  displacement: inShort(displacement),
  'gasket-volume': inShort(gasket),
  'crevice-volume': inShort(crevice),
  'clearance-volume': inShort(clearance),
  'compression-ratio': inShort(ratio),
  'ratio-change': ratioChange,
  'chamber-wanted': inShort(chamberWanted),
  'cut-for-ratio': inShort(cutForRatio),
  'closing-ratio': inShort(closingRatio),
};
