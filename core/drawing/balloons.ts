/** Condition marks as shapes: a dot on the place, a leader line, a numbered ring where it hides least. */
import type { Balloon } from './drawn-type.ts';
import { PLATE_WIDTH, type Shape, type SpotPlace } from './shape.ts';

/** Radius of the ring and length of the leader in drawing units. */
const RING = 310;
const LEADER = 1_000;
const DOT = 85;
const WAYS = 16;
const FULL = 10_000;
/** Of a larger spot (a cylinder) only the label in its middle must stay readable. */
const LABEL_ROOM = 420;

type Point = Readonly<{ x: number; y: number; r?: number }>;

/** The place of a mark on the picture as the casting lies now. Its own inverse, so touch uses it too. */
export const turnPlace = (x: number, y: number, turned: boolean): Point =>
  turned ? { x: FULL - x, y: FULL - y } : { x, y };

/** The finished plate as it lies now: what a ring should not hide. */
type Plate = Readonly<{ height: number; turned: boolean; spots: readonly SpotPlace[] }>;

/** Shapes of the marks in order, dots first so that no leader crosses over another ring. */
export function drawBalloons(balloons: readonly Balloon[], { height, turned, spots }: Plate): Shape[] {
  const covered = spots.map((spot) => ({ x: spot.x, y: spot.y, r: Math.min(spot.r, LABEL_ROOM) }));
  const dots = balloons.map((balloon) => {
    const place = turnPlace(balloon.x, balloon.y, turned);
    return { x: Math.round((place.x * PLATE_WIDTH) / FULL), y: Math.round((place.y * height) / FULL) };
  });
  const rings: Point[] = [];
  for (const dot of dots)
    rings.push(bestRing(dot, [...dots.filter((other) => other !== dot), ...rings, ...covered], height));
  const leaders = dots.flatMap((dot, n) => leaderOf(dot, rings[n] ?? dot));
  const labels = rings.flatMap((ring, n) => ringOf(ring, balloons[n]?.label ?? '', balloons[n]?.key));
  return [...leaders, ...labels];
}

/** Of sixteen directions and two distances, the one that hides least; ties go to the first, upward and near. */
function bestRing(dot: Point, others: readonly Point[], height: number): Point {
  let best: Point = clampTo({ x: dot.x, y: dot.y - LEADER }, height);
  let bestRoom = -1;
  for (let n = 0; n < 2 * WAYS; n += 1) {
    const angle = (2 * Math.PI * n) / WAYS;
    const long = n < WAYS ? LEADER : LEADER * 1.5;
    const at = clampTo({ x: dot.x + long * Math.sin(angle), y: dot.y - long * Math.cos(angle) }, height);
    const room = roomAt(at, dot, others);
    if (room > bestRoom + 1) [best, bestRoom] = [at, room];
  }
  return { x: Math.round(best.x), y: Math.round(best.y) };
}

function roomAt(at: Point, own: Point, others: readonly Point[]): number {
  // A ring pushed back by the edge of the plate must still stand clear of its own dot.
  if (Math.hypot(own.x - at.x, own.y - at.y) < RING + DOT + 60) return 0;
  const nearest = Math.min(...others.map((other) => Math.hypot(other.x - at.x, other.y - at.y) - (other.r ?? 0)));
  return Math.min(nearest, 2 * RING);
}

const clampTo = (point: Point, height: number): Point => ({
  x: Math.min(Math.max(point.x, RING + 40), PLATE_WIDTH - RING - 40),
  y: Math.min(Math.max(point.y, RING + 40), height - RING - 40),
});

function leaderOf(dot: Point, ring: Point): Shape[] {
  const long = Math.max(Math.hypot(ring.x - dot.x, ring.y - dot.y), 1);
  const share = (long - RING) / long;
  return [
    {
      kind: 'line',
      role: 'mark',
      x1: dot.x,
      y1: dot.y,
      x2: Math.round(dot.x + (ring.x - dot.x) * share),
      y2: Math.round(dot.y + (ring.y - dot.y) * share),
    },
    { kind: 'circle', role: 'mark', solid: true, x: dot.x, y: dot.y, r: DOT },
  ];
}

function ringOf(ring: Point, label: string, key: string | undefined): Shape[] {
  const size = label.length > 1 ? 300 : 360;
  const spot = key === undefined ? {} : { spot: key };
  return [
    { kind: 'circle', role: 'mark', ...ring, r: RING, ...spot },
    {
      kind: 'text',
      role: 'mark',
      x: ring.x,
      y: Math.round(ring.y + size * 0.33),
      size,
      anchor: 'middle',
      words: label,
      bold: true,
      ...spot,
    },
  ];
}
