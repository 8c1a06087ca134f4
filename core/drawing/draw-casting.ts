/**
 * Draw a casting from its type's data. Five generators: head face, block deck, things in a line, port face, round things.
 *
 * The layout depends on the type and the view alone, never on marks, labels or how the casting lies, so that a mark keeps
 * its place. Pure and browser-safe: screen and paper call the same function.
 */
import { drawBalloons } from './balloons.ts';
import { drawBlockDeck } from './block-deck.ts';
import { type Balloon, type DrawnType, type DrawnView, viewsOf, viewWords } from './drawn-type.ts';
import { drawHeadFace } from './head-face.ts';
import { drawCrank, drawMainsLine } from './mains-line.ts';
import { drawManifoldFace } from './manifold-face.ts';
import { drawCover, drawFlywheel, drawRods } from './round-things.ts';
import type { Drawing } from './shape.ts';
import type { Sketch } from './sketch.ts';

export type DrawOptions = Readonly<{
  /** Default: the kind's usual view. A view the kind does not have draws the usual one. */
  view?: DrawnView | undefined;
  /** Turned end for end: places move, words stay upright. */
  turned?: boolean | undefined;
  balloons?: readonly Balloon[] | undefined;
  /** What stands at the front end. Default FRONT. */
  frontWords?: string | undefined;
}>;

/** The drawing of one view of a casting type, with its condition marks. */
export function drawCasting(type: DrawnType, options: DrawOptions = {}): Drawing {
  const views = viewsOf(type.kind);
  const view = options.view !== undefined && views.includes(options.view) ? options.view : views[0];
  const turned = options.turned === true;
  const done = sketchOf(type, view, options.frontWords ?? 'FRONT').finish(turned);
  return {
    ...done,
    shapes: [
      ...done.shapes,
      ...drawBalloons(options.balloons ?? [], { height: done.height, turned, spots: done.spots }),
    ],
    caption: captionOf(type, view, turned),
  };
}

function sketchOf(type: DrawnType, view: DrawnView, front: string): Sketch {
  switch (type.kind) {
    case 'head':
      return headOf(type, view, front);
    case 'block':
      return view === 'mains' ? drawMainsLine(type, front) : drawBlockDeck(type, front);
    case 'crank':
      return drawCrank(type, front);
    case 'intake_manifold':
      return drawManifoldFace(type, 'I', front);
    case 'exhaust_manifold':
      return drawManifoldFace(type, 'E', front);
    case 'rod_set':
      return drawRods(type);
    case 'flywheel':
      return drawFlywheel();
    case 'cover':
      return drawCover(front);
  }
}

function headOf(type: DrawnType, view: DrawnView, front: string): Sketch {
  if (view === 'intake_face') return drawManifoldFace(type, 'I', front);
  if (view === 'exhaust_face') return drawManifoldFace(type, 'E', front);
  return drawHeadFace(type, view === 'top', front);
}

function captionOf(type: DrawnType, view: DrawnView, turned: boolean): string {
  if (type.kind === 'flywheel' || type.kind === 'rod_set') return viewWords(view);
  return `${viewWords(view)}, front is the ${turned ? 'right' : 'left'} end`;
}
