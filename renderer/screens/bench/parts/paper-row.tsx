/** Typing one row from the paper traveller: all its places at once, kept together or not at all. */
import { type FormEvent, useState } from 'react';
import { useAppCommand } from '../../../client/use-app.ts';
import { Button, GoButton } from '../../../kit/button.tsx';
import { ErrorNote } from '../../../kit/notice.tsx';
import type { Gauge } from '../hooks/use-preview.ts';
import { columnKey, isRead, labelOf, type Spot } from '../reading-view.ts';
import css from './paper-row.module.css';

export function PaperRow({
  spot,
  order,
  gauge,
  operation,
  onRow,
  onClose,
}: {
  /** The row to type; its column is where the hand was. */
  spot: Spot;
  order: readonly string[];
  gauge: Gauge;
  operation: number | null;
  /** Next row, after this one is kept. */
  onRow: () => void;
  onClose: () => void;
}) {
  const { sheet, row } = spot;
  const add = useAppCommand('readings/add-readings');
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>({});
  const columns = order.flatMap((key) => sheet.columns.filter((column) => columnKey(column) === key));
  const open = columns.filter((column) => !isRead(sheet, row, columnKey(column)));
  const filled = open.filter((column) => (typed[columnKey(column)] ?? '').trim() !== '');

  async function submit(event: FormEvent) {
    event.preventDefault();
    const kept = await add.send({
      casting: sheet.casting.id,
      operation,
      rows: filled.map((column) => ({
        quantity: row.quantity,
        spot: column.spot,
        point: row.point,
        stage: row.stage,
        typed: (typed[columnKey(column)] ?? '').trim(),
        unit: row.unit,
        tool: gauge.tool,
        readOn: row.quantity === 'installed-height' ? gauge.readOn : null,
      })),
    });
    if (!kept) return;
    setTyped({});
    onRow();
  }

  return (
    <form className={css.paper} onSubmit={submit} aria-label={`From paper: ${labelOf(sheet, row)}`}>
      <h3>
        From paper: <b>{labelOf(sheet, row)}</b>
      </h3>
      <div className={css.fields}>
        {columns.map((column) => {
          const key = columnKey(column);
          const read = row.cells[sheet.columns.indexOf(column)];
          const done = isRead(sheet, row, key);
          return (
            <label key={key} className={css.field}>
              <span>{column.label || column.words}</span>
              <input
                inputMode="decimal"
                autoComplete="off"
                value={done ? (read?.text ?? '') : (typed[key] ?? '')}
                readOnly={done}
                onChange={(event) => setTyped((before) => ({ ...before, [key]: event.target.value }))}
              />
            </label>
          );
        })}
      </div>
      <ErrorNote error={add.error} />
      <div className={css.foot}>
        <Button onPress={onClose}>Back to readings</Button>
        <GoButton
          type="submit"
          working={add.pending}
          shut={filled.length === 0 ? 'Type what the paper says.' : undefined}
        >
          Keep {filled.length} of {open.length}
        </GoButton>
      </div>
    </form>
  );
}
