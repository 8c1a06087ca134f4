/** From the sum before tax down to what is to pay. Every figure comes from the host. */
import { useFormat } from '../../../client/use-shop.ts';
import type { Bill } from '../books-shapes.ts';
import css from './sums.module.css';

export type SumRow = Readonly<{ words: string; note?: string; amount: number }>;

export function Sums({
  bill,
  taken,
  toPay,
  label = 'To pay',
}: {
  bill: Bill;
  /** Deposits, payments and credits, as they are put on it. */
  taken: readonly SumRow[];
  toPay: number;
  label?: string;
}) {
  const format = useFormat();
  const { figures } = bill;
  return (
    <>
      <table className={css.sums}>
        <tbody>
          <tr>
            <td>Before tax</td>
            <td>{format.money(figures.beforeTax)}</td>
          </tr>
          {bill.taxes.map((tax) => (
            <tr key={tax.code}>
              <td>
                {tax.words} <small>{tax.working}</small>
              </td>
              <td>{format.money(tax.amount)}</td>
            </tr>
          ))}
          <tr className={css.total}>
            <td>Total</td>
            <td>{format.money(figures.total)}</td>
          </tr>
          {taken.map((row) => (
            <tr key={`${row.words}-${row.amount}`}>
              <td>
                {row.words} {row.note && <small>{row.note}</small>}
              </td>
              <td>−{format.money(row.amount)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <div className={css.pay}>
        <span>{label}</span>
        <b>{format.money(toPay)}</b>
      </div>
    </>
  );
}
