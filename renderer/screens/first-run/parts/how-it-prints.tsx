/** The head of every paper as it will print, while it is typed. Paper is white and ink black in either light. */
import type { ShopTyped } from '../first-run-text.ts';
import css from './how-it-prints.module.css';

export function HowItPrints({ shop }: { shop: ShopTyped }) {
  return (
    <figure>
      <figcaption className={css.caption}>How it prints</figcaption>
      <div className={css.paper}>
        <div className={css.shop}>
          <b>{shop.name || 'The shop name'}</b>
          <span>{shop.address || 'Address'}</span>
          <span>{shop.phone || 'Telephone'}</span>
          {shop.taxNumber && <span>{shop.taxNumber}</span>}
        </div>
        <div className={css.number}>
          <span>Claim ticket</span>
          <b>10001</b>
        </div>
      </div>
    </figure>
  );
}
