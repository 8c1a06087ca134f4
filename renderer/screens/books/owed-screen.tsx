/** What is owed: every account by age, the bills still to write, and the open invoices. */
import { useState } from 'react';
import { useAppQuery } from '../../client/use-app.ts';
import { useFormat } from '../../client/use-shop.ts';
import { invoiceAddress } from '../../kit/addresses.ts';
import { classes } from '../../kit/class-names.ts';
import { KeyHints } from '../../kit/key-hints.tsx';
import { keysOf } from '../../kit/keyboard.ts';
import { ErrorNote } from '../../kit/notice.tsx';
import { Waiting } from '../../kit/pane.tsx';
import { Row, RowGroup, Rows } from '../../kit/rows.tsx';
import { Empty, PageName, Sheet } from '../../kit/sheet.tsx';
import { Late } from '../../kit/state.tsx';
import { accountAddress } from './books-shapes.ts';
import css from './owed-screen.module.css';

const AGES = ['current', '1-30', '31-60', '61-90', 'over 90'] as const;

export function OwedScreen() {
  return (
    <RowGroup>
      <div className={css.page}>
        <PageName>What is owed</PageName>
        <Ageing />
        <ToInvoice />
        <OpenInvoices />
      </div>
      <KeyHints
        hints={[
          { keys: ['Up', 'Down'], words: 'move' },
          { keys: ['Enter'], words: 'open' },
          { keys: [keysOf('find')], words: 'find' },
        ]}
      />
    </RowGroup>
  );
}

function Ageing() {
  const format = useFormat();
  const { data, error, isPending } = useAppQuery('accounts/list-ageing', {});
  if (isPending) return <Waiting />;
  if (error) return <ErrorNote error={error} />;
  return (
    <Sheet
      title="What is owed"
      note={`on ${format.day(data.asOf)}, counted from the ${data.countedFrom}`}
      end={`${data.rows.length} accounts`}
      scroll
      stop={data.rows.length === 0}
    >
      <table className={css.ages}>
        <thead>
          <tr>
            <th scope="col">Account</th>
            <th scope="col">Owed</th>
            {AGES.map((age) => (
              <th key={age} scope="col">
                {age === 'current' ? 'not due' : age}
              </th>
            ))}
            <th scope="col">Held</th>
          </tr>
        </thead>
        <tbody>
          {data.rows.map((row) => (
            <tr key={row.customerId}>
              <th scope="row">
                <a data-row="" href={accountAddress(row.customerId)}>
                  {row.customer}
                </a>
              </th>
              <td>
                <b>{format.money(row.owed)}</b>
              </td>
              {AGES.map((age) => (
                <td key={age} className={classes(age !== 'current' && row.aged[age] > 0 && css.late)}>
                  {row.aged[age] === 0 ? '' : format.money(row.aged[age])}
                </td>
              ))}
              <td>{row.notApplied === 0 ? '' : format.money(row.notApplied)}</td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">All</th>
            <td>
              <b>{format.money(data.owed)}</b>
            </td>
            {AGES.map((age) => (
              <td key={age}>{format.money(data.sum[age])}</td>
            ))}
            <td>{format.money(data.notApplied)}</td>
          </tr>
        </tfoot>
      </table>
      {data.rows.length === 0 && <Empty>Nobody owes anything.</Empty>}
    </Sheet>
  );
}

function ToInvoice() {
  const { data, error } = useAppQuery('tickets/list-open', { limit: 500 });
  const rows = (data?.tickets ?? []).filter((one) => one.word === 'ready');
  return (
    <Sheet title="To invoice" end={rows.length > 0 ? `${rows.length}` : undefined} scroll>
      <ErrorNote error={error} />
      {data && rows.length === 0 && <Empty>Tickets that are ready and not invoiced stand here.</Empty>}
      <Rows label="To invoice">
        {rows.map((row) => (
          <Row
            key={row.ticketId}
            href={invoiceAddress(row.number)}
            title={<b>{row.customer}</b>}
            note={`${row.number}, ${row.line}`}
            end={row.word}
          />
        ))}
      </Rows>
    </Sheet>
  );
}

function OpenInvoices() {
  const format = useFormat();
  const [all, setAll] = useState(false);
  const { data, error } = useAppQuery('invoices/list-invoices', { openOnly: !all, limit: 200 }, { keep: true });
  return (
    <Sheet
      title={all ? 'All invoices' : 'Open invoices'}
      end={
        <button type="button" className={css.more} onClick={() => setAll((before) => !before)}>
          {all ? 'only open ones' : 'paid ones too'}
        </button>
      }
      scroll
    >
      <ErrorNote error={error} />
      {data?.rows.length === 0 && <Empty>{all ? 'No invoice was issued yet.' : 'No invoice is open.'}</Empty>}
      <Rows label={all ? 'All invoices' : 'Open invoices'}>
        {data?.rows.map((row) => (
          <Row
            key={row.id}
            href={invoiceAddress(row.ticketNumber)}
            title={
              <>
                <b>{row.number}</b> {row.customer}
              </>
            }
            note={`${format.day(row.issuedOn)}, ticket ${row.ticketNumber}${row.orderNumber ? `, order ${row.orderNumber}` : ''}`}
            end={format.money(row.balance)}
            endNote={row.daysLate > 0 && row.balance > 0 ? <Late>{lateWords(row.daysLate)}</Late> : row.word}
          />
        ))}
      </Rows>
    </Sheet>
  );
}

const lateWords = (days: number): string => `${days} ${days === 1 ? 'day' : 'days'} late`;
