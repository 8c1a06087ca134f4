/** Things in one line along a shaft: the main bearing caps of a block seen from below, or a crankshaft from the side. */
import { type DrawnSpot, type DrawnType, spotKey, spotsOf } from './drawn-type.ts';
import { PLATE_WIDTH } from './shape.ts';
import { drawFront, MARGIN, plateSteps, type Sketch, STRIP, sketch, WORD_SIZE } from './sketch.ts';

const HALF_TUNNEL = 330;
const RAIL = 2_600;

/** Draw a block mains up: sump rail, tunnel, one cap a main with its two fasteners. */
export function drawMainsLine(type: DrawnType, frontWords: string): Sketch {
  const spots = labelled(type, 'main', type.counts.mains ?? 0, 'M');
  const pad = sketch(RAIL + 2 * STRIP);
  const y = STRIP + RAIL / 2;
  const [left, width] = [MARGIN, PLATE_WIDTH - 2 * MARGIN];
  pad.path('body', plateSteps(left, STRIP, width, RAIL, 120));
  pad.path('body', plateSteps(left + 420, STRIP + 320, width - 840, RAIL - 640, 60), { fine: true });
  for (const way of [-1, 1])
    pad.line('port', left, y + way * HALF_TUNNEL, left + width, y + way * HALF_TUNNEL, { fine: true, dashed: true });
  const step = width / (spots.length + 0.4);
  const cap = Math.min(step * 0.52, 760);
  spots.forEach((spot, n) => {
    const x = PLATE_WIDTH / 2 + (n - (spots.length - 1) / 2) * step;
    drawCap(pad, spot, x, y, cap);
  });
  drawFront(pad, frontWords, left, STRIP + RAIL + STRIP / 2);
  return pad;
}

function drawCap(pad: Sketch, spot: DrawnSpot, x: number, y: number, cap: number): void {
  const key = spotKey(spot);
  const half = RAIL / 2 - 460;
  pad.path('chamber', plateSteps(x - cap / 2, y - half, cap, 2 * half, 70), { spot: key });
  for (const way of [-1, 1]) pad.circle('bolt', x, y + way * (half - 230), 120);
  pad.words(x, y, WORD_SIZE, spot.label);
  pad.spot({ key, label: spot.label, kind: spot.kind, x, y, r: Math.max(cap / 2, 330) });
}

/** Draw a crankshaft: mains on the centre line, pins thrown up and down in turn, webs between, flange at the rear. */
export function drawCrank(type: DrawnType, frontWords: string): Sketch {
  const mains = labelled(type, 'journal', type.counts.mains ?? 0, 'M').filter((spot) => spot.row === 1);
  const pins = spotsOf(type.spots, 'journal').filter((spot) => spot.row !== 1);
  const pad = sketch(3_400 + STRIP);
  const y = 1_700;
  const order = inTurn(mains, pins);
  const step = (PLATE_WIDTH - 2 * MARGIN - 1_500) / Math.max(order.length, 1);
  const x = (n: number): number => MARGIN + 850 + (n + 0.5) * step;
  pad.path('body', plateSteps(MARGIN, y - 170, 850 - step * 0.1, 340, 40));
  pad.path('body', plateSteps(x(order.length - 1) + step * 0.46, y - 520, 420, 1_040, 40));
  order.forEach(({ spot, pin }, n) => {
    const centre = pin === 0 ? y : y + pin * 640;
    const half = pin === 0 ? 400 : 340;
    if (n > 0) drawWeb(pad, x(n - 0.5), y, step * 0.26, pin === 0 ? (order[n - 1]?.pin ?? 0) : pin);
    drawJournal(pad, spot, x(n), centre, step * 0.72, half);
  });
  drawFront(pad, frontWords, MARGIN, pad.height - STRIP / 2);
  return pad;
}

type InTurn = Readonly<{ spot: DrawnSpot /** 0 a main, -1 a pin up, 1 a pin down */; pin: number }>;

/** Mains and pins as they follow each other along the shaft: pins are shared evenly between the mains. */
function inTurn(mains: readonly DrawnSpot[], pins: readonly DrawnSpot[]): InTurn[] {
  const gaps = Math.max(mains.length - 1, 1);
  const order: InTurn[] = [];
  let next = 0;
  mains.forEach((spot, n) => {
    order.push({ spot, pin: 0 });
    const until = n < mains.length - 1 ? Math.round(((n + 1) * pins.length) / gaps) : pins.length;
    for (const pin of pins.slice(next, until)) {
      order.push({ spot: pin, pin: next % 2 === 0 ? -1 : 1 });
      next += 1;
    }
  });
  return order;
}

function drawJournal(pad: Sketch, spot: DrawnSpot, x: number, y: number, width: number, half: number): void {
  const key = spotKey(spot);
  pad.path('chamber', plateSteps(x - width / 2, y - half, width, 2 * half, 30), { spot: key });
  pad.words(x, y, Math.min(WORD_SIZE, width * 0.8), spot.label);
  pad.spot({ key, label: spot.label, kind: spot.kind, x, y, r: Math.max(half, width / 2) });
}

function drawWeb(pad: Sketch, x: number, y: number, width: number, pin: number): void {
  const [top, foot] = pin < 0 ? [1_120, 820] : [820, 1_120];
  pad.path('body', plateSteps(x - width / 2, y - top, width, top + foot, 60));
}

/** Spots of a kind; a type without them gets as many unnamed places as its count says. */
function labelled(type: DrawnType, kind: string, count: number, letter: string): DrawnSpot[] {
  const found = spotsOf(type.spots, kind);
  if (found.length > 0) return found;
  return Array.from({ length: Math.max(count, 1) }, (_, n) => ({
    kind,
    label: `${letter}${n + 1}`,
    benchOrder: n + 1,
    row: 1,
    bank: 'none',
    cylinder: null,
    side: 'none',
  }));
}
