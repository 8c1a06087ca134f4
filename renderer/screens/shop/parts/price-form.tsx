/** A new price from a day on; the old one stays for tickets of earlier days. */
import type { App } from '#core/app-contract.ts';
import type { InputOf } from '#core/kernel/contract.ts';
import { readMoney } from '#core/kernel/format.ts';
import { useAppCommand } from '../../../client/use-app.ts';
import { keepTyped, useTyped } from '../../../client/use-draft.ts';
import { useFormat } from '../../../client/use-shop.ts';
import { Field } from '../../../kit/field.tsx';
import { FormSheet } from '../../../kit/form-sheet.tsx';

export type PriceOf = Readonly<{
  key: string;
  code: string;
  title: string;
  /** What it is done on. */
  on: string;
  per: string;
  price: number | null;
  lineMinimum: number;
  from: string | null;
  next: Readonly<{ price: number; from: string }> | null;
  thing: InputOf<App['rates/set-price']>['for'];
}>;

type PriceTyped = Readonly<{ price: string; minimum: string; from: string }>;
const isPrice = (value: unknown): value is PriceTyped =>
  typeof value === 'object' && value !== null && 'price' in value && 'minimum' in value && 'from' in value;

export function PriceForm({
  priced,
  list,
  today,
  onDone,
}: {
  priced: PriceOf;
  list: string;
  today: string;
  onDone: () => void;
}) {
  const format = useFormat();
  const start = { price: '', minimum: priced.lineMinimum > 0 ? format.money(priced.lineMinimum) : '', from: today };
  const name = `price-${list}-${priced.key}`;
  const [typed, set] = useTyped<PriceTyped>(name, start, isPrice);
  const command = useAppCommand('rates/set-price');
  const price = readMoney(typed.price, format.settings);
  const minimum = typed.minimum.trim() === '' ? 0 : readMoney(typed.minimum, format.settings);
  const fields = command.error?.reply.fields ?? {};
  const wrongPrice = typed.price.trim() !== '' && price === null ? 'Write a price, for example 45.00.' : undefined;
  const wrongMinimum = minimum === null ? 'Write an amount, for example 20.00.' : undefined;
  const change = (changes: Partial<PriceTyped>) => set((before) => ({ ...before, ...changes }));
  return (
    <FormSheet
      title={priced.title}
      note={`on ${priced.on}, per ${priced.per}`}
      act={price === null ? 'Set the price' : `Set ${format.money(price)} from ${format.day(typed.from || today)}`}
      command={command}
      shut={wrongPrice ?? wrongMinimum ?? (price === null ? 'Write the price.' : undefined)}
      fieldsShown={['price', 'lineMinimum', 'from']}
      onDone={onDone}
      onGo={() =>
        price !== null &&
        minimum !== null &&
        void command
          .send({ for: priced.thing, price: price * 100, lineMinimum: minimum, from: typed.from, list })
          .then((kept) => {
            if (!kept) return;
            keepTyped(name, null);
            onDone();
          })
      }
    >
      <p>
        {priced.price === null
          ? 'It has no price today: it cannot be put on a ticket.'
          : `${format.price(priced.price)} today.`}{' '}
        {priced.next && `${format.price(priced.next.price)} from ${format.day(priced.next.from)} is set already.`}
      </p>
      <Field
        label="New price of one, before tax"
        inputMode="decimal"
        value={typed.price}
        onChange={(text) => change({ price: text })}
        error={wrongPrice ?? fields.price}
        autoFocus
      />
      <Field
        label="A line is at least (empty: no minimum)"
        inputMode="decimal"
        value={typed.minimum}
        onChange={(text) => change({ minimum: text })}
        error={wrongMinimum ?? fields.lineMinimum}
      />
      <Field
        label="From this day on"
        type="date"
        value={typed.from}
        onChange={(from) => change({ from })}
        error={fields.from}
      />
      <p>Changing a rate changes no ticket: each keeps the prices of the day its lines were written.</p>
    </FormSheet>
  );
}
