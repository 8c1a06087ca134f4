/** What is to be done about everything that does not pass, in the order of the bench, with what to try first. */
import type { Sheet } from '#core/readings/compute/sheet-model.ts';
import { Button } from '../../../kit/button.tsx';
import { columnKey } from '../reading-view.ts';
import css from './to-do-list.module.css';

export function ToDoList({
  sheet,
  onGo,
  onClose,
}: {
  sheet: Sheet;
  /** To a column of the table. */
  onGo: (column: string) => void;
  onClose: () => void;
}) {
  return (
    <section className={css.list} aria-label="What to do">
      <div className={css.head}>
        <h3>
          {sheet.toDo.length} to do <small>{sheet.summary}</small>
        </h3>
        <Button onPress={onClose}>Back to readings</Button>
      </div>
      <ol>
        {sheet.toDo.map((one, n) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: one place may fail twice in the same words.
          <li key={n}>
            <button type="button" className={css.place} onClick={() => onGo(columnKey(one))}>
              {one.label || 'all'}
            </button>
            <div>
              <b>{one.words}</b>
              {one.steps.length > 0 && <p>{one.steps.map((step, at) => `${at + 1} ${step}`).join(' ')}</p>}
            </div>
          </li>
        ))}
      </ol>
    </section>
  );
}
