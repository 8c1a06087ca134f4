/** One way to go: in plain words, the work it needs, parts and outside work with their price. */
import { Button } from '../../../kit/button.tsx';
import { Choice } from '../../../kit/choice.tsx';
import { Field } from '../../../kit/field.tsx';
import { SheetHead } from '../../../kit/sheet.tsx';
import { nextKey } from '../check-in/typed.ts';
import { isHourly, quantityFault } from '../parts/quantity.ts';
import { WishField, type WishFor } from '../parts/wish-field.tsx';
import type { WayTyped } from './ask-typed.ts';
import css from './way-fields.module.css';

export function WayFields({
  letter,
  way,
  casting,
  onChange,
  onDrop,
}: {
  letter: string;
  way: WayTyped;
  casting: WishFor;
  onChange: (way: WayTyped) => void;
  onDrop?: (() => void) | undefined;
}) {
  const set = (changes: Partial<WayTyped>) => onChange({ ...way, ...changes });
  const setCharge = (key: string, changes: Partial<WayTyped['charges'][number]>) =>
    set({ charges: way.charges.map((one) => (one.key === key ? { ...one, ...changes } : one)) });
  return (
    <section className={css.way} aria-label={`Way ${letter}`}>
      <SheetHead title={`Way ${letter}`} end={onDrop && <Button onPress={onDrop}>Take way {letter} off</Button>} />
      <div className={css.fields}>
        <Field
          label="In plain words"
          value={way.words}
          onChange={(words) => set({ words })}
          placeholder="weld and re-seat"
        />
        <Choice
          label="What it is"
          options={[
            { value: 'work', words: 'work on this casting' },
            { value: 'other_casting', words: 'another casting' },
          ]}
          value={way.kind}
          onChange={(kind) => set({ kind })}
        />
        <WishField
          casting={casting}
          parts
          onPick={(picked) => {
            if ('part' in picked) {
              const { id, words } = picked.part;
              set({ parts: [...way.parts, { key: nextKey(way.parts, 's'), id, words, quantity: '' }] });
            }
            if (!('operation' in picked)) return;
            const { id, shopWords } = picked.operation;
            const hourly = isHourly(picked.operation, casting.kind);
            set({
              operations: [
                ...way.operations,
                { key: nextKey(way.operations, 'o'), id, words: shopWords, quantity: '', hourly },
              ],
            });
          }}
        />
        <ul className={css.work}>
          {way.operations.map((work) => (
            <li key={work.key}>
              <span>{work.words}</span>
              <Field
                label={work.hourly ? `Hours of ${work.words}` : `How many ${work.words}`}
                quiet
                placeholder={work.hourly ? 'hours' : 'as the casting has'}
                value={work.quantity}
                error={quantityFault(work.quantity, work.hourly)}
                onChange={(quantity) =>
                  set({ operations: way.operations.map((one) => (one.key === work.key ? { ...one, quantity } : one)) })
                }
              />
              <Button
                label={`Take off ${work.words}`}
                onPress={() => set({ operations: way.operations.filter((one) => one.key !== work.key) })}
              >
                Take off
              </Button>
            </li>
          ))}
          {way.parts.map((part) => (
            <li key={part.key}>
              <span>{part.words}</span>
              <Field
                label={`How many ${part.words}`}
                quiet
                placeholder="1"
                inputMode="numeric"
                value={part.quantity}
                onChange={(quantity) =>
                  set({ parts: way.parts.map((one) => (one.key === part.key ? { ...one, quantity } : one)) })
                }
              />
              <Button
                label={`Take off ${part.words}`}
                onPress={() => set({ parts: way.parts.filter((one) => one.key !== part.key) })}
              >
                Take off
              </Button>
            </li>
          ))}
          {way.charges.map((charge) => (
            <li key={charge.key}>
              <Field
                label="Part or outside work"
                value={charge.words}
                onChange={(words) => setCharge(charge.key, { words })}
              />
              <Field
                label="Price"
                inputMode="decimal"
                value={charge.price}
                onChange={(price) => setCharge(charge.key, { price })}
              />
              <Button
                label={`Take off ${charge.words}`}
                onPress={() => set({ charges: way.charges.filter((one) => one.key !== charge.key) })}
              >
                Take off
              </Button>
            </li>
          ))}
        </ul>
        <Button
          onPress={() => set({ charges: [...way.charges, { key: nextKey(way.charges, 'h'), words: '', price: '' }] })}
        >
          A part or outside work, with its price
        </Button>
        <div className={css.two}>
          <Field
            label="Days more"
            inputMode="numeric"
            value={way.daysMore}
            onChange={(daysMore) => set({ daysMore })}
          />
          <Field
            label="What follows"
            placeholder="if it weeps again we stop and ring"
            value={way.ifDeclined}
            onChange={(ifDeclined) => set({ ifDeclined })}
          />
        </div>
      </div>
    </section>
  );
}
