/** Entering readings one after the other: typing, the question before keeping, going on. */
import { useState } from 'react';
import type { Sheet } from '#core/readings/compute/sheet-model.ts';
import { useOutbox, useOutboxState } from '../../../client/use-outbox.ts';
import type { Preview } from '../bench-casting.ts';
import { entriesAt, type Undoable } from '../reading-parcel.ts';
import { type Question, questionOfRefusal } from '../reading-question.ts';
import { type At, choiceOfDigit, columnKey, isRead, placeOf, type Spot, spotAt } from '../reading-view.ts';
import { type KeypadActs, keypadActs } from './keypad-acts.ts';
import type { FreshFigures } from './use-fresh.ts';
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
  see: FreshFigures['see'];
  /** Places that are read one after the other though each is a row of its own: the points of a face. Else the row's own. */
  mates?: readonly At[] | undefined;
}>;

export type ReadingEntry = KeypadActs &
  Readonly<{
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
    /** What was undone last, in words, until something else is typed; empty for nothing. */
    undone: string;
    takeBack: (() => void) | undefined;
    /** Nothing to measure here: a dash. Undefined where something stands. */
    notHere: (() => void) | undefined;
  }>;

export function useReadingEntry({ sheet, order, hand, gauge, operation, see, mates }: Options): ReadingEntry {
  const outbox = useOutbox();
  const { entries } = useOutboxState();
  const typing = hand.text.trim();
  const spot = hand.at && spotAt(sheet, hand.at.row, hand.at.column);
  const { preview, fresh, ask } = usePreview(spot, hand.text, gauge);
  const { keep, undo, takeBack, notHere, last, lastTyped } = useKeep(gauge, operation, see);
  const place = spot ? placeOf(sheet.casting.id, spot.row, columnKey(spot.column)) : '';
  const { refused } = entriesAt(entries, place);
  const { next, question, drop } = useNext({ hand, spot, place, fresh, ask, keep });
  const along = placesOf(order, spot, mates);
  const before = lastTyped.current ?? figureBefore(sheet, along, spot);

  // After sign-off nothing is typed here: the casting is reopened first.
  const open = !sheet.locked;
  const acts = open && typing === '';
  const [undone, setUndone] = useState('');

  function take(text: string, sure: boolean) {
    drop();
    setUndone('');
    if (spot) keep(spot, text, sure);
    hand.step(1);
  }
  function again() {
    drop();
    hand.setText('');
    if (refused) void outbox.drop(refused.key);
  }
  function all() {
    for (const to of emptySpots(sheet, along)) keep(to, typing || (before ?? ''), false);
    hand.setText('');
  }
  function skip(spot: Spot) {
    notHere(spot);
    hand.step(1);
  }
  function goBack() {
    const step = undo((row, column) => spotAt(sheet, row, column));
    if (!step) return;
    setUndone(undoneWords(step, spotAt(sheet, step.row, step.column)));
    hand.choose(step.column, step.row);
  }

  const refusal = refused && typing === '' ? questionOfRefusal(refused) : null;
  const asked = question ?? refusal;

  const same = spot && open && before !== null ? () => take(before, false) : undefined;
  const keypad = keypadActs({
    asked,
    text: hand.text,
    take,
    again,
    same,
    setText: hand.setText,
    undo: last && goBack,
  });

  return {
    spot,
    preview,
    question: asked,
    next() {
      setUndone('');
      const choice = spot && choiceOfDigit(spot.row, typing);
      if (choice) take(choice, true);
      else next();
    },
    take,
    again,
    previous() {
      drop();
      hand.step(-1);
    },
    same,
    all: before === null && typing === '' ? undefined : all,
    undo: last && { words: last.text, onPress: goBack },
    undone: typing === '' ? undone : '',
    ...keypad,
    ...(acts ? cellActs(spot, takeBack, skip) : NO_ACTS),
  };
}

/** The places of a row, or those given. */
const placesOf = (order: readonly string[], spot: Spot | null, mates: readonly At[] | undefined): readonly At[] =>
  mates ?? (spot ? order.map((column) => ({ row: spot.row.key, column })) : []);

const NO_ACTS = { takeBack: undefined, notHere: undefined } as const;

/** What can be done with the reading that stands in a cell, and with an empty one. */
function cellActs(spot: Spot | null, takeBack: (spot: Spot) => void, skip: (spot: Spot) => void) {
  return {
    takeBack: spot?.cell?.reading ? () => takeBack(spot) : undefined,
    notHere: spot?.cell?.state === 'not measured' ? () => skip(spot) : undefined,
  };
}

/** `Undone: 1E height read 36.42 taken back, 36.12 stands again.` */
function undoneWords(step: Undoable, at: Spot | null): string {
  const place = at ? `${at.column.label} ${at.row.words} ` : '';
  return `Undone: ${place}${step.text} taken back, ${step.was ? `${step.was.text} stands again` : 'not measured again'}.`;
}

/** The figure of the place before. */
function figureBefore(sheet: Sheet, along: readonly At[], spot: Spot | null): string | null {
  const here = spot ? along.findIndex((at) => at.row === spot.row.key && at.column === columnKey(spot.column)) : -1;
  const before = along[here - 1];
  return before ? (spotAt(sheet, before.row, before.column)?.cell?.reading?.typed ?? null) : null;
}

/** Places in which nothing stands yet. */
function emptySpots(sheet: Sheet, along: readonly At[]): Spot[] {
  return along.flatMap((at) => {
    const to = spotAt(sheet, at.row, at.column);
    return to && !isRead(sheet, to.row, at.column) ? [to] : [];
  });
}
