/** Pieces of a casting that lie in no bag and whose end nobody has said: each ends in one way. */
import { useState } from 'react';
import { Button } from '../../../../kit/button.tsx';
import { Choice } from '../../../../kit/choice.tsx';
import { Count } from '../../../../kit/count.tsx';
import { Field } from '../../../../kit/field.tsx';
import type { Change, Fate, ReleaseItem, ReleaseRow, ReleaseTyped } from '../release-typed.ts';
import css from './piece-ends.module.css';

const FATES: readonly Readonly<{ value: Fate; words: string }>[] = [
  { value: 'in_casting', words: 'in the casting' },
  { value: 'replaced', words: 'replaced' },
  { value: 'in_bag', words: 'in a bag' },
  { value: 'returned', words: 'handed back' },
  { value: 'scrapped_agreed', words: 'scrapped, agreed' },
];

const NOTHING = { count: null, fate: null, why: '' } as const;

export function PieceEnds({
  row,
  items,
  typed,
  change,
}: {
  row: ReleaseRow;
  items: readonly ReleaseItem[];
  typed: ReleaseTyped;
  change: Change;
}) {
  // Assembly or an untouched casting closes them; they are shown when the host names one of them as a stop.
  const [open, setOpen] = useState(row.stops.length > 0);
  if (!open) {
    return (
      <div className={css.shut}>
        <span>
          {items.length === 1 ? '1 more line' : `${items.length} more lines`} of {row.label} leave in the casting.
        </span>
        <Button onPress={() => setOpen(true)}>Say it piece by piece</Button>
      </div>
    );
  }
  const unsaid = items.filter((item) => !typed.items[item.itemId]?.fate);
  const restStays = () =>
    change({
      items: {
        ...typed.items,
        ...Object.fromEntries(
          unsaid.map((item) => [item.itemId, { ...NOTHING, ...typed.items[item.itemId], fate: 'in_casting' as const }]),
        ),
      },
    });
  return (
    <>
      {unsaid.length > 1 && (
        <div className={css.shut}>
          <span>
            {unsaid.length} lines of {row.label} have no end yet.
          </span>
          <Button onPress={restStays}>All of them in the casting</Button>
        </div>
      )}
      <ul className={css.items} aria-label={`Pieces of ${row.label}`}>
        {items.map((item) => {
          const said = typed.items[item.itemId] ?? NOTHING;
          const set = (changes: Partial<typeof said>) =>
            change({ items: { ...typed.items, [item.itemId]: { ...said, ...changes } } });
          const of = item.countNow ?? item.expected;
          const short = said.fate !== null && of !== null && said.count !== null && said.count !== of;
          return (
            <li key={item.itemId}>
              <Count
                label={item.words}
                note={item.countWords}
                value={said.count ?? (said.fate === null ? null : of)}
                of={of}
                onChange={(count) => set({ count })}
              />
              <Choice
                label={`Where ${item.words} ended`}
                quiet
                options={FATES}
                value={said.fate}
                onChange={(fate) => set({ fate })}
              />
              {short && <Field label={`Why ${item.words} differ`} value={said.why} onChange={(why) => set({ why })} />}
            </li>
          );
        })}
      </ul>
    </>
  );
}
