/** What was just entered, judged as it was while it was typed, until the host's table has come back with it. */
import { useCallback, useEffect, useMemo, useState } from 'react';
import type { Sheet } from '#core/readings/compute/sheet-model.ts';
import type { Entry } from '../../../client/outbox.ts';
import { useOutboxState } from '../../../client/use-outbox.ts';
import type { Preview } from '../bench-casting.ts';
import type { Fresh } from '../reading-view.ts';

type Seen = Omit<Fresh, 'waiting'> & Readonly<{ typed: string }>;

export type FreshFigures = Readonly<{
  /** By place. */
  fresh: ReadonlyMap<string, Fresh>;
  /** This text was entered at a place; the preview is of exactly this text. */
  see: (place: string, text: string, preview: Preview | undefined) => void;
}>;

export function useFresh(sheet: Sheet): FreshFigures {
  const { entries } = useOutboxState();
  const [seen, setSeen] = useState<ReadonlyMap<string, Seen>>(new Map());
  const see = useCallback(
    (place: string, text: string, preview: Preview | undefined) =>
      setSeen((before) => {
        const shown = preview?.cell?.text || text;
        const one = { typed: text, text: shown, cell: preview?.cell ?? null, column: preview?.column ?? null };
        return new Map(before).set(place, one);
      }),
    [],
  );
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new table holds what the host had kept by then.
  useEffect(() => {
    setSeen((before) => new Map([...before].filter(([place]) => entries.some((entry) => entry.place === place))));
  }, [sheet]);
  const fresh = useMemo(() => freshOf(entries, seen), [entries, seen]);
  return { fresh, see };
}

/** What waits on this tablet by its last entry, and what was kept a moment ago. A refused figure is asked about instead. */
export function freshOf(entries: readonly Entry[], seen: ReadonlyMap<string, Seen>): ReadonlyMap<string, Fresh> {
  const refused = new Set(entries.filter((entry) => entry.refused).map((entry) => entry.place));
  const fresh = new Map<string, Fresh>();
  for (const [place, { typed: _, ...judged }] of seen) {
    if (!refused.has(place)) fresh.set(place, { ...judged, waiting: false });
  }
  for (const { place, shown, refused: no } of entries) {
    if (no) continue;
    const one = seen.get(place);
    const judged = one?.typed === shown ? one : { text: shown, cell: null, column: null };
    fresh.set(place, { text: judged.text, cell: judged.cell, column: judged.column, waiting: true });
  }
  return fresh;
}
