/** Liners and the ledges they hang on. Common practice, no source. */
import { type Known, type Look, made, madeBy } from '../look.ts';
import { difference, type Formula, largest, range } from './formula.ts';
import { asFarAsRead, least, type PointRead, readPoints, unlessEmpty } from './points.ts';

const knownOf = (read: readonly PointRead[]) => read.map(({ known }) => known);

/** Highest less lowest of the places round one liner. */
const outOfLevel =
  (quantity: string, points: string): Formula =>
  (look) => {
    const places = readPoints(look, points);
    return unlessEmpty(places, () => asFarAsRead(look, quantity, range(knownOf(places.read)), places.missing));
  };

/** How far a place is past the nearer limit; less than 0 inside. Without limits the lower place is the worse one. */
function badness(look: Look, value: number): number {
  const [low, high] = [look.low('liner-protrusion'), look.high('liner-protrusion')];
  if (low === null && high === null) return -value;
  return Math.max(low === null ? -Infinity : low - value, high === null ? -Infinity : value - high);
}

/** The place that decides: farthest past a limit, else nearest to one. */
function worstPlace(look: Look): Known | null {
  const places = readPoints(look, 'liner-place');
  const worst = places.read.reduce<PointRead | undefined>(
    (best, it) => (best === undefined || badness(look, it.value) > badness(look, best.value) ? it : best),
    undefined,
  );
  const known = worst ? { ...worst.known, marks: [...worst.known.marks, `worst at the ${worst.words}`] } : null;
  return unlessEmpty(places, () => asFarAsRead(look, 'liner-protrusion', known, places.missing));
}

function shallowest(look: Look): Known | null {
  const places = readPoints(look, 'ledge-place');
  const known = least(places.read)?.known ?? null;
  return unlessEmpty(places, () => asFarAsRead(look, 'counterbore-ledge', known, places.missing));
}

/** Flange and shim less the depth of the ledge: what the liner would stand before it is in. */
function wouldStand(look: Look): Known | null {
  const ledge = look.either('counterbore-ledge');
  const [flange, shim] = [look.figure('liner-flange'), look.either('liner-shim')];
  if (ledge?.value == null || flange?.value == null) return null;
  const parts: [Known | null, number][] = [
    [flange, 1],
    [ledge, -1],
    ...(shim ? ([[shim, 1]] as [Known, number][]) : []),
  ];
  return madeBy(parts, flange.value - ledge.value + (shim?.value ?? 0));
}

/** Liner heights at every liner under the same head: a bank has a head of its own, one line of cylinders has one. */
function underOneHead(look: Look) {
  const mates = look.places('liner-protrusion').filter((it) => it.bank === look.place.spot?.bank);
  const places = ['front', 'rear', 'left', 'right'].flatMap((point) => look.all('liner-place', { point }));
  const read = [...places, ...look.all('liner-protrusion')].filter(({ spot }) => mates.includes(spot));
  const unread = mates.filter((mate) => !read.some(({ spot }) => spot === mate)).map(({ label }) => `liner ${label}`);
  return { read, unread };
}

/** The greatest difference between this liner and any other under its head. */
function spread(look: Look): Known | null {
  const { read, unread } = underOneHead(look);
  const own = read.filter(({ spot }) => spot === look.place.spot);
  const others = read.filter(({ spot }) => spot !== look.place.spot);
  if (own.length === 0) return null;
  const apart = own.flatMap((mine) =>
    others.map((other) => {
      const by = difference(mine.known, other.known);
      return by?.value == null ? null : made([by], Math.abs(by.value), [`from liner ${other.spot.label}`]);
    }),
  );
  return asFarAsRead(look, 'liner-spread', largest(apart), unread);
}

export const LINER_FORMULAS: Readonly<Record<string, Formula>> = {
  'counterbore-ledge': shallowest,
  'ledge-level': outOfLevel('ledge-level', 'ledge-place'),
  'liner-would-stand': wouldStand,
  'liner-protrusion': worstPlace,
  'liner-level': outOfLevel('liner-level', 'liner-place'),
  'liner-spread': spread,
};
