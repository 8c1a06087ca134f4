/** Entering readings one after the other: typing, the question before keeping, going on. */
import type { Sheet } from '#core/readings/compute/sheet-model.ts';
import { useOutbox, useOutboxState } from '../../../client/use-outbox.ts';
import type { Preview } from '../bench-casting.ts';
import { entriesAt } from '../reading-parcel.ts';
import { type Question, questionOfRefusal } from '../reading-question.ts';
import { columnKey, isRead, placeOf, type Spot, spotAt } from '../reading-view.ts';
import { useKeep } from './use-keep.ts';
import { useNext } from './use-next.ts';
import { type Gauge, usePreview } from './use-preview.ts';
import type { TableHand } from './use-table-hand.ts';

type Options = Readonly<{
  sheet: Sheet;
  /** Every column as it lies on the bench. */
  order: readonly string[];
  hand: TableHand;
  gauge: Gauge;
  operation: number | null;
}>;

export type ReadingEntry = Readonly<{
  spot: Spot | null;
  preview: Preview | undefined;
  question: Question | null;
  /** Keeps what is typed, if anything, and goes on; stays when there is a question. */
  next: () => void;
  /** Keeps this figure and goes on: a choice, or `sure` after "is right". */
  take: (text: string, sure: boolean) => void;
  /** Leaves the question and types again. */
  again: () => void;
  previous: () => void;
  /** Takes the figure before; undefined when there is none. */
  same: (() => void) | undefined;
  /** The figure for every place of the row not read yet. */
  all: (() => void) | undefined;
  undo: Readonly<{ words: string; onPress: () => void }> | undefined;
  takeBack: (() => void) | undefined;
  /** Nothing to measure here: a dash. Undefined where something stands. */
  notHere: (() => void) | undefined;
}>;

export function useReadingEntry({ sheet, order, hand, gauge, operation }: Options): ReadingEntry {
  const outbox = useOutbox();
  const { entries } = useOutboxState();
  const typing = hand.text.trim();
  const spot = hand.at && spotAt(sheet, hand.at.row, hand.at.column);
  const { preview, fresh, ask } = usePreview(spot, hand.text, gauge);
  const { keep, undo, takeBack, notHere, last, lastTyped } = useKeep(gauge, operation);
  const place = spot ? placeOf(sheet.casting.id, spot.row, columnKey(spot.column)) : '';
  const { refused } = entriesAt(entries, place);
  const { next, question, drop } = useNext({ hand, spot, place, fresh, ask, keep });
  const before = lastTyped.current ?? figureBefore(sheet, order, spot);

  // After sign-off nothing is typed here: the casting is reopened first.
  const open = !sheet.locked;

  function take(text: string, sure: boolean) {
    drop();
    if (spot) keep(spot, text, sure);
    hand.step(1);
  }
  function again() {
    drop();
    hand.setText('');
    if (refused) void outbox.drop(refused.key);
  }
  function all() {
    for (const to of emptySpots(sheet, order, spot)) keep(to, typing || (before ?? ''), false);
    hand.setText('');
  }
  function skip(spot: Spot) {
    notHere(spot);
    hand.step(1);
  }
  function goBack() {
    const step = undo((row, column) => spotAt(sheet, row, column));
    if (step) hand.choose(step.column, step.row);
  }

  const refusal = refused && typing === '' ? questionOfRefusal(refused) : null;

  return {
    spot,
    preview,
    question: question ?? refusal,
    next,
    take,
    again,
    previous() {
      drop();
      hand.step(-1);
    },
    same: before === null || !spot ? undefined : () => take(before, false),
    all: before === null && typing === '' ? undefined : all,
    undo: last && { words: last.text, onPress: goBack },
    takeBack: open && spot?.cell?.reading && typing === '' ? () => takeBack(spot) : undefined,
    notHere: open && spot && spot.cell?.state === 'not measured' && typing === '' ? () => skip(spot) : undefined,
  };
}

/** The figure of the place before in the same row. */
function figureBefore(sheet: Sheet, order: readonly string[], spot: Spot | null): string | null {
  const before = spot && order[order.indexOf(columnKey(spot.column)) - 1];
  return before ? (spotAt(sheet, spot.row.key, before)?.cell?.reading?.typed ?? null) : null;
}

/** Places of the row in which nothing stands yet. */
function emptySpots(sheet: Sheet, order: readonly string[], spot: Spot | null): Spot[] {
  if (!spot) return [];
  return order.flatMap((column) => {
    const to = isRead(sheet, spot.row, column) ? null : spotAt(sheet, spot.row.key, column);
    return to ? [to] : [];
  });
}
