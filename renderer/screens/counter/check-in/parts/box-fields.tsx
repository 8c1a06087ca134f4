/** Boxes, bags and trays: kind, what is inside, how many, whose. */
import { Button } from '../../../../kit/button.tsx';
import { Choice } from '../../../../kit/choice.tsx';
import { Field } from '../../../../kit/field.tsx';
import { type BoxTyped, nextKey } from '../typed.ts';
import css from './box-fields.module.css';

const KINDS = [
  { value: 'bag', words: 'bag' },
  { value: 'tray', words: 'tray' },
  { value: 'box', words: 'box' },
  { value: 'board', words: 'board' },
  { value: 'basket', words: 'basket' },
] as const;

const OWNERS = [
  { value: 'ours_with_casting', words: 'ours' },
  { value: 'customers_own', words: "customer's" },
  { value: 'new', words: 'new parts' },
] as const;

export function BoxFields({
  title,
  boxes,
  onBoxes,
}: {
  title: string;
  boxes: readonly BoxTyped[];
  onBoxes: (boxes: readonly BoxTyped[]) => void;
}) {
  const change = (key: string, changes: Partial<BoxTyped>) =>
    onBoxes(boxes.map((box) => (box.key === key ? { ...box, ...changes } : box)));
  return (
    <section className={css.boxes} aria-label={title}>
      {boxes.map((box) => (
        <div key={box.key} className={css.box}>
          <Choice
            label="Kept in"
            options={KINDS}
            value={KINDS.find((kind) => kind.value === box.kind)?.value ?? null}
            onChange={(kind) => change(box.key, { kind })}
          />
          <div className={css.two}>
            <Field label="What is inside" value={box.contents} onChange={(contents) => change(box.key, { contents })} />
            <Field
              label="How many"
              inputMode="numeric"
              value={box.count}
              onChange={(count) => change(box.key, { count })}
            />
          </div>
          <Choice
            label="Whose"
            options={OWNERS}
            value={OWNERS.find((owner) => owner.value === box.owner)?.value ?? null}
            onChange={(owner) => change(box.key, { owner })}
          />
          <Button kind="out" onPress={() => onBoxes(boxes.filter((one) => one.key !== box.key))}>
            Take it off
          </Button>
        </div>
      ))}
      <Button
        onPress={() =>
          onBoxes([
            ...boxes,
            { key: nextKey(boxes, 'b'), kind: 'box', contents: '', count: '', owner: 'customers_own' },
          ])
        }
      >
        {title}: add one
      </Button>
    </section>
  );
}
