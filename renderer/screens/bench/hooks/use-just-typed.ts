/** What was typed into a place a moment ago, until the survey has come back with it: no box is empty in between. */
import { useCallback, useEffect, useMemo, useState } from 'react';
import type { DeckSurvey } from '#core/readings/compute/deck-survey-model.ts';
import { useOutboxState } from '../../../client/use-outbox.ts';
import { waitingByPlace } from '../reading-parcel.ts';

export type JustTyped = Readonly<{
  /** As typed, by place; the second is true while it waits on this tablet. */
  at: (place: string) => Readonly<{ text: string; waiting: boolean }> | undefined;
  see: (place: string, text: string) => void;
}>;

export function useJustTyped(survey: DeckSurvey): JustTyped {
  const { entries } = useOutboxState();
  const waiting = useMemo(() => waitingByPlace(entries), [entries]);
  const [seen, setSeen] = useState<ReadonlyMap<string, string>>(new Map());
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new survey holds what the host had kept by then.
  useEffect(() => setSeen((before) => new Map([...before].filter(([place]) => waiting.has(place)))), [survey]);
  const see = useCallback((place: string, text: string) => setSeen((before) => new Map(before).set(place, text)), []);
  const at = useCallback(
    (place: string) => {
      const text = waiting.get(place) ?? seen.get(place);
      return text === undefined ? undefined : { text: text.replace('-', '\u2212'), waiting: waiting.has(place) };
    },
    [waiting, seen],
  );
  return { at, see };
}
