/**
 * Volumes round a piston, and circles of the same area. Lengths in nanometres, volumes in millionths of a cubic centimetre.
 *
 * Exact mathematics: pi/4 x diameter squared x height. Slopes say how much a volume moves when a part of it moves by one, for
 * the doubt of what is computed.
 */
import { wholeOf } from './whole.ts';

/** Cubic nanometres in a millionth of a cubic centimetre. */
const CUBE = 1e15;

/** A volume with its slopes. */
export type Volume = Readonly<{ volume: number; perDiameter: number; perHeight: number }>;

/** A round disc: one cylinder swept, a gasket, the room above a piston. A height below zero takes away. */
export function discVolume(diameter: number, height: number): Volume {
  const perHeight = (Math.PI / 4) * ((diameter * diameter) / CUBE);
  return {
    volume: wholeOf(perHeight * height),
    perDiameter: (Math.PI / 2) * (diameter / CUBE) * height,
    perHeight,
  };
}

/** The ring between two circles: the gap round a piston above its top ring. */
export function ringVolume(outer: number, inner: number, height: number): number {
  return wholeOf((Math.PI / 4) * (((outer - inner) * (outer + inner)) / CUBE) * height);
}

/** Diameter of the circle whose edge is as long as this string. */
export const circleOfString = (around: number): number => wholeOf(around / Math.PI);

/** Diameter of the circle as large as so many squares of this side. */
export const circleOfSquares = (squares: number, side: number): number =>
  wholeOf(side * Math.sqrt((4 * squares) / Math.PI));

/** Diameter of the circle that holds this volume when it is so deep, with its slopes; depth and volume above zero. */
export function circleOfLayer(
  volume: number,
  depth: number,
): Readonly<{ diameter: number; perVolume: number; perDepth: number }> {
  const diameter = Math.sqrt((4 / Math.PI) * ((volume * CUBE) / depth));
  return { diameter: wholeOf(diameter), perVolume: diameter / (2 * volume), perDepth: -diameter / (2 * depth) };
}

/** How deep a layer of this volume is on a circle, and how that moves with the circle. */
export function depthOfLayer(volume: number, diameter: number): Readonly<{ depth: number; perDiameter: number }> {
  const depth = volume / discVolume(diameter, 1).perHeight;
  return { depth: wholeOf(depth), perDiameter: (-2 * depth) / diameter };
}
