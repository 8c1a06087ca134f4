/** A part of the stock at its list price, one with a price of its own, or one the customer brings. */
import { useState } from 'react';
import { readMoney } from '#core/kernel/format.ts';
import { useAppCommand, useAppQuery } from '../../../../client/use-app.ts';
import { useFormat } from '../../../../client/use-shop.ts';
import { Choice } from '../../../../kit/choice.tsx';
import { Field } from '../../../../kit/field.tsx';
import { FormSheet } from '../../../../kit/form-sheet.tsx';
import { Suggest } from '../../../../kit/suggest.tsx';
import { plain } from '../../check-in/find-type.ts';
import { readQuantity } from '../../parts/quantity.ts';
import type { PanelProps, TicketCasting } from '../ticket-shapes.ts';

type Source = 'stock' | 'shop' | 'customer';

export function PartPanel({ ticket, casting, onDone }: PanelProps & Readonly<{ casting: TicketCasting | undefined }>) {
  const format = useFormat();
  const command = useAppCommand('parts/add-part');
  const stock = useAppQuery('parts/list-stock', {}).data?.items ?? [];
  const [text, setText] = useState('');
  const [item, setItem] = useState<number | null>(null);
  const [source, setSource] = useState<Source>('stock');
  const [quantity, setQuantity] = useState('1');
  const [price, setPrice] = useState('');
  const [on, setOn] = useState<'ticket' | 'casting'>(casting ? 'casting' : 'ticket');
  const cents = readMoney(price, format.settings);
  const pieces = readQuantity(quantity, false);
  const errors = command.error?.reply.fields ?? {};
  const missing = missingPart({ text, item, source, cents, pieces });
  const add = async () => {
    if (missing || pieces === null) return;
    const typed = { sell: 'typed' as const, price: (cents ?? 0) * 100, priceWhy: 'typed at the counter' };
    const kept = await command.send({
      ticketId: ticket.ticketId,
      castingId: on === 'casting' ? (casting?.castingId ?? null) : null,
      part: {
        ...(source === 'stock' ? { stockItemId: item } : { words: text.trim() }),
        ...(source === 'shop' && typed),
        quantity: pieces,
        source,
      },
    });
    if (kept) onDone();
  };
  const asked = plain(text);
  return (
    <FormSheet
      title="Add a part"
      act="Add it"
      command={command}
      shut={missing}
      fieldsShown={['part.words', 'part.quantity', 'part.price']}
      onDone={onDone}
      onGo={() => void add()}
    >
      <Choice<Source>
        label="Where it comes from"
        options={[
          { value: 'stock', words: 'our stock' },
          { value: 'shop', words: 'to be ordered' },
          { value: 'customer', words: 'they bring it' },
        ]}
        value={source}
        onChange={setSource}
      />
      {source === 'stock' ? (
        <Suggest
          label="Part of the stock"
          text={text}
          onText={(words) => {
            setText(words);
            setItem(null);
          }}
          options={stock
            .filter((one) => plain(`${one.words} ${one.code}`).includes(asked))
            .slice(0, 8)
            .map((one) => ({
              key: one.id,
              words: one.words,
              note: one.listPrice === null ? 'no price' : format.price(one.listPrice),
              value: one,
            }))}
          onPick={(one) => {
            setText(one.words);
            setItem(one.id);
          }}
          autoFocus
        />
      ) : (
        <Field label="What part it is" value={text} onChange={setText} error={errors['part.words']} autoFocus />
      )}
      <Field
        label="How many"
        inputMode="numeric"
        value={quantity}
        onChange={setQuantity}
        error={errors['part.quantity']}
      />
      {source === 'shop' && (
        <Field
          label="Price of one"
          inputMode="decimal"
          value={price}
          onChange={setPrice}
          error={errors['part.price']}
        />
      )}
      {casting && (
        <Choice
          label="For"
          options={[
            { value: 'casting', words: String(casting.tagNo) },
            { value: 'ticket', words: 'the whole ticket' },
          ]}
          value={on}
          onChange={setOn}
        />
      )}
    </FormSheet>
  );
}

/** Why it cannot be added yet, or undefined. */
function missingPart(typed: {
  text: string;
  item: number | null;
  source: Source;
  cents: number | null;
  pieces: number | null;
}): string | undefined {
  if (typed.source === 'stock' && typed.item === null) return 'Choose a part of the stock.';
  if (typed.text.trim() === '') return 'Write what part it is.';
  if (typed.pieces === null) return 'Write how many.';
  return typed.source === 'shop' && typed.cents === null ? 'Write the price of one.' : undefined;
}
