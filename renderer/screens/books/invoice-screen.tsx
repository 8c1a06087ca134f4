/** The bill of a ticket: what it would say, issuing it, what was issued, and the money for it. */
import { useState } from 'react';
import { useAppQuery } from '../../client/use-app.ts';
import { useFormat } from '../../client/use-shop.ts';
import { ticketAddress } from '../../kit/addresses.ts';
import { Button } from '../../kit/button.tsx';
import { ErrorNote } from '../../kit/notice.tsx';
import { Waiting } from '../../kit/pane.tsx';
import { Empty, PageName, Sheet, SheetFoot } from '../../kit/sheet.tsx';
import css from './invoice-screen.module.css';
import type { TicketOf } from './invoice-titles.ts';
import { IssuedPane } from './parts/issued-pane.tsx';
import { PreviewPane } from './parts/preview-pane.tsx';

export function InvoiceScreen({ number }: { number: number }) {
  const ticket = useAppQuery('tickets/get-ticket', { number });
  const id = ticket.data?.ticketId;
  const preview = useAppQuery('invoices/get-preview', { ticketId: id ?? 1 }, { enabled: id !== undefined, ticket: id });
  // `new` is the bill that would be issued now.
  const [chosen, setChosen] = useState<number | 'new' | null>(null);
  if (ticket.error) return <ErrorNote error={ticket.error} acts={<Button href="#/books">To the books</Button>} />;
  if (!ticket.data || preview.isPending) return <Waiting />;
  const { invoices } = ticket.data.money;
  const lines = preview.data?.lines ?? [];
  const usual = lines.length > 0 || invoices.length === 0 ? 'new' : (invoices.at(-1)?.invoiceId ?? 'new');
  const shown = chosen ?? usual;
  const switcher = <Switcher ticket={ticket.data} shown={shown} unbilled={lines.length > 0} onChoose={setChosen} />;
  return (
    <div className={css.page}>
      {shown !== 'new' && <IssuedPane key={shown} id={shown} ticket={ticket.data} switcher={switcher} />}
      {shown === 'new' && preview.error && <ErrorNote error={preview.error} />}
      {shown === 'new' && preview.data && lines.length === 0 && (
        <Sheet title={`Ticket ${number}`} note={ticket.data.customer.name} end={switcher}>
          <PageName>{`Bill of ticket ${number}`}</PageName>
          <Empty>Nothing is left to invoice on this ticket.</Empty>
          <SheetFoot>
            <Button href={ticketAddress(number)}>To the ticket</Button>
          </SheetFoot>
        </Sheet>
      )}
      {shown === 'new' && preview.data && lines.length > 0 && (
        <PreviewPane
          preview={preview.data}
          ticket={ticket.data}
          switcher={switcher}
          onIssued={(invoiceId) => setChosen(invoiceId)}
        />
      )}
    </div>
  );
}

/** The bills of this ticket beside each other, when there is more than one to look at. */
function Switcher({
  ticket,
  shown,
  unbilled,
  onChoose,
}: {
  ticket: TicketOf;
  shown: number | 'new';
  unbilled: boolean;
  onChoose: (shown: number | 'new') => void;
}) {
  const format = useFormat();
  const { invoices } = ticket.money;
  if (invoices.length + Number(unbilled) < 2) return null;
  return (
    <span className={css.switcher}>
      {invoices.map((one) => (
        <Button
          key={one.invoiceId}
          pressed={one.invoiceId === shown}
          onPress={() => onChoose(one.invoiceId)}
          label={`Invoice ${one.number}, ${format.money(one.total)}`}
        >
          {one.number}
        </Button>
      ))}
      {unbilled && (
        <Button pressed={shown === 'new'} onPress={() => onChoose('new')}>
          Not invoiced
        </Button>
      )}
    </span>
  );
}
