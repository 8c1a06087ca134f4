/**
 * The finish a single round-nosed tooth leaves in theory: arcs of the nose radius, one feed apart, taken as parabolas. A real
 * face is rougher: chatter, wear, a second tooth. Exact mathematics; checked against numerical integration of the arcs.
 *
 * Feed for each turn and nose radius in nanometres; heights in picometres, the base unit of roughness.
 */
import { wholeOf } from './whole.ts';

const PICOMETRES = 1000;

/** Mean height, Ra = f^2 / (18 sqrt(3) r). `radius` is above 0. */
export const cutterRa = (feed: number, radius: number): number =>
  wholeOf((feed * feed * PICOMETRES) / (18 * Math.sqrt(3) * radius));

/** Greatest height, f^2 / (8 r). Not Ra: some tables take it for that. `radius` is above 0. */
export const cutterPeak = (feed: number, radius: number): number => wholeOf((feed * feed * PICOMETRES) / (8 * radius));

/** How much Ra changes, in picometres, when feed or radius changes by a nanometre. */
export const cutterSlopes = (feed: number, radius: number): Readonly<{ feed: number; radius: number }> => {
  const perFeed = (2 * feed * PICOMETRES) / (18 * Math.sqrt(3) * radius);
  return { feed: perFeed, radius: (-perFeed * feed) / (2 * radius) };
};
