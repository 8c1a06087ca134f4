/** Which gauge is in the hand, what the height is read on, the limit of this job: set now and then, not for each reading. */
import type { ReadOn } from '#core/readings/compute/model.ts';
import type { Sheet, SheetRow } from '#core/readings/compute/sheet-model.ts';
import { Button } from '../../../kit/button.tsx';
import { Choice } from '../../../kit/choice.tsx';
import type { Gauge } from '../hooks/use-preview.ts';
import type { Spot } from '../reading-view.ts';
import { familyOf } from '../unit-sizes.ts';
import { GaugeKeys } from './gauge-keys.tsx';
import css from './gauge-panel.module.css';
import { JobLimit } from './job-limit.tsx';

const READ_ON: readonly { value: ReadOn; words: string }[] = [
  { value: 'bare_pocket', words: 'bare pocket' },
  { value: 'cup', words: 'cup' },
  { value: 'cup_and_shim', words: 'cup and shim' },
];

export function GaugePanel({
  spot,
  gauge,
  onGauge,
  onPaper,
  onRows,
  onClose,
}: {
  spot: Spot;
  gauge: Gauge;
  onGauge: (gauge: Gauge) => void;
  onPaper: () => void;
  onRows: () => void;
  onClose: () => void;
}) {
  const { sheet, row: at } = spot;
  const tools = fittingFirst(sheet, at);
  const heights = sheet.rows.some((row) => row.quantity === 'installed-height');
  const shown = sheet.rows.filter((row) => row.shown).length;
  return (
    <section className={css.panel} aria-label="Gauge and paper">
      <div className={css.foot}>
        <Button onPress={onPaper}>Type from paper</Button>
        <Button onPress={onRows}>
          Rows, {shown} of {sheet.rows.length}
        </Button>
        <Button onPress={onClose}>Back to readings</Button>
      </div>
      <GaugeKeys tools={tools} gauge={gauge} onGauge={onGauge} />
      {heights && (
        <Choice
          label="Height is read on"
          options={READ_ON}
          value={gauge.readOn}
          onChange={(readOn) => onGauge({ ...gauge, readOn })}
        />
      )}
      <JobLimit spot={spot} />
    </section>
  );
}

/** Gauges of what is measured here; those that are called like it come first. */
function fittingFirst(sheet: Sheet, row: SheetRow): Sheet['tools'] {
  const words = row.words.split(/\W+/).filter((word) => word.length > 3);
  const named = (kind: string): number => (words.some((word) => kind.includes(word)) ? 0 : 1);
  return sheet.tools
    .filter((tool) => row.unit === null || familyOf(tool.unit) === familyOf(row.unit))
    .toSorted((a, b) => named(a.kind) - named(b.kind));
}
