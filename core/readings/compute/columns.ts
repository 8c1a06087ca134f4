/** The columns of a table: places in bench order, grouped as they lie, each said in words. */
import type { SpotKind } from '../../catalogue/compute/quantity.ts';
import type { Spot } from './model.ts';

export type Placed = Readonly<{ spot: Spot | null; label: string; words: string; group: string }>;

/** Places of a kind, or the one column of a table of figures read once. */
export function columnsOf(spots: readonly Spot[], kind: SpotKind | null): readonly Placed[] {
  if (kind === null) return [{ spot: null, label: '', words: 'whole casting', group: '' }];
  const here = spots
    .filter((spot) => spot.kind === kind)
    .toSorted((a, b) => a.row - b.row || a.benchOrder - b.benchOrder);
  return here.map((spot) => ({ spot, label: spot.label, words: wordsOf(spot, here), group: groupOf(spot, here) }));
}

const SIDES = { I: 'intake', E: 'exhaust' } as const;

/** `cylinder 4, rear exhaust`; places without a cylinder are called by their label. */
function wordsOf(spot: Spot, here: readonly Spot[]): string {
  const cylinder = /^[A-Z]*(\d+)/.exec(spot.label)?.[1];
  if (spot.cylinder === null || cylinder === undefined) return spot.label;
  if (spot.side === null) return `cylinder ${cylinder}`;
  const twins = here.filter((it) => it.cylinder === spot.cylinder && it.side === spot.side);
  const side = SIDES[spot.side];
  if (twins.length < 2) return `cylinder ${cylinder}, ${side}`;
  const place = twins.indexOf(spot);
  const which = place === 0 ? 'front' : place === twins.length - 1 ? 'rear' : 'middle';
  return `cylinder ${cylinder}, ${which} ${side}`;
}

/** Heads with a row for each side, and blocks with two banks, are shown in two groups. */
function groupOf(spot: Spot, here: readonly Spot[]): string {
  const rows = new Set(here.map((it) => it.row));
  if (rows.size < 2) return '';
  if (spot.bank !== 'none') return `${spot.bank.toUpperCase()} BANK`;
  const alike = here.filter((it) => it.row === spot.row).every((it) => it.side === spot.side);
  return spot.side !== null && alike ? `${SIDES[spot.side].toUpperCase()} SIDE` : '';
}
