/**
 * What warmth does to sizes: growth, the heat that lets a part drop into its hole, and the fit that is left when it runs hot.
 *
 * dD = alpha D dT, linear, so figures are exact: big integers, rounded once. Only slopes, by which doubts are weighed, are
 * floats. Sizes in nanometres, temperatures in thousandths of a degree Celsius, alpha in 1e-9 per kelvin.
 */
import { divideRounded } from '../../../kernel/units.ts';

/** Parts of alpha times parts of a degree in one. */
const ONE = 1_000_000_000_000n;

/** How much a size grows when it is warmed by `by`; negative when it is chilled. */
export const growthOf = (size: number, alpha: number, by: number): number =>
  divideRounded(BigInt(size) * BigInt(alpha) * BigInt(by), ONE);

/** Growth for each thousandth of a degree. */
export const growthSlope = (size: number, alpha: number): number => (size * alpha) / 1e12;

export type DropIn = Readonly<{
  hole: number;
  part: number;
  alphaHole: number;
  alphaPart: number;
  room: number;
  /** Temperature of the part when it goes in. */
  partAt: number;
  /** Room wanted around it. */
  clearance: number;
}>;

/**
 * The temperature at which the part drops in with room around it: the hole grows on its own size, the part shrinks on its
 * own. At room temperature or below: no heat is needed.
 */
export function dropInTemperature({ hole, part, alphaHole, alphaPart, room, partAt, clearance }: DropIn): number {
  const wanted = BigInt(part - hole + clearance) * ONE;
  const shrink = BigInt(alphaPart) * BigInt(part) * BigInt(room - partAt);
  return room + divideRounded(wanted - shrink, BigInt(alphaHole) * BigInt(hole));
}

/** How much that temperature changes with a size, and with the temperature of the part. */
export const dropInSlopes = ({
  hole,
  part,
  alphaHole,
  alphaPart,
}: DropIn): Readonly<{ size: number; partAt: number }> => ({
  size: 1e12 / (alphaHole * hole),
  partAt: (alphaPart * part) / (alphaHole * hole),
});

/**
 * The fit that is left when both are warm by `by`, with the hole's size for both: i - (alpha of the hole - alpha of the part)
 * D dT. Below zero the part is loose.
 */
export const fitWhenWarm = (
  { hole, part, alphaHole, alphaPart }: Pick<DropIn, 'hole' | 'part' | 'alphaHole' | 'alphaPart'>,
  by: number,
): number => part - hole - growthOf(hole, alphaHole - alphaPart, by);
