/** A cylinder head seen from its deck or from the other side: chambers in a line, valves where the spots say. */
import { type DrawnSpot, type DrawnType, spotKey, spotsOf } from './drawn-type.ts';
import { PLATE_WIDTH } from './shape.ts';
import { drawFront, fittingSize, MARGIN, plateSteps, type Sketch, STRIP, sketch, WORD_SIZE } from './sketch.ts';

/** Bore circle over cylinder pitch, deck over bore: common proportions, only for the picture. */
const BORE_SHARE = 0.43;
const DECK_SHARE = 1.42;
/** Keeps a head of one or two cylinders from filling the page. */
const WIDEST_PITCH = 2_700;
const DEFAULT_VALVES = { intake: 440, exhaust: 380 };

type Layout = Readonly<{
  pitch: number;
  bore: number;
  left: number;
  top: number;
  width: number;
  deck: number;
  y: number;
}>;

function layoutOf(cylinders: number): Layout {
  const pitch = Math.min((PLATE_WIDTH - 2 * MARGIN - 200) / cylinders, WIDEST_PITCH);
  const bore = pitch * BORE_SHARE;
  const width = pitch * cylinders + Math.max(200, pitch * 0.1);
  const deck = 2 * bore * DECK_SHARE + 260;
  return { pitch, bore, left: (PLATE_WIDTH - width) / 2, top: STRIP, width, deck, y: STRIP + deck / 2 };
}

const centreX = (at: Layout, cylinder: number, cylinders: number): number =>
  PLATE_WIDTH / 2 + (cylinder - (cylinders + 1) / 2) * at.pitch;

/**
 * Draw a head. `over` looks at the spring side: the rows change places (the casting was rolled about its length, so the
 * front stays), and chambers are dashed because they are underneath.
 */
export function drawHeadFace(type: DrawnType, over: boolean, frontWords: string): Sketch {
  const valves = spotsOf(type.spots, 'valve');
  const cylinders = cylinderCount(type, valves);
  const at = layoutOf(cylinders);
  const pad = sketch(at.deck + 2 * STRIP);
  pad.path('body', plateSteps(at.left, at.top, at.width, at.deck, 200));
  if (type.waterJacket === false) drawFins(pad, at);
  for (let n = 1; n <= cylinders; n += 1) drawChamber(pad, type, at, n, cylinders, over);
  drawBolts(pad, at, cylinders, type.waterJacket !== false);
  for (const valve of placeValves(valves, at, cylinders, over)) drawValve(pad, type, at, valve);
  drawSideWords(pad, valves, at, over);
  drawFront(pad, frontWords, at.left, at.top + at.deck + STRIP / 2);
  return pad;
}

/** Cylinders on this casting: the greatest cylinder a spot names, else the type's count, at least one. */
export function cylinderCount(type: DrawnType, spots: readonly DrawnSpot[]): number {
  const named = spots.reduce((most, spot) => Math.max(most, spot.cylinder ?? 0), 0);
  return Math.max(1, named, named === 0 ? (type.counts.cylinders ?? 0) : 0);
}

/** A cylinder as its places call it, which is how the engine counts; by its own number where no place names it. */
function cylinderName(spots: readonly DrawnSpot[], n: number): string {
  const named = spots.find((spot) => spot.cylinder === n && CALLED.test(spot.label));
  return (named && CALLED.exec(named.label)?.[1]) ?? String(n);
}

/** `6E1` and `C6` belong to cylinder 6. */
const CALLED = /^[A-Z]?(\d+)/;

function drawChamber(pad: Sketch, type: DrawnType, at: Layout, n: number, cylinders: number, over: boolean): void {
  const x = centreX(at, n, cylinders);
  const spot = spotsOf(type.spots, 'chamber').find((chamber) => chamber.cylinder === n);
  pad.circle('chamber', x, at.y, at.bore, {
    ...(over ? { dashed: true as const, fine: true as const } : {}),
    ...(spot ? { spot: spotKey(spot) } : {}),
  });
  // The plug or injector stands in the middle of four valves, beside two valves in a line.
  const inLine = spotsOf(type.spots, 'valve').filter((v) => v.cylinder === n).length <= 2;
  pad.circle('port', x, at.y - (inLine ? at.bore * 0.68 : 0), at.bore * 0.11);
  pad.words(x, at.y + at.bore + (at.deck / 2 - at.bore) / 2, WORD_SIZE, cylinderName(type.spots, n));
  if (spot) pad.spot({ key: spotKey(spot), label: spot.label, kind: spot.kind, x, y: at.y, r: at.bore });
}

