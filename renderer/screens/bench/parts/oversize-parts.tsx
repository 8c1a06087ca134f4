/** Which cylinders are bored, which one is sleeved back to the size of the others, which are left as they are. */
import type { Sheet } from '#core/readings/compute/sheet-model.ts';
import { Choice } from '../../../kit/choice.tsx';
import type { Part } from '../oversize-view.ts';
import css from './oversize-parts.module.css';

const PARTS = [
  { value: 'bore', words: 'bore' },
  { value: 'sleeve', words: 'sleeve' },
  { value: 'leave', words: 'leave' },
] as const;

export function OversizeParts({
  sheet,
  parts,
  onPart,
}: {
  sheet: Sheet;
  parts: ReadonlyMap<number, Part>;
  onPart: (spot: number, part: Part) => void;
}) {
  return (
    <div className={css.parts}>
      <p>
        If one is bored, bore all. A sleeve back to the size of the others is the exception: its own wear does not
        count.
      </p>
      <div className={css.grid}>
        {sheet.columns.map((column) => {
          const { spot } = column;
          if (spot === null) return null;
          return (
            <Choice
              key={spot}
              label={column.words}
              options={PARTS}
              value={parts.get(spot) ?? 'bore'}
              onChange={(part) => onPart(spot, part)}
            />
          );
        })}
      </div>
    </div>
  );
}
