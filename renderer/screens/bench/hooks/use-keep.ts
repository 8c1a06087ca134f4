/** Keeps figures on this tablet and sends them in their turn; remembers what undo would put back. */
import { useRef, useState } from 'react';
import { newKey } from '../../../client/client.ts';
import { useClient } from '../../../client/use-app.ts';
import { useOutbox } from '../../../client/use-outbox.ts';
import type { Preview } from '../bench-casting.ts';
import { entriesAt, entryFor, notHereFor, takeBackFor, type Undoable, undoFor } from '../reading-parcel.ts';
import { columnKey, placeOf, type Spot } from '../reading-view.ts';
import type { FreshFigures } from './use-fresh.ts';
import type { Gauge } from './use-preview.ts';

/** At most this many steps back. */
const UNDO_DEPTH = 40;

export function useKeep(gauge: Gauge, operation: number | null, see: FreshFigures['see']) {
  const client = useClient();
  const outbox = useOutbox();
  const [done, setDone] = useState<readonly Undoable[]>([]);
  const last = useRef<string | null>(null);

  /** `preview`: of exactly this text, where it is known. */
  function keep(to: Spot, typed: string, sure: boolean, preview?: Preview): void {
    const place = placeOf(to.sheet.casting.id, to.row, columnKey(to.column));
    const { waiting, refused } = entriesAt(outbox.state().entries, place);
    if (refused) void outbox.drop(refused.key);
    const entry = entryFor(to, { text: typed, ...gauge, operation, takenAt: client.now(), sure }, waiting, newKey());
    last.current = typed;
    if (!entry) return;
    const was = waiting ? null : (to.cell?.reading ?? null);
    const step: Undoable = { key: entry.key, place, row: to.row.key, column: columnKey(to.column), text: typed, was };
    setDone((before) => [...before.slice(1 - UNDO_DEPTH), step]);
    see(place, typed, preview);
    void outbox.add(entry);
  }

  /** Undoes the last entry; `at` finds the cell as it is now. @returns where it was, or null. */
  function undo(at: (row: string, column: string) => Spot | null): Undoable | null {
    const step = done.at(-1);
    if (!step) return null;
    const waits = outbox.state().entries.some((entry) => entry.key === step.key && !entry.refused);
    const back = undoFor(step, at(step.row, step.column)?.cell?.reading ?? null, waits, newKey());
    setDone((steps) => steps.slice(0, -1));
    if (back) {
      see(step.place, step.was?.text ?? '', undefined);
      void outbox.add(back);
    }
    return step;
  }

  /** Takes back the reading that stands in a cell. */
  function takeBack(spot: Spot): void {
    const standing = spot.cell?.reading;
    const place = placeOf(spot.sheet.casting.id, spot.row, columnKey(spot.column));
    if (standing) void outbox.add(takeBackFor(place, standing, newKey()));
  }

  /** Nothing to measure in this place. */
  function notHere(spot: Spot): void {
    void outbox.add(notHereFor(spot, operation, newKey()));
  }

  return { keep, undo, takeBack, notHere, last: done.at(-1), lastTyped: last };
}
