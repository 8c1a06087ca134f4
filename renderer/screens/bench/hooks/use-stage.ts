/** Before or after work: which of the two stages of a table is looked at and typed; held over a reload. */
import { useMemo } from 'react';
import type { Sheet, SheetRow } from '#core/readings/compute/sheet-model.ts';
import { useTyped } from '../../../client/use-draft.ts';
import { hasStages, rowsShown, rowsTyped, type StageShown, stageOfRow } from '../reading-rows.ts';
import { startAt } from '../reading-view.ts';

export type Stages = Readonly<{
  /** Null where the table has nothing to choose. */
  stage: StageShown | null;
  setStage: (stage: StageShown) => void;
  /** Rows as they are seen. */
  shown: readonly SheetRow[];
  /** Rows that are typed, in their order. */
  typed: readonly SheetRow[];
}>;

const isStage = (value: unknown): value is StageShown | null =>
  value === null || value === 'before' || value === 'after' || value === 'both';

/**
 * Begins with the stage the work is in, else with the one in which something is not read yet.
 *
 * @param order Every column as it lies on the bench.
 * @param now The stage the operation under way reads; null where none is.
 */
export function useStage(sheet: Sheet, order: readonly string[], now: 'after' | null): Stages {
  const [chosen, setChosen] = useTyped<StageShown | null>(
    `stage-${sheet.casting.id}-${sheet.table.code}`,
    null,
    isStage,
  );
  const stage: StageShown = hasStages(sheet)
    ? (chosen ?? now ?? stageOfRow(sheet, startAt(sheet, order)?.row) ?? 'before')
    : 'both';
  const rows = useMemo(() => ({ shown: rowsShown(sheet, stage), typed: rowsTyped(sheet, stage) }), [sheet, stage]);
  return { stage: hasStages(sheet) ? stage : null, setStage: (next) => setChosen(() => next), ...rows };
}
