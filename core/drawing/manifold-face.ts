/** The port face of a head or a manifold: a flange with one port a cylinder (or as the spots say) and its studs. */

import { type DrawnSpot, type DrawnType, spotKey, spotsOf } from './drawn-type.ts';
import { cylinderCount } from './head-face.ts';
import { PLATE_WIDTH } from './shape.ts';
import { drawFront, MARGIN, plateSteps, type Sketch, STRIP, sketch, WORD_SIZE } from './sketch.ts';

type Side = 'I' | 'E' | 'none';
const FLANGE = 1_700;
const WORDS = { I: 'INTAKE FACE', E: 'EXHAUST FACE', none: 'PORT FACE' } as const;

/** Draw a port face. Intake ports are drawn square-shouldered, exhaust ports round, so that the two cannot be confused. */
export function drawManifoldFace(type: DrawnType, side: Side, frontWords: string): Sketch {
  const pad = sketch(FLANGE + 2 * STRIP);
  const [left, width, y] = [MARGIN, PLATE_WIDTH - 2 * MARGIN, STRIP + FLANGE / 2];
  pad.path('body', plateSteps(left, STRIP, width, FLANGE, 260));
  const ports = portsOf(type, side);
  const step = Math.min(width / (ports.length + 0.3), 2_600);
  const x = (n: number): number => PLATE_WIDTH / 2 + (n - (ports.length - 1) / 2) * step;
  for (const [n, port] of ports.entries()) drawPort(pad, port, side, x(n), y, Math.min(step * 0.34, 520));
  for (let n = 0; n <= ports.length; n += 1) {
    pad.circle(
      'bolt',
      clamp(x(n - 0.5), left + 230, left + width - 230),
      y + (n % 2 === 0 ? -1 : 1) * FLANGE * 0.33,
      100,
    );
  }
  pad.words(PLATE_WIDTH / 2, STRIP / 2, WORD_SIZE, WORDS[side]);
  drawFront(pad, frontWords, left, STRIP + FLANGE + STRIP / 2);
  return pad;
}

const clamp = (value: number, low: number, high: number): number => Math.min(Math.max(value, low), high);

type Port = Readonly<{ label: string; spot: DrawnSpot | null }>;

function portsOf(type: DrawnType, side: Side): Port[] {
  const spots = spotsOf(type.spots, 'port').filter((spot) => side === 'none' || spot.side === side);
  if (spots.length > 0) return spots.map((spot) => ({ label: spot.label, spot }));
  const valves = spotsOf(type.spots, 'valve');
  return Array.from({ length: cylinderCount(type, valves) }, (_, n) => ({ label: String(n + 1), spot: null }));
}

function drawPort(pad: Sketch, port: Port, side: Side, x: number, y: number, r: number): void {
  const key = port.spot === null ? null : spotKey(port.spot);
  const style = key === null ? {} : { spot: key };
  if (side === 'E') pad.circle('port', x, y, r, style);
  else pad.path('port', plateSteps(x - r, y - r * 1.15, 2 * r, 2.3 * r, r * 0.35), style);
  pad.words(x, y, Math.min(WORD_SIZE, r), port.label);
  if (key !== null && port.spot !== null) pad.spot({ key, label: port.label, kind: port.spot.kind, x, y, r });
}
