/** Under every table, whatever lies open above it: what to fetch, what fails, how much passes, and the way to all of it. */
import type { Sheet } from '#core/readings/compute/sheet-model.ts';
import { Button } from '../../../kit/button.tsx';
import css from './table-foot.module.css';

export function TableFoot({ sheet, open, onOpen }: { sheet: Sheet; open: boolean; onOpen: () => void }) {
  const { toDo } = sheet;
  return (
    <div className={css.foot}>
      <p className={css.words}>
        {sheet.pickingText !== '' && (
          <>
            To fetch: <b>{sheet.pickingText}</b>.{' '}
          </>
        )}
        {/* The sums stand before what fails, so that a long list never pushes them out of sight. */}
        <span className={css.sums}>
          {sheet.summary}
          {sheet.spread !== null && `, from shortest to tallest ${sheet.spread}`}.
        </span>{' '}
        {toDo.map((one, n) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: one place may fail twice in the same words.
          <span key={n}>
            <b className={css.fail}>{one.label}</b> {one.words}.{' '}
          </span>
        ))}
      </p>
      {toDo.length > 0 && (
        <Button pressed={open} onPress={onOpen}>
          {toDo.length} to do
        </Button>
      )}
    </div>
  );
}
