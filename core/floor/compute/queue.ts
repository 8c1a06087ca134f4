/**
 * The order of a queue: what a lead put first, then promised day, then rush, then time in the shop; and alike set-ups drawn
 * together only among work promised for the same time, so that no promise is lost. Common practice, no source.
 */
import type { Day, Moment } from '../../kernel/days.ts';

export type Queued = Readonly<{
  operationId: number;
  rank: number | null;
  promisedOn: Day | null;
  promisedMinute: number | null;
  rush: boolean;
  arrivedAt: Moment | null;
  /** The same text means the same set-up; empty: nothing tells. */
  setUpKey: string;
}>;

/** Rows in the order to be taken. */
export function queueOrder<T extends Queued>(rows: readonly T[]): T[] {
  const sorted = [...rows].sort(compare);
  const result: T[] = [];
  const rest = [...sorted];
  while (rest.length > 0) {
    const [next] = rest.splice(0, 1);
    if (!next) break;
    result.push(next);
    if (next.setUpKey === '' || next.rank !== null) continue;
    const alike = rest.filter((row) => row.setUpKey === next.setUpKey && isSameTurn(row, next));
    for (const row of alike) {
      rest.splice(rest.indexOf(row), 1);
      result.push(row);
    }
  }
  return result;
}

/** Nobody is passed over who was promised earlier, or is in a rush. */
const isSameTurn = (a: Queued, b: Queued): boolean =>
  a.rank === null && a.promisedOn === b.promisedOn && a.promisedMinute === b.promisedMinute && a.rush === b.rush;

function compare(a: Queued, b: Queued): number {
  return (
    (a.rank ?? LAST) - (b.rank ?? LAST) ||
    byText(a.promisedOn ?? '9999', b.promisedOn ?? '9999') ||
    Number(b.rush) - Number(a.rush) ||
    (a.promisedMinute ?? LAST) - (b.promisedMinute ?? LAST) ||
    byText(a.arrivedAt ?? '9999', b.arrivedAt ?? '9999') ||
    a.operationId - b.operationId
  );
}

const LAST = Number.MAX_SAFE_INTEGER;
const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** "6 castings, 9.5 h ahead"; "This bench is clear." when nothing waits. Tenths of an hour, rounded up. */
export function aheadWords(castings: number, seconds: number): string {
  if (castings === 0) return 'This bench is clear.';
  const tenths = Math.ceil(seconds / 360);
  const hours = tenths % 10 === 0 ? String(tenths / 10) : `${Math.floor(tenths / 10)}.${tenths % 10}`;
  return `${castings} ${castings === 1 ? 'casting' : 'castings'}, ${hours} h ahead`;
}

/** "same set-up first: stem 6.0 mm, then stem 5.5 mm"; empty when fewer than two rows share one. */
export function setUpWords(setUps: readonly string[]): string {
  const named = setUps.filter((text) => text !== '');
  const distinct = [...new Set(named)];
  return distinct.length > 0 && distinct.length < named.length ? `same set-up first: ${distinct.join(', then ')}` : '';
}
