/** A finding as it is put together at the bench, and what is sent of it. */
import type { TouchedPlace } from '../../kit/casting-drawing.tsx';
import type { BenchCasting } from './bench-casting.ts';

export type FoundPlace = Readonly<{ x: number; y: number; key?: string; spot: number | null; words: string }>;
export type Finding = Readonly<{
  /** Id of the finding kind. */
  kind: number | null;
  place: FoundPlace | null;
  words: string;
  photos: readonly Readonly<{ sha256: string; takenAt: string }>[];
  /** Reason of the hold; null: work goes on. */
  hold: string | null;
}>;

export const EMPTY: Finding = { kind: null, place: null, words: '', photos: [], hold: null };

export const isFinding = (value: unknown): value is Finding =>
  typeof value === 'object' && value !== null && 'photos' in value && Array.isArray(value.photos) && 'words' in value;

type TypeSpot = Readonly<{ id: number; kind: string; label: string }>;

/** A touched place with the spot it meant, if any, in words a person reads back. */
export function placeFrom(place: TouchedPlace, spots: readonly TypeSpot[]): FoundPlace {
  const { x, y, spot } = place;
  const found = spot && spots.find((one) => one.kind === spot.kind && one.label === spot.label);
  if (spot && found)
    return { x, y, key: spot.key, spot: found.id, words: `${spot.kind.replace('_', ' ')} ${spot.label}` };
  return { x, y, spot: null, words: `${percent(x)} from the front, ${percent(y)} down on the drawing` };
}

const percent = (part: number): string => `${Math.round(part / 100)} %`;

/** The operation that was at work when it was found. */
const atWork = (bench: BenchCasting): number | null =>
  (bench.operations.find((row) => row.mine !== null) ?? bench.operations.find((row) => row.running.length > 0))?.id ??
  null;

/** What is sent; the words of the kind stand for themselves when nothing was typed. */
export function inputOf(bench: BenchCasting, finding: Finding) {
  const { place } = finding;
  return {
    castingId: bench.castingId,
    operationId: atWork(bench),
    findingKindId: finding.kind,
    spotId: place?.spot ?? null,
    place: place && place.spot === null ? place.words : null,
    words: finding.words.trim() === '' ? null : finding.words,
    photos: finding.photos.map((photo) => ({ file: { sha256: photo.sha256 }, takenAt: photo.takenAt })),
    hold: finding.hold === null ? null : { reason: finding.hold },
  };
}
