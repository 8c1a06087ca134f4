/** What arrived, counted against what the type says should come. A short count is painted, never refused. */
import { useState } from 'react';
import { Button } from '../../../../kit/button.tsx';
import { Choice, Tick } from '../../../../kit/choice.tsx';
import { Count } from '../../../../kit/count.tsx';
import { Field } from '../../../../kit/field.tsx';
import { Empty } from '../../../../kit/sheet.tsx';
import { changeItem, countAsExpected } from '../changes.ts';
import type { CastingTyped, ItemTyped } from '../typed.ts';
import css from './arrival-list.module.css';

type Props = Readonly<{ casting: CastingTyped; change: (changes: Partial<CastingTyped>) => void }>;

export function ArrivalList({ casting, change }: Props) {
  const [open, setOpen] = useState<number | null>(null);
  const [more, setMore] = useState('');
  const setItem = (position: number, changes: Partial<ItemTyped>) =>
    change({ items: changeItem(casting, position, changes).items });
  const hidden = casting.cameAssembled ? casting.items.filter((item) => item.inside).length : 0;
  const addLine = () => {
    if (more.trim() === '') return;
    change({ items: [...casting.items, { ...NEW_LINE, words: more.trim(), counted: 1 }] });
    setMore('');
  };
  return (
    <>
      {casting.items.length === 0 && <Empty>Nothing is listed for this casting yet. Add what came with it.</Empty>}
      <ul className={css.items}>
        {casting.items.map((item, position) =>
          casting.cameAssembled && item.inside ? null : (
            // biome-ignore lint/suspicious/noArrayIndexKey: lines are only added at the end and never change places.
            <li key={position} className={css.item}>
              <Count
                label={item.words}
                note={noteOf(item, casting)}
                value={item.counted}
                onChange={(counted) => setItem(position, { counted })}
                of={item.expected}
              />
              <button
                type="button"
                className={css.more}
                aria-expanded={open === position}
                aria-label={`More about ${item.words}`}
                onClick={() => setOpen(open === position ? null : position)}
              >
                more
              </button>
            </li>
          ),
        )}
      </ul>
      {open !== null && casting.items[open] && (
        <ItemMore item={casting.items[open]} casting={casting} onChange={(changes) => setItem(open, changes)} />
      )}
      {hidden > 0 && <p className={css.hidden}>{hidden} lines are inside: counted when it is taken apart.</p>}
      <div className={css.foot}>
        <Button onPress={() => change({ items: countAsExpected(casting).items })}>All the rest as listed</Button>
        <Field
          label="Something else came"
          quiet
          placeholder="something else came: name it, Enter"
          value={more}
          onChange={setMore}
          onKeyDown={(event) => {
            if (event.key !== 'Enter') return;
            event.preventDefault();
            addLine();
          }}
        />
      </div>
    </>
  );
}

const NEW_LINE: ItemTyped = {
  words: '',
  expected: null,
  counted: null,
  mixRule: 'none',
  removeBeforeWash: false,
  inside: false,
  own: false,
  numbersSeen: false,
  arrowsSeen: false,
  boltedInPlace: false,
  more: '',
  box: null,
};

/** What is said under a line: caps and their marks, whose it is, where it lies, what was written. */
function noteOf(item: ItemTyped, casting: CastingTyped): string | undefined {
  const box = item.box === null ? undefined : casting.boxes[item.box];
  const words = [
    item.numbersSeen && 'numbered',
    item.arrowsSeen && 'arrows',
    item.boltedInPlace && 'bolted in place',
    item.own && "customer's own",
    item.removeBeforeWash && 'off before wash',
    box && `in ${box.contents || box.kind}`,
    item.more,
  ].filter(Boolean);
  return words.length === 0 ? undefined : words.join(', ');
}

function ItemMore({
  item,
  casting,
  onChange,
}: {
  item: ItemTyped;
  casting: CastingTyped;
  onChange: (changes: Partial<ItemTyped>) => void;
}) {
  const places = [
    { value: 'on', words: 'on the casting' },
    ...casting.boxes.map((box, position) => ({ value: String(position), words: box.contents || box.kind })),
  ];
  return (
    <fieldset className={css.details}>
      <legend>{item.words}</legend>
      <Tick label="customer's own" checked={item.own} onChange={(own) => onChange({ own })} />
      {/cap/i.test(item.words) && (
        <>
          <Tick label="numbers seen" checked={item.numbersSeen} onChange={(numbersSeen) => onChange({ numbersSeen })} />
          <Tick label="arrows seen" checked={item.arrowsSeen} onChange={(arrowsSeen) => onChange({ arrowsSeen })} />
          <Tick
            label="bolted in place"
            checked={item.boltedInPlace}
            onChange={(boltedInPlace) => onChange({ boltedInPlace })}
          />
        </>
      )}
      {casting.boxes.length > 0 && (
        <Choice
          label="Where it lies"
          options={places.slice(0, 5)}
          value={item.box === null ? 'on' : String(item.box)}
          onChange={(place) => onChange({ box: place === 'on' ? null : Number(place) })}
        />
      )}
      <Field label="Note" placeholder="hole 3 empty" value={item.more} onChange={(more) => onChange({ more })} />
    </fieldset>
  );
}
