/** Which thing may stand where. Pure and browser-safe. */

import { type FormatSettings, formatWeight } from '../kernel/format.ts';
import type { Grams } from '../kernel/units.ts';

export const PURPOSE_WORDS = {
  arrival: 'arrivals',
  waiting: 'waiting',
  parts: 'small parts',
  bench: 'bench',
  ready: 'ready',
  quarantine: 'quarantine, identity in doubt',
  floor: 'floor',
  outside: 'outside',
} as const;

export type Limits = Readonly<{ code: string; maxWeight: Grams | null; onlyMetal: 'iron' | 'aluminium' | null }>;
export type Standing = Readonly<{
  label: string;
  /** Null for a bag or box. */
  metal: 'iron' | 'aluminium' | 'other' | 'not_known' | null;
  weight: Grams | null;
}>;

/** Why a thing may not stand there; null when it may. A weight nobody knows is let through: the eye decides. */
export function placeStop(place: Limits, thing: Standing, settings: Pick<FormatSettings, 'language'>): string | null {
  if (place.onlyMetal !== null && thing.metal !== null && thing.metal !== place.onlyMetal) {
    const metal = thing.metal === 'not_known' ? 'METAL NOT KNOWN' : thing.metal.toUpperCase();
    return `${place.code} is for ${place.onlyMetal} only; ${thing.label} is ${metal}. Choose another place.`;
  }
  if (place.maxWeight !== null && thing.weight !== null && thing.weight > place.maxWeight) {
    return `${place.code} carries up to ${formatWeight(place.maxWeight, settings)}; ${thing.label} is ${formatWeight(thing.weight, settings)}. Choose a lower or stronger place.`;
  }
  return null;
}

/** "aluminium only, up to 45 kg"; null when anything may stand there. */
export function limitWords(place: Limits, settings: Pick<FormatSettings, 'language'>): string | null {
  const parts = [
    place.onlyMetal === null ? '' : `${place.onlyMetal} only`,
    place.maxWeight === null ? '' : `up to ${formatWeight(place.maxWeight, settings)}`,
  ].filter((part) => part !== '');
  return parts.length === 0 ? null : parts.join(', ');
}
