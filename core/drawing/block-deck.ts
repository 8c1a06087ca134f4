/** A block seen on its deck: one plate a bank, cylinders in a line, deck corners and side valves where the spots say. */
import { type DrawnSpot, type DrawnType, spotKey, spotsOf } from './drawn-type.ts';
import { PLATE_WIDTH } from './shape.ts';
import { drawFront, fittingSize, MARGIN, plateSteps, type Sketch, STRIP, sketch, WORD_SIZE } from './sketch.ts';

const WIDEST_PITCH = 2_300;
const BORE_SHARE = 0.42;

type Bank = Readonly<{
  name: 'left' | 'right' | 'none';
  cylinders: DrawnSpot[];
  corners: DrawnSpot[];
  valves: DrawnSpot[];
}>;
type Layout = Readonly<{ pitch: number; bore: number; left: number; width: number; deck: number; side: number }>;

/**
 * Banks from the top of the picture down. Seen from above with the front at the left, the left bank (as seen from behind
 * the engine, looking to its front) lies at the bottom.
 */
function banksOf(type: DrawnType): Bank[] {
  const names = (['right', 'left', 'none'] as const).filter((name) =>
    type.spots.some((spot) => spot.kind === 'cylinder' && spot.bank === name),
  );
  return (names.length === 0 ? (['none'] as const) : names).map((name) => ({
    name,
    cylinders: spotsOf(type.spots, 'cylinder').filter((spot) => spot.bank === name),
    corners: spotsOf(type.spots, 'deck_corner').filter((spot) => spot.bank === name),
    valves: spotsOf(type.spots, 'valve').filter((spot) => spot.bank === name),
  }));
}

/** Draw the deck or decks of a block. */
export function drawBlockDeck(type: DrawnType, frontWords: string): Sketch {
  const banks = banksOf(type);
  const most = Math.max(1, ...banks.map((bank) => bank.cylinders.length));
  const at = layoutOf(
    most,
    banks.some((bank) => bank.valves.length > 0),
  );
  const step = at.deck + (banks.length > 1 ? STRIP : 0);
  const pad = sketch(STRIP + step * banks.length + (banks.length > 1 ? STRIP * 0.2 : STRIP));
  for (const [n, bank] of banks.entries()) drawBank(pad, type, bank, at, STRIP + step * n);
  drawFront(pad, frontWords, at.left, pad.height - STRIP / 2);
  return pad;
}

function layoutOf(cylinders: number, sideValves: boolean): Layout {
  const pitch = Math.min((PLATE_WIDTH - 2 * MARGIN - 500) / cylinders, WIDEST_PITCH);
  const bore = pitch * BORE_SHARE;
  const width = pitch * cylinders + 500;
  const side = sideValves ? bore * 1.05 : 0;
  return { pitch, bore, left: (PLATE_WIDTH - width) / 2, width, deck: 2 * bore * 1.34 + 320 + side, side };
}

function drawBank(pad: Sketch, type: DrawnType, bank: Bank, at: Layout, top: number): void {
  const y = top + (at.deck - at.side) / 2;
  pad.path('body', plateSteps(at.left, top, at.width, at.deck, 90));
  const count = Math.max(1, bank.cylinders.length);
  const x = (n: number): number => PLATE_WIDTH / 2 + (n - (count - 1) / 2) * at.pitch;
  drawBolts(pad, at, x, y, count);
  for (const [n, spot] of bank.cylinders.entries()) drawCylinder(pad, spot, x(n), y, at.bore, type.liners === true);
  for (const spot of bank.valves) drawSideValve(pad, spot, bank, x, y + at.bore + at.side * 0.62, at);
  for (const [n, spot] of bank.corners.entries()) drawCorner(pad, spot, n, at, top);
  if (bank.name !== 'none') {
    pad.words(PLATE_WIDTH / 2, top - STRIP / 2, WORD_SIZE, bank.name === 'left' ? 'LEFT BANK' : 'RIGHT BANK');
  }
}

/** Head bolts between the cylinders, those at the ends pulled in beside the corner's label. */
function drawBolts(pad: Sketch, at: Layout, x: (n: number) => number, y: number, count: number): void {
  for (let n = 0; n <= count; n += 1) {
    const edge = n === 0 ? 420 : n === count ? -420 : 0;
    const r = Math.max(80, at.bore * 0.1);
    for (const side of [-1, 1]) pad.circle('bolt', x(n - 0.5) + edge, y + side * at.bore * 1.14, r);
  }
}

function drawCylinder(pad: Sketch, spot: DrawnSpot, x: number, y: number, r: number, liner: boolean): void {
  const key = spotKey(spot);
  if (liner) pad.circle('chamber', x, y, r * 1.1, { fine: true });
  pad.circle('chamber', x, y, r, { spot: key });
  pad.words(x, y, Math.min(r * 0.9, 620), spot.label);
  pad.spot({ key, label: spot.label, kind: spot.kind, x, y, r });
}

/** Seats in the block stand in a row beside their cylinder, in bench order. */
function drawSideValve(
  pad: Sketch,
  spot: DrawnSpot,
  bank: Bank,
  x: (n: number) => number,
  y: number,
  at: Layout,
): void {
  const mates = bank.valves.filter((valve) => valve.cylinder === spot.cylinder);
  const cylinder = bank.cylinders.findIndex((place) => place.cylinder === spot.cylinder);
  const r = at.bore * 0.4;
  const centre = x(cylinder) + (mates.indexOf(spot) - (mates.length - 1) / 2) * at.bore * 1.0;
  const key = spotKey(spot);
  pad.circle('valve', centre, y, r, { spot: key });
  pad.circle('valve', centre, y, r * 0.82, { fine: true });
  const size = fittingSize(spot.label, r, WORD_SIZE, 230);
  if (size > 0) pad.words(centre, y, size, spot.label);
  pad.spot({ key, label: spot.label, kind: spot.kind, x: centre, y, r });
}

/** Corners 1 and 2 lie along the upper edge, 3 and 4 along the lower, each from the front to the rear. */
function drawCorner(pad: Sketch, spot: DrawnSpot, n: number, at: Layout, top: number): void {
  const rear = n % 2 === 1;
  const low = n >= 2;
  const cx = rear ? at.left + at.width - 60 : at.left + 60;
  const cy = low ? top + at.deck - 60 : top + 60;
  const [inX, inY] = [rear ? -1 : 1, low ? -1 : 1];
  const key = spotKey(spot);
  pad.path(
    'label',
    [
      ['M', [cx + inX * 260, cy]],
      ['L', [cx, cy]],
      ['L', [cx, cy + inY * 260]],
    ],
    { spot: key, fine: true },
  );
  pad.words(cx + inX * 40, cy + inY * 175, 260, spot.label, rear ? 'end' : 'start');
  pad.spot({ key, label: spot.label, kind: spot.kind, x: cx + inX * 150, y: cy + inY * 150, r: 220 });
}
