/** Where the hand is in a table and what it has typed there; both hold over a reload. */
import { useCallback, useMemo } from 'react';
import type { Sheet, SheetRow } from '#core/readings/compute/sheet-model.ts';
import { useTyped } from '../../../client/use-draft.ts';
import { type At, columnKey, startAt, stepFrom } from '../reading-view.ts';

type Hand = Readonly<{ at: At | null; text: string }>;

const isHand = (value: unknown): value is Hand =>
  typeof value === 'object' && value !== null && 'text' in value && typeof value.text === 'string' && 'at' in value;

export type TableHand = Readonly<{
  /** Null in a table without anything to type. */
  at: At | null;
  text: string;
  setText: (text: string) => void;
  /** Goes to a cell and leaves what was typed. A row of null keeps the row. */
  choose: (column: string, row: string | null) => void;
  /** Goes back to a cell with the text that was typed there, unless something else is being typed meanwhile. */
  putBack: (at: At, text: string) => void;
  /** One step along the bench; false at the end. */
  step: (by: 1 | -1) => boolean;
}>;

/** `order`: every column as it lies on the bench. `typed`: the rows that are typed, as they follow each other. */
export function useTableHand(sheet: Sheet, order: readonly string[], typed: readonly SheetRow[]): TableHand {
  const [hand, setHand] = useTyped<Hand>(
    `reading-${sheet.casting.id}-${sheet.table.code}`,
    { at: null, text: '' },
    isHand,
  );
  const start = useMemo(() => startAt(sheet, order, typed), [sheet, order, typed]);
  const at = hand.at && stands(sheet, typed, hand.at) ? hand.at : start;

  const setText = useCallback((text: string) => setHand(() => ({ at, text })), [setHand, at]);
  const choose = useCallback(
    (column: string, row: string | null) => setHand(() => ({ at: at && { column, row: row ?? at.row }, text: '' })),
    [setHand, at],
  );
  const putBack = useCallback(
    (to: At, text: string) => setHand((now) => (now.text === '' ? { at: to, text } : now)),
    [setHand],
  );
  const step = useCallback(
    (by: 1 | -1) => {
      const next = at && stepFrom(sheet, order, at, by, typed);
      setHand(() => ({ at: next ?? at, text: '' }));
      return next !== null;
    },
    [setHand, sheet, order, at, typed],
  );
  return { at, text: hand.text, setText, choose, putBack, step };
}

const stands = (sheet: Sheet, typed: readonly SheetRow[], at: At): boolean =>
  sheet.columns.some((column) => columnKey(column) === at.column) && typed.some((row) => row.key === at.row);
