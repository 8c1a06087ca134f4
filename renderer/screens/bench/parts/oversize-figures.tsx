/** What the choice of an oversize stands on, each figure with where it comes from, and the way to type what is missing. */
import type { OversizeChoice, OversizeFigure } from '#core/readings/compute/oversize-model.ts';
import type { Sheet } from '#core/readings/compute/sheet-model.ts';
import { Button } from '../../../kit/button.tsx';
import { tableAddress } from '../bench-addresses.ts';
import type { Spot } from '../reading-view.ts';
import { JobLimit } from './job-limit.tsx';
import css from './oversize-figures.module.css';

/** Sizes of the pistons and what is left for the hone are read once for the block, in a table of their own. */
const PISTONS = 'pistons';

export function OversizeFigures({ sheet, choice }: { sheet: Sheet; choice: OversizeChoice }) {
  const { tag } = sheet.casting;
  return (
    <div className={css.figures}>
      <dl>
        {choice.figures.map((one) => (
          <div key={one.quantity}>
            <dt>{one.words}</dt>
            <dd>
              {one.size ? `${one.size.text} ${choice.unit}` : 'not known'} {one.size && <small>{one.source}</small>}
            </dd>
          </div>
        ))}
        <div>
          <dt>pistons</dt>
          <dd>{choice.pistons}</dd>
        </div>
        <div>
          <dt>read at</dt>
          <dd>{choice.depths}</dd>
        </div>
      </dl>
      {tag !== null && <Button href={tableAddress(tag, PISTONS)}>Type pistons, hone and depths</Button>}
      {choice.figures.map((one) => {
        const spot = one.size ? null : spotOf(sheet, one);
        return spot && <JobLimit key={one.quantity} spot={spot} />;
      })}
    </div>
  );
}

/** A row of this table to which a limit for this job can be typed; null for what has none here. */
function spotOf(sheet: Sheet, figure: OversizeFigure): Spot | null {
  const row = sheet.rows.find((one) => one.quantity === figure.quantity);
  const [column] = sheet.columns;
  return row && column ? { sheet, row, column, cell: row.cells[0] } : null;
}
