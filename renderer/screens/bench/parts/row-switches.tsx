/** Which rows this casting's table has: those of every casting of its kind, switched on or off for this job only. */
import type { Sheet, SheetRow } from '#core/readings/compute/sheet-model.ts';
import { useAppCommand } from '../../../client/use-app.ts';
import { Button } from '../../../kit/button.tsx';
import { ErrorNote } from '../../../kit/notice.tsx';
import css from './row-switches.module.css';

type Group = Readonly<{ key: string; words: string; rows: readonly SheetRow[] }>;

/** Rows that stand alone together, then each quantity of several points, before and after apart; in the order of the table. */
export function rowGroups(sheet: Sheet): Group[] {
  const groups = new Map<string, { words: string; rows: SheetRow[] }>([
    ['', { words: 'read or computed once', rows: [] }],
  ]);
  for (const row of sheet.rows) {
    const key = row.point === null ? '' : `${row.quantity} ${row.stage}`;
    const group = groups.get(key) ?? { words: `${row.words}, ${row.stage} work`, rows: [] };
    group.rows.push(row);
    groups.set(key, group);
  }
  return [...groups].flatMap(([key, group]) => (group.rows.length > 0 ? [{ key, ...group }] : []));
}

/** What one row of a group is called: its place, else itself and its stage. */
const switchWords = (row: SheetRow): string => row.pointWords ?? `${row.words}, ${row.stage} work`;

/** A row with a figure in it stays in sight: what fails there must not be hidden. */
export const holdsFigures = (row: SheetRow): boolean => row.cells.some((cell) => cell.reading !== null);

export function RowSwitches({ sheet, onClose }: { sheet: Sheet; onClose: () => void }) {
  const show = useAppCommand('readings/show-row');
  const set = (row: SheetRow) =>
    void show.send({
      casting: sheet.casting.id,
      table: sheet.table.code,
      quantity: row.quantity,
      point: row.point,
      stage: row.stage,
      shown: !row.shown,
    });
  const shown = sheet.rows.filter((row) => row.shown).length;
  return (
    <section className={css.switches} aria-label="Rows of this table">
      <div className={css.head}>
        <h3>
          {shown} of {sheet.rows.length} rows shown <small>for this casting only; what is read stays in sight</small>
        </h3>
        <Button onPress={onClose}>Back to readings</Button>
      </div>
      <ErrorNote error={show.error} />
      <div className={css.groups}>
        {rowGroups(sheet).map((group) => (
          <fieldset key={group.key} className={css.group}>
            <legend>{group.words}</legend>
            {group.rows.map((row) => {
              const fixed = row.shown && holdsFigures(row);
              return (
                <button
                  key={row.key}
                  type="button"
                  className={css.row}
                  aria-pressed={row.shown}
                  aria-disabled={fixed || show.pending}
                  onClick={() => !fixed && !show.pending && set(row)}
                >
                  {switchWords(row)}
                  <small>{fixed ? 'shown, read' : row.shown ? 'shown' : 'off'}</small>
                </button>
              );
            })}
          </fieldset>
        ))}
      </div>
    </section>
  );
}
