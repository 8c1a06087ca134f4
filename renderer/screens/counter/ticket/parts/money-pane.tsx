/** Money as words and figures: what was agreed, done and asked, and how far past the ceiling it would go. */
import { useMay } from '../../../../client/use-me.ts';
import { useFormat } from '../../../../client/use-shop.ts';
import { Button } from '../../../../kit/button.tsx';
import { classes } from '../../../../kit/class-names.ts';
import { Sheet } from '../../../../kit/sheet.tsx';
import type { PanelName } from '../panel-names.ts';
import type { Ticket } from '../ticket-shapes.ts';
import css from './money-pane.module.css';

export function MoneyPane({ ticket, onPanel }: { ticket: Ticket; onPanel: (name: PanelName) => void }) {
  const may = useMay();
  const format = useFormat();
  const { money } = ticket;
  if (!may.has('pricing:see')) return null;
  return (
    <Sheet
      title="Money"
      note={money.basis}
      end={
        <span className={css.acts}>
          {may.has('tickets:edit') && ticket.lines.length > 0 && (
            <Button onPress={() => onPanel('estimate')}>Estimate</Button>
          )}
          {may.has('approvals:record') && <Button onPress={() => onPanel('ceiling')}>Ceiling</Button>}
        </span>
      }
    >
      <dl className={css.money}>
        {money.rows.map((row) => (
          <div key={row.words} className={classes(row.tone === 'asked' && css.asked, row.tone === 'past' && css.past)}>
            <dt>{row.words}</dt>
            <dd>
              {format.money(row.amount)}
              {row.more && `, ${row.more}`}
            </dd>
          </div>
        ))}
        {money.invoices.map((invoice) => (
          <div key={invoice.invoiceId}>
            <dt>
              Invoice {invoice.number}, {invoice.word}
            </dt>
            <dd>{format.money(invoice.total)}</dd>
          </div>
        ))}
      </dl>
      {money.account.words !== '' && <p className={css.account}>{money.account.words}</p>}
      {money.account.waitsForYes && may.has('leads:decide') && (
        <div className={css.act}>
          <Button kind="out" onPress={() => onPanel('account-yes')}>
            Let work go on all the same
          </Button>
        </div>
      )}
    </Sheet>
  );
}
