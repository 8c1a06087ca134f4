/**
 * Heights along one line, and the straightedge laid on them. The straightedge is the upper chain of the points' outline, what
 * it hides is the gap; the lower chain is the straightedge laid from below, what stands above it rocks. The widest upright
 * distance between both chains is the least zone of two parallel lines that hold every point (the outline is convex, so a line
 * can be laid along either side there): exact, without iteration.
 */

/** `t`: distance along the line; several heights may stand at one distance. */
export type OnLine = Readonly<{ t: number; z: number }>;

export type Strip = Readonly<{
  /** Greatest gap under a straightedge, and at which point; -1 for none. */
  gap: number;
  gapAt: number;
  /** Greatest height above a straightedge laid from below, and at which point. */
  rock: number;
  rockAt: number;
  /** Two closest parallel lines that hold all points. */
  zone: number;
}>;

/** One chain of the outline, from left to right: upper for `side` 1, lower for -1. */
function chainOf(points: readonly OnLine[], side: 1 | -1): OnLine[] {
  const ordered = points.toSorted((a, b) => a.t - b.t || side * (b.z - a.z));
  const chain: OnLine[] = [];
  for (const point of ordered) {
    if (chain.at(-1)?.t === point.t) continue;
    while (chain.length >= 2 && !turns(chain.at(-2), chain.at(-1), point, side)) chain.pop();
    chain.push(point);
  }
  return chain;
}

/** Whether the middle point stays on the chain. */
function turns(a: OnLine | undefined, b: OnLine | undefined, c: OnLine, side: 1 | -1): boolean {
  if (!a || !b) return true;
  return side * ((b.z - a.z) * (c.t - a.t) - (c.z - a.z) * (b.t - a.t)) > 0;
}

/** Height of a chain at a distance within it. */
function heightAt(chain: readonly OnLine[], t: number): number {
  const next = chain.findIndex((it) => it.t >= t);
  const [after, before] = [chain[next], chain[next - 1]];
  if (!after) return chain.at(-1)?.z ?? 0;
  if (!before || after.t === t) return after.z;
  return before.z + ((after.z - before.z) * (t - before.t)) / (after.t - before.t);
}

/** What a straightedge tells of heights along one line; all 0 for fewer than three of them. */
export function stripOf(points: readonly OnLine[]): Strip {
  const upper = chainOf(points, 1);
  const lower = chainOf(points, -1);
  let strip: Strip = { gap: 0, gapAt: -1, rock: 0, rockAt: -1, zone: 0 };
  for (const [index, { t, z }] of points.entries()) {
    const gap = heightAt(upper, t) - z;
    const rock = z - heightAt(lower, t);
    if (gap > strip.gap) strip = { ...strip, gap, gapAt: index };
    if (rock > strip.rock) strip = { ...strip, rock, rockAt: index };
  }
  const zone = Math.max(0, ...points.map(({ t }) => heightAt(upper, t) - heightAt(lower, t)));
  return { ...strip, zone };
}

/**
 * The worst stretch of a line that is no longer than `span`: least zone of the points in it.
 *
 * @param slack what two figures of the same length may differ by
 * @returns null when the points stand too far apart for any three of them to lie within the span, though the line is longer
 */
export function worstInSpan(
  points: readonly OnLine[],
  span: number,
  slack: number,
): Readonly<{ zone: number; from: number; to: number }> | null {
  const ordered = points.map((it, index) => ({ ...it, index })).toSorted((a, b) => a.t - b.t);
  const windows = ordered.map((first, start) => ordered.slice(start).filter((it) => it.t - first.t <= span + slack));
  const length = (ordered.at(-1)?.t ?? 0) - (ordered[0]?.t ?? 0);
  const isCovered = length <= span + slack || coversAll(ordered, windows);
  if (!isCovered) return null;
  const found = windows.map((window) => ({
    zone: window.length < 3 ? 0 : stripOf(window).zone,
    from: window[0]?.index ?? 0,
    to: window.at(-1)?.index ?? 0,
  }));
  return found.reduce((worst, it) => (it.zone > worst.zone ? it : worst), found[0] ?? { zone: 0, from: 0, to: 0 });
}

/** Every inner point has a neighbour on either side within one span. */
const coversAll = (ordered: readonly OnLine[], windows: readonly (readonly OnLine[])[]): boolean =>
  ordered.slice(1, -1).every((_, i) => (windows[i]?.length ?? 0) >= 3);
