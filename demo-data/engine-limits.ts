/** Data of the practice shop's engines as targets of their castings: what a ratio, a stack and a cam drive are reckoned from. */
import type { CastingTypesFile, Size } from './shapes.ts';

type CastingType = CastingTypesFile['castingTypes'][number];

const aim = (quantity: string, target: string, unit: string, side: 'I' | 'E' | 'any' = 'any') => ({
  quantity,
  stage: 'before' as const,
  side,
  low: null,
  high: null,
  target,
  unit,
});

const size = (quantity: string, found: Size | undefined, side: 'I' | 'E' | 'any' = 'any') =>
  found ? [aim(quantity, found.value, found.unit, side)] : [];

/** Chamber, bowl, valves, rod and piston of a type, and the figures written down for it alone. */
export function engineLimits(type: CastingType) {
  const heads = type.valves?.headDiameter;
  const seats = type.valves?.seatAngle;
  return [
    ...(type.chamberCc ? [aim('chamber-volume', type.chamberCc, 'cc')] : []),
    ...(type.pistonBowlCc ? [aim('piston-dish', type.pistonBowlCc, 'cc')] : []),
    ...size('valve-head-diameter', heads?.I, 'I'),
    ...size('valve-head-diameter', heads?.E, 'E'),
    ...(seats ? [aim('seat-angle', `${seats.I}`, 'deg', 'I'), aim('seat-angle', `${seats.E}`, 'deg', 'E')] : []),
    ...size('rod-length', type.deck?.rod),
    ...size('compression-height', type.deck?.compressionHeight),
    ...(type.engineFigures ?? []).map(({ quantity, target, unit }) => aim(quantity, target, unit)),
  ];
}