function drawBolts(pad: Sketch, at: Layout, cylinders: number, water: boolean): void {
  const inset = at.deck / 2 - Math.max(170, at.bore * 0.19);
  for (let n = 0; n <= cylinders; n += 1) {
    const edge = n === 0 ? 130 : n === cylinders ? -130 : 0;
    const x = PLATE_WIDTH / 2 + (n - cylinders / 2) * at.pitch + edge;
    for (const side of [-1, 1]) pad.circle('bolt', x, at.y + side * inset, Math.max(85, at.bore * 0.1));
    if (!water || n === 0 || n === cylinders) continue;
    for (const side of [-1, 1])
      pad.circle('port', x, at.y + side * inset * 0.58, Math.max(50, at.bore * 0.06), { fine: true });
  }
}

function drawFins(pad: Sketch, at: Layout): void {
  for (let n = 1; n <= 4; n += 1) {
    const off = 130 * n;
    for (const [x, way] of [
      [at.left, -1],
      [at.left + at.width, 1],
    ] as const) {
      pad.line('body', x + way * off, at.top + 200, x + way * off, at.top + at.deck - 200, { fine: true });
    }
  }
  for (const y of [at.y - at.deck * 0.28, at.y, at.y + at.deck * 0.28]) {
    pad.line('body', at.left - 520, y, at.left, y, { fine: true });
    pad.line('body', at.left + at.width, y, at.left + at.width + 520, y, { fine: true });
  }
}

/** A valve's place; `most` is its greatest radius in bore radii there. */
type Placed = Readonly<{ spot: DrawnSpot; x: number; y: number; most: number }>;

/**
 * Valves of one cylinder, placed so that reading left to right, row by row, gives the bench order. Two rows: each row on
 * its own side. One row with two valves: in line. One row with more: two and two, front pair first, a little slanted so
 * that each still stands behind the one before.
 */
function placeValves(valves: readonly DrawnSpot[], at: Layout, cylinders: number, over: boolean): Placed[] {
  const rows = [...new Set(valves.map((valve) => valve.row))].sort((a, b) => a - b);
  const placed: Placed[] = [];
  for (let n = 1; n <= cylinders; n += 1) {
    const x = centreX(at, n, cylinders);
    rows.forEach((row, index) => {
      const here = valves.filter((valve) => valve.cylinder === n && valve.row === row);
      const middle = rows.length === 1 ? 0 : index === 0 ? -0.46 : 0.46;
      placed.push(...placeRow(here, x, middle, at, over));
    });
  }
  return placed;
}

function placeRow(here: readonly DrawnSpot[], x: number, middle: number, at: Layout, over: boolean): Placed[] {
  const way = over ? -1 : 1;
  if (here.length > 2 && middle === 0) {
    const columns = Math.ceil(here.length / 2);
    return here.map((spot, k) => {
      const column = Math.floor(k / 2) - (columns - 1) / 2;
      const upper = k % 2 === 0 ? -1 : 1;
      return {
        spot,
        x: x + at.bore * (column * 0.86 + upper * 0.05),
        y: at.y + way * upper * at.bore * 0.44,
        most: 0.36,
      };
    });
  }
  const gap = middle === 0 ? 0.96 : 0.88;
  return here.map((spot, k) => ({
    spot,
    x: x + (k - (here.length - 1) / 2) * at.bore * gap,
    y: at.y + way * middle * at.bore,
    most: middle === 0 ? 0.5 : 0.385,
  }));
}

function drawValve(pad: Sketch, type: DrawnType, at: Layout, valve: Placed): void {
  const shares = type.valvePerBore ?? DEFAULT_VALVES;
  const share = (valve.spot.side === 'E' ? shares.exhaust : shares.intake) / 1000;
  // Valves are canted in the real head and may be larger; here they are kept inside the bore circle.
  const r = at.bore * Math.min(share, valve.most);
  const key = spotKey(valve.spot);
  pad.circle('valve', valve.x, valve.y, r, { spot: key });
  const size = fittingSize(valve.spot.label, r, WORD_SIZE, 230);
  pad.circle('valve', valve.x, valve.y, r * (size > 0 ? 0.84 : 0.64), { fine: true });
  if (size > 0) pad.words(valve.x, valve.y, size, valve.spot.label);
  pad.spot({ key, label: valve.spot.label, kind: valve.spot.kind, x: valve.x, y: valve.y, r });
}

const SIDE_WORDS = { I: 'INTAKE', E: 'EXHAUST' } as const;

/** A row of valves of one side names its edge. Mixed rows are named by the labels in the valves. */
function drawSideWords(pad: Sketch, valves: readonly DrawnSpot[], at: Layout, over: boolean): void {
  const rows = [...new Set(valves.map((valve) => valve.row))].sort((a, b) => a - b);
  if (rows.length < 2) return;
  rows.forEach((row, index) => {
    const sides = new Set(valves.filter((valve) => valve.row === row).map((valve) => valve.side));
    const [side] = sides;
    if (sides.size !== 1 || side === undefined || side === 'none') return;
    const top = (index === 0) !== over;
    pad.words(PLATE_WIDTH / 2, top ? STRIP / 2 : at.top + at.deck + STRIP / 2, WORD_SIZE, SIDE_WORDS[side]);
  });
}
