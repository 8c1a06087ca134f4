/**
 * What a cut of the seat (`a`, along the valve) and a grind of its face (`n`, square to the face) do: planned at "before",
 * done at "after". The valve rises by `a + n / cos(seat angle)`; the spring grows taller and weaker by it, the tip rises, the rim
 * thins by `n / cos`, the chamber grows by the ring the head leaves. Exact geometry.
 */
import { sunkSlopes, sunkVolume } from '../geometry/grinding.ts';
import { type Known, type Look, made, madeBy, unknown } from '../look.ts';
import { chooseShims, stackText } from '../shims.ts';
import { difference, type Formula } from './formula.ts';
import { axial, fromMean } from './seats.ts';
import { heightToShim, loadFrom, shimTaskOf } from './springs.ts';

const planned = (known: Known | null): Known | null => known && { ...known, planned: true };

/** Sum of two figures; what is not known of one of them is said. */
function sum(a: Known | null, b: Known | null, marks: readonly string[] = []): Known | null {
  if (a === null || b === null) return null;
  if (a.value === null || b.value === null) return a.value === null ? a : b;
  return made([a, b], a.value + b.value, marks);
}

function rise(look: Look): Known | null {
  const [cut, face] = [look.value('seat-cut-depth'), look.value('face-stock')];
  if (cut === null && face === null) return null;
  if (cut === null || face === null) return unknown('say both the cut and the grind, 0 where nothing is taken off');
  const risen = sum(cut, axial(look, face));
  if (look.place.stage === 'after') return risen;
  // Heights read by now hold the cut already: a plan would count it twice.
  const isDone = look.value('valve-rise', { stage: 'after' })?.value != null;
  return isDone ? unknown('done: what was cut is written down') : planned(risen);
}

const planHeight = (look: Look): Known | null => planned(sum(heightToShim(look), look.value('valve-rise')));

/** The stack to fit after cutting, with its height. */
function planStack(look: Look) {
  const height = look.value('plan-height');
  const task = shimTaskOf(look, height);
  return task && height ? { height, task, choice: chooseShims(task) } : null;
}

function planShim(look: Look): Known | null {
  const found = planStack(look);
  if (!found) return null;
  const { stack } = found.choice;
  return { ...made([], stack.sum, [stackText(stack.thicknesses, found.task.stock)]), uncertainty: 0, planned: true };
}

function planHeightWithShim(look: Look): Known | null {
  const found = planStack(look);
  if (found) return planned(made([found.height], found.choice.height));
  const height = look.value('plan-height');
  return height?.value === null ? height : null;
}

function planTip(look: Look): Known | null {
  const risen = sum(look.either('tip-height'), look.value('valve-rise'));
  if (risen?.value == null) return risen;
  const ground = look.value('tip-removed');
  const value = ground?.value == null ? risen.value : risen.value - ground.value;
  return planned(made([risen, ground], value, ground === null ? ['tip not ground'] : []));
}

/** Tips as they would stand: planned where a cut is planned, else as they are. */
function planTipFromMean(look: Look): Known | null {
  const here = look.value('plan-tip-height');
  const tips = new Map(
    (['after', 'before'] as const)
      .flatMap((stage) => look.all('tip-height', { stage }))
      .map((it) => [it.spot.id, it.known]),
  );
  for (const { spot, known } of look.all('plan-tip-height')) tips.set(spot.id, known);
  return planned(fromMean(here, [...tips.values()]));
}

function planChamber(look: Look): Known | null {
  const [depth, head] = [look.value('valve-rise'), look.figure('valve-head-diameter')];
  if (depth === null || depth.value === null) return depth;
  if (head?.value == null) return unknown('the diameter of the valve head is wanted');
  const slopes = sunkSlopes(head.value, depth.value);
  return planned(
    madeBy(
      [
        [depth, slopes.depth],
        [head, slopes.diameter],
      ],
      sunkVolume(head.value, depth.value),
    ),
  );
}

const planRecession = (look: Look): Known | null =>
  planned(sum(look.either('recession'), look.value('valve-rise'), ['before surfacing']));

function planLash(look: Look): Known | null {
  const left = difference(look.value('lash', { stage: 'before' }), look.value('valve-rise'));
  return planned(left);
}

export const GRINDING_FORMULAS: Readonly<Record<string, Formula>> = {
  'valve-rise': rise,
  'plan-height': planHeight,
  'plan-shim': planShim,
  'plan-height-with-shim': planHeightWithShim,
  'plan-load-no-shim': (look) => planned(loadFrom(look, look.value('plan-height'))),
  'plan-seat-load': (look) => planned(loadFrom(look, look.value('plan-height-with-shim'))),
  'plan-open-load': (look) => planned(loadFrom(look, difference(look.value('plan-height-with-shim'), look.lift()))),
  'plan-tip-height': planTip,
  'plan-tip-from-mean': planTipFromMean,
  'plan-chamber': planChamber,
  'plan-recession': planRecession,
  'plan-lash': planLash,
};
