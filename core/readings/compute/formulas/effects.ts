/**
 * What a cut changes elsewhere: how much lower the head sits, cam timing, pushrods, room for the valves. The geometry is exact;
 * that a valve meets its piston about so much sooner is common practice, no source.
 */
import { camRetard } from '../geometry/cam-timing.ts';
import { type Known, type Look, made, madeBy, unknown } from '../look.ts';
import { sinkOfValve } from './chambers.ts';
import { dataOf, type Figure, figureOf, meanOf, overall, valueAt } from './engine-data.ts';
import type { Formula } from './formula.ts';
import { sayLength } from './say.ts';

const NOT_CUT = 'as planned, not cut yet';

/** Taken off this head: as measured, else as planned. */
function headCut(look: Look): Known | null {
  const measured = valueAt(look, 'stock-removed', 'after');
  if (measured) return measured;
  const plan = figureOf(look.either('head-cut-planned'));
  if (plan) return { ...made([plan], plan.value, [NOT_CUT]), planned: true };
  const least = valueAt(look, 'deck-cut-best', 'before');
  return least && { ...made([least], least.value, ['least cut of the survey', NOT_CUT]), planned: true };
}

/** What a planned cut leaves; once the head is cut, what was measured. */
function thicknessThen(look: Look): Known | null {
  const measured = valueAt(look, 'thickness', 'after');
  if (measured) return made([measured], measured.value, ['measured']);
  const [found, cut] = [valueAt(look, 'thickness', 'before'), valueAt(look, 'head-cut', 'after')];
  return found && cut?.planned ? made([found, cut], found.value - cut.value) : null;
}

/** Taken off this casting, head or block. */
function ownCut(look: Look): Figure | null {
  if (look.facts.casting.kind === 'head') return valueAt(look, 'head-cut', 'after');
  const removed = meanOf(look.all('deck-removed', { stage: 'after' }).map((it) => it.known));
  const plan = valueAt(look, 'block-cut', 'before');
  return removed ?? (plan && figureOf({ ...made([overall(plan)], plan.value, [NOT_CUT]), planned: true }));
}

/** Old gasket less new one; null when the same or nothing is known of both. */
function thinner(look: Look): Figure | null {
  const at = (stage: 'before' | 'after') => figureOf(look.value('gasket-thickness', { stage }));
  const old = at('before') ?? figureOf(look.targetKnown('gasket-thickness', 'old gasket from the sheet'));
  const fresh = at('after');
  return old && fresh ? figureOf(made([old, fresh], old.value - fresh.value)) : null;
}

/** Head cut, deck cut and a thinner gasket together; what was not said is said to be left out. */
function drop(look: Look): Known | null {
  const isHead = look.facts.casting.kind === 'head';
  const own = ownCut(look);
  const other = figureOf(look.either(isHead ? 'block-deck-cut' : 'heads-cut'));
  const gasket = thinner(look);
  if (!own && !other && !gasket) return null;
  const left = [
    ...(own ? [] : [isHead ? 'cut of the head not known' : 'cut of the deck not known']),
    ...(other ? [] : [isHead ? 'no deck cut entered' : 'no cut of the heads entered']),
    ...(gasket ? [] : ['gasket taken as thick as the old one']),
  ];
  const diesel = look.facts.casting.fuel === 'diesel' ? ['injectors and pre-chambers stand out that much more'] : [];
  const sum = (own?.value ?? 0) + (other?.value ?? 0) + (gasket?.value ?? 0);
  return made([own, other, gasket], sum, [...left, ...diesel, ...earlierCuts(look)]);
}

/** What former visits took off this casting moved the engine too, once already. */
function earlierCuts(look: Look): string[] {
  const sum = look.facts.earlier.reduce((total, it) => total + Math.max(it.removed ?? 0, 0), 0);
  return sum === 0 ? [] : [`earlier visits took ${sayLength(look, sum)} more, not counted here`];
}

const isOverhead = (look: Look): boolean => ['sohc', 'dohc'].includes(look.facts.casting.camLayout);

/** Where the arithmetic does not hold; said beside every figure. */
const TIMING_LIMITS = 'not for gears, nor for an idler or tensioner in the pulling run';

const CAM_NOT_KNOWN = 'where its cam sits is not known';

