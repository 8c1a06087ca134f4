/** Everything that is neither a head, a block nor a shaft: flywheel, connecting rods, cover. */
import { type DrawnSpot, type DrawnType, spotKey, spotsOf } from './drawn-type.ts';
import { PLATE_WIDTH } from './shape.ts';
import { drawFront, MARGIN, plateSteps, type Sketch, STRIP, sketch, WORD_SIZE } from './sketch.ts';

const CENTRE = PLATE_WIDTH / 2;

/** A flywheel from its friction side: rim, friction band, crank flange holes. */
export function drawFlywheel(): Sketch {
  const r = 2_500;
  const y = r + 160;
  const pad = sketch(2 * y);
  pad.circle('body', CENTRE, y, r);
  pad.circle('body', CENTRE, y, r * 0.95, { fine: true });
  pad.circle('chamber', CENTRE, y, r * 0.82);
  pad.circle('chamber', CENTRE, y, r * 0.52);
  pad.circle('port', CENTRE, y, r * 0.12);
  ring(pad, y, r * 0.26, 6, 100);
  ring(pad, y, r * 0.885, 6, 80);
  return pad;
}

function ring(pad: Sketch, y: number, radius: number, count: number, r: number): void {
  for (let n = 0; n < count; n += 1) {
    const angle = (2 * Math.PI * (n + 0.5)) / count;
    pad.circle('bolt', CENTRE + radius * Math.sin(angle), y - radius * Math.cos(angle), r);
  }
}

/** A set of rods side by side, big end down, each with its number. */
export function drawRods(type: DrawnType): Sketch {
  const spots = spotsOf(type.spots, 'rod');
  const count = Math.max(1, spots.length, type.counts.rods ?? 0, spots.length === 0 ? (type.counts.cylinders ?? 0) : 0);
  const step = Math.min((PLATE_WIDTH - 2 * MARGIN) / count, 1_700);
  const big = Math.min(step * 0.4, 520);
  const pad = sketch(4_200);
  for (let n = 0; n < count; n += 1) drawRod(pad, spots[n], n, CENTRE + (n - (count - 1) / 2) * step, big);
  return pad;
}

function drawRod(pad: Sketch, spot: DrawnSpot | undefined, n: number, x: number, big: number): void {
  const [smallY, bigY, small] = [560, 2_900, big * 0.52];
  const style = spot === undefined ? {} : { spot: spotKey(spot) };
  pad.path('body', [
    ['M', [x - small * 0.55, smallY]],
    ['L', [x + small * 0.55, smallY]],
    ['L', [x + big * 0.6, bigY]],
    ['L', [x - big * 0.6, bigY]],
    ['Z'],
  ]);
  pad.circle('body', x, smallY, small);
  pad.circle('port', x, smallY, small * 0.55);
  pad.circle('body', x, bigY, big, style);
  pad.circle('chamber', x, bigY, big * 0.76);
  pad.line('body', x - big, bigY, x - big * 0.76, bigY);
  pad.line('body', x + big * 0.76, bigY, x + big, bigY);
  pad.words(x, 3_850, WORD_SIZE, spot?.label ?? String(n + 1));
  if (spot) pad.spot({ key: spotKey(spot), label: spot.label, kind: spot.kind, x, y: bigY, r: big });
}

/** A cover or anything else flat: outline with fasteners round the edge. */
export function drawCover(frontWords: string): Sketch {
  const [left, width, deep] = [1_400, 7_200, 3_200];
  const pad = sketch(deep + 2 * STRIP);
  pad.path('body', plateSteps(left, STRIP, width, deep, 420));
  pad.path('body', plateSteps(left + 420, STRIP + 420, width - 840, deep - 840, 260), { fine: true });
  for (const share of [0.12, 0.37, 0.63, 0.88]) {
    for (const y of [STRIP + 210, STRIP + deep - 210]) pad.circle('bolt', left + width * share, y, 95);
  }
  for (const x of [left + 210, left + width - 210]) pad.circle('bolt', x, STRIP + deep / 2, 95);
  drawFront(pad, frontWords, left, STRIP + deep + STRIP / 2);
  return pad;
}
