/** Work asked for, with the price of the day and its working. What the metal forbids is said beside it, with what fits. */
import { useState } from 'react';
import type { RequestRefused } from '../../../../client/request-refused.ts';
import { useAppQuery } from '../../../../client/use-app.ts';
import { useFormat } from '../../../../client/use-shop.ts';
import { Choice } from '../../../../kit/choice.tsx';
import { ErrorNote, Notice } from '../../../../kit/notice.tsx';
import { WishField, wishOf } from '../../parts/wish-field.tsx';
import { addWish, changeWish, dropWish } from '../changes.ts';
import type { SetTyped } from '../hooks/use-check-in.ts';
import { linesOf, type Quote, refusalsOf } from '../quote.ts';
import type { Troubles } from '../request.ts';
import type { CheckInTyped } from '../typed.ts';
import { WishRow } from './wish-row.tsx';
import css from './work-asked.module.css';

export function WorkAsked({
  typed,
  set,
  quote,
  error,
  troubles = {},
}: {
  typed: CheckInTyped;
  set: SetTyped;
  quote: Quote | undefined;
  error: RequestRefused | null;
  /** Sentence by key of a wish. */
  troubles?: Troubles;
}) {
  const format = useFormat();
  const at = typed.castings.find((casting) => casting.key === typed.at) ?? typed.castings[0];
  const [forAll, setForAll] = useState<'all' | 'one'>('all');
  const kinds = useAppQuery('operations/list-kinds', {}).data?.kinds;
  return (
    <>
      <div className={css.ask}>
        {typed.castings.length > 1 && (
          <Choice
            label="For"
            quiet
            options={[
              { value: 'all', words: typed.castings.length === 2 ? 'both' : `all ${typed.castings.length}` },
              { value: 'one', words: 'only the chosen one' },
            ]}
            value={forAll}
            onChange={setForAll}
          />
        )}
        <WishField
          parts
          casting={at}
          onPick={(picked) =>
            set((before) =>
              addWish(before, { ...wishOf(picked, at?.kind), castings: forAll === 'one' && at ? [at.key] : [] }),
            )
          }
        />
      </div>
      <ErrorNote error={error} />
      <table className={css.work}>
        <thead>
          <tr>
            <th>Operation</th>
            <th className={css.figure}>Count</th>
            <th>Price of the day</th>
            <th className={css.figure}>Amount</th>
          </tr>
        </thead>
        <tbody>
          {typed.wishes.map((wish) => (
            <WishRow
              key={wish.key}
              wish={wish}
              trouble={troubles[wish.key]}
              lines={quote ? linesOf(wish, quote) : []}
              refusals={quote ? refusalsOf(wish, quote) : []}
              onChange={(changes) => set((before) => changeWish(before, wish.key, changes))}
              codeOf={(id) => kinds?.find((kind) => kind.id === id)?.code ?? null}
              onDrop={() => set((before) => dropWish(before, wish.key))}
            />
          ))}
          {quote?.bill.derived.map((line) => (
            <tr key={`${line.role}-${line.words}`}>
              <td colSpan={2}>{line.words}</td>
              <td className={css.price}>{line.working}</td>
              <td className={css.figure}>{format.money(line.amount)}</td>
            </tr>
          ))}
        </tbody>
        {quote && (
          <tfoot>
            <tr className={css.total}>
              <td colSpan={3}>Estimate before tax</td>
              <td className={css.figure}>{format.money(quote.bill.figures.beforeTax)}</td>
            </tr>
            {quote.bill.taxes.map((tax) => (
              <tr key={tax.code}>
                <td colSpan={2}>{tax.words}</td>
                <td className={css.price}>{tax.exempt ?? tax.working}</td>
                <td className={css.figure}>{format.money(tax.amount)}</td>
              </tr>
            ))}
            <tr className={css.total}>
              <td colSpan={3}>With tax, {format.settings.currencySign}</td>
              <td className={css.figure}>{format.money(quote.bill.figures.total)}</td>
            </tr>
          </tfoot>
        )}
      </table>
      {quote?.belowCeiling !== null && quote !== undefined && quote.belowCeiling < 0 && (
        <div className={css.past}>
          <Notice kind="ask">
            <b>Past the ceiling by {format.money(-quote.belowCeiling)}.</b> Raise the ceiling with them now, or the work
            past it waits for a call.
          </Notice>
        </div>
      )}
    </>
  );
}