/** Why no timing is claimed; null where it may be. */
function noTiming(look: Look): string | null {
  if (look.facts.casting.camLayout === 'none') return `${CAM_NOT_KNOWN}: an overhead cam comes late by the cut`;
  if (!isOverhead(look)) return 'no overhead cam: its timing stays';
  return look.facts.engine?.layout === 'flat' ? 'flat engine: its banks do not move alike, set both cams anew' : null;
}

function retard(look: Look, of: 'cam' | 'crank'): Known | null {
  const why = noTiming(look);
  if (why !== null) return unknown(why);
  const moved = valueAt(look, 'head-drop', 'after');
  const cam = dataOf(look, 'cam-sprocket');
  if (!moved) return null;
  if (!cam) return unknown('measure the pitch diameter of the cam sprocket');
  const [crank, centres] = [dataOf(look, 'crank-sprocket'), dataOf(look, 'sprocket-centres')];
  const other = crank && centres ? { crank: crank.value, centres: centres.value } : null;
  const found = camRetard(moved.value, { cam: cam.value, other });
  if (!found) return unknown('these sprockets and centres cannot be: look again');
  const turns = of === 'cam' ? 1 : 2;
  const marks = [
    ...(other ? [] : ['quick form: crank sprocket and centres not known']),
    TIMING_LIMITS,
    ...(look.facts.engine?.layout === 'v' ? ['only where the run lies along its bank'] : []),
    ...(of === 'cam' ? ['the tensioner has that much more to take up'] : []),
  ];
  const own = made([moved, cam], 0).marks.filter((mark) => mark === NOT_CUT);
  const known = madeBy(
    [
      [moved, found.perDrop * turns],
      [cam, (found[of] * -1) / cam.value],
    ],
    found[of],
  );
  return { ...known, marks: [...own, ...cam.marks, ...marks] };
}

/** Lifters of a pushrod engine sit deeper in their preload by as much as the head came down. */
function pushrods(look: Look): Known | null {
  const { camLayout } = look.facts.casting;
  if (camLayout === 'none') return unknown(`${CAM_NOT_KNOWN}: pushrods would be too long by the cut`);
  if (camLayout !== 'ohv') return unknown('no pushrods on this engine');
  const moved = valueAt(look, 'head-drop', 'after');
  return (
    moved && {
      ...made([moved], moved.value),
      marks: ['lifter preload changes by the cut and by risen tips: measure the pushrods'],
    }
  );
}

/** Room that is left between this valve and its piston. */
function pistonRoom(look: Look): Known | null {
  const [read, moved] = [valueAt(look, 'valve-to-piston', 'before'), valueAt(look, 'head-drop', 'after')];
  if (!read || !moved) return null;
  const sunk = sinkOfValve(look);
  const left = read.value - moved.value + (sunk?.value ?? 0);
  const known = made([read, moved, sunk], left);
  return { ...known, marks: ['about: check with clay', ...(sunk ? [] : ['sink of the valve not known, left out'])] };
}

/** How much nearer the valves come: the drop less the valve that sank least. */
function pistonLoss(look: Look): Known | null {
  const moved = valueAt(look, 'head-drop', 'after');
  if (!moved) return null;
  const sinks = look.all('valve-sink', { stage: 'after' }).flatMap(({ known }) => figureOf(known) ?? []);
  // A plan for some valves is no reason to promise room at all of them.
  const isWhole = sinks.length > 0 && sinks.length === look.places('valve-sink').length;
  const least = isWhole ? sinks.reduce((low, it) => (it.value < low.value ? it : low)) : null;
  const known = made([moved, least], moved.value - (least?.value ?? 0));
  return { ...known, marks: [least ? 'cut less the least sunk valve' : 'by the cut; sink of the valves left out'] };
}

export const EFFECT_FORMULAS: Readonly<Record<string, Formula>> = {
  'head-cut': headCut,
  'thickness-then': thicknessThen,
  'head-drop': drop,
  'cam-retard': (look) => retard(look, 'cam'),
  'crank-retard': (look) => retard(look, 'crank'),
  'pushrod-change': pushrods,
  'valve-to-piston-left': pistonRoom,
  'valve-to-piston-loss': pistonLoss,
};
