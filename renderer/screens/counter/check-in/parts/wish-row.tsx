/** One thing asked for: shop's words with theirs beside, count, price with its working, and why it cannot be had. */
import { useState } from 'react';
import { useFormat } from '../../../../client/use-shop.ts';
import { Button } from '../../../../kit/button.tsx';
import { Field } from '../../../../kit/field.tsx';
import { quantityFault } from '../../parts/quantity.ts';
import type { linesOf, Quote } from '../quote.ts';
import type { WishTyped } from '../typed.ts';
import css from './work-asked.module.css';

type WishRowProps = Readonly<{
  wish: WishTyped;
  /** Why the host did not take it. */
  trouble?: string | undefined;
  lines: ReturnType<typeof linesOf>;
  refusals: Quote['refusals'];
  onChange: (changes: Partial<WishTyped>) => void;
  /** Code of an operation of the catalogue by its id. */
  codeOf: (id: number) => string | null;
  onDrop: () => void;
}>;

export function WishRow(props: WishRowProps) {
  const { wish, lines, refusals, trouble } = props;
  const format = useFormat();
  const [open, setOpen] = useState(false);
  const asks = lines.some((line) => line.asksQuantity) || refusals.some((refusal) => refusal.priceOnly);
  const counted = open || asks || wish.quantity !== '';
  const inside = lines[0]?.inside.length ?? 0;
  const prices = [...new Set(lines.map((line) => line.priceWords))].join('; ');
  return (
    <>
      <tr>
        <td>
          <button type="button" className={css.name} aria-expanded={open} onClick={() => setOpen(!open)}>
            {wish.words}
          </button>
          {wish.said !== '' && wish.said !== wish.words && <small>they said "{wish.said}"</small>}
          {inside > 0 && <small>{inside} operations inside</small>}
          {wish.kind === 'said' && <small>kept as they said it; the ticket finds our word for it</small>}
        </td>
        <td className={css.figure}>{countWords(lines)}</td>
        <td className={css.price}>{prices}</td>
        <td className={css.figure}>
          {lines.length > 0 ? format.money(lines.reduce((sum, line) => sum + line.amount, 0)) : ''}
        </td>
      </tr>
      {(counted || refusals.length > 0 || trouble) && (
        <tr className={css.detail}>
          <td colSpan={4}>
            {trouble && (
              <p className={css.trouble} role="alert">
                {trouble}
              </p>
            )}
            <Refusals {...props} />
            {counted && <WishDetails {...props} asks={asks} />}
            {open && lines.map((line) => <p key={`${line.castingKey}-${line.working}`}>{line.working}</p>)}
            <Button kind="out" onPress={props.onDrop}>
              Take {wish.words} off
            </Button>
          </td>
        </tr>
      )}
    </>
  );
}

/** Why it cannot be had, and what does fit; what they called it stays beside our word. */
function Refusals({ wish, refusals, onChange, codeOf }: WishRowProps) {
  return oncePerSentence(refusals).map((refusal) => (
    <div key={refusal.words} className={css.refusal} role="alert">
      <b>{refusal.words}</b>
      {refusal.fits.map((fit) => (
        <Button
          key={fit.operationKindId}
          onPress={() =>
            onChange({
              kind: 'operation',
              id: fit.operationKindId,
              code: codeOf(fit.operationKindId),
              words: fit.words,
              said: wish.said || wish.words,
            })
          }
        >
          {fit.words} instead
        </Button>
      ))}
    </div>
  ));
}

function WishDetails({ wish, lines, onChange, asks }: WishRowProps & Readonly<{ asks: boolean }>) {
  const missing = asks && wish.quantity === '' ? 'Say how many.' : undefined;
  return (
    <div className={css.more}>
      <Field
        label={wish.hourly ? 'Hours' : 'How many'}
        inputMode={wish.hourly ? 'text' : 'numeric'}
        value={wish.quantity}
        placeholder={lines[0]?.quantityWords ?? ''}
        onChange={(quantity) => onChange({ quantity })}
        error={quantityFault(wish.quantity, wish.hourly) ?? missing}
      />
      <Field label="What they called it" value={wish.said} onChange={(said) => onChange({ said })} />
      <Field label="Note" placeholder="only the exhausts" value={wish.note} onChange={(note) => onChange({ note })} />
    </div>
  );
}

/** Two castings refuse in the same words: said once. */
function oncePerSentence(refusals: Quote['refusals']): Quote['refusals'] {
  return refusals.filter((refusal, at) => refusals.findIndex((other) => other.words === refusal.words) === at);
}

/** The pieces of all lines together where they count the same thing, otherwise each in its own words. */
function countWords(lines: ReturnType<typeof linesOf>): string {
  const [first] = lines;
  if (!first) return '';
  const alike = lines.every((line) => line.per === 1 && line.unit === first.unit);
  return alike
    ? String(lines.reduce((sum, line) => sum + line.quantity, 0))
    : lines.map((line) => line.quantityWords).join(', ');
}
