/** Calls and answers first, then everything that was done, newest first; the way on stands at the foot. */
import { useMay } from '../../../../client/use-me.ts';
import { useFormat } from '../../../../client/use-shop.ts';
import { invoiceAddress, papersAddress, releaseAddress } from '../../../../kit/addresses.ts';
import { Button, GoButton } from '../../../../kit/button.tsx';
import { keysOf } from '../../../../kit/keyboard.ts';
import { Sheet, SheetFoot, SheetHead } from '../../../../kit/sheet.tsx';
import { FORMS, type PanelName, panelOf } from '../panel-names.ts';
import type { Ticket } from '../ticket-shapes.ts';
import css from './activity-pane.module.css';

export function ActivityPane({ ticket, onPanel }: { ticket: Ticket; onPanel: (name: PanelName) => void }) {
  const format = useFormat();
  const may = useMay();
  const said = [
    ...ticket.contacts.map((contact) => ({
      key: `c${contact.contactId}`,
      at: contact.at,
      when: contact.atWords,
      words: `${contact.by}, ${contact.means}${contact.person ? ` with ${contact.person}` : ''}${contact.reached ? '' : ', not reached'}: ${contact.words}`,
    })),
    ...ticket.approvals.map((approval) => ({
      key: `a${approval.approvalId}`,
      at: approval.at,
      when: format.at(approval.at),
      words: `${approval.words}${approval.takenBack ? ' Taken back later.' : ''}`,
    })),
  ].toSorted((a, b) => b.at.localeCompare(a.at));
  return (
    <Sheet
      title={said.length > 0 ? 'Calls and answers' : 'Activity'}
      end={may.has('tickets:edit') && <Button onPress={() => onPanel('call')}>Log a call</Button>}
      scroll
    >
      {said.length > 0 && (
        <>
          <ol className={css.list}>
            {said.map((one) => (
              <li key={one.key}>
                <time dateTime={one.at}>{one.when}</time>
                <span>{one.words}</span>
              </li>
            ))}
          </ol>
          <SheetHead title="Activity" />
        </>
      )}
      <ol className={css.list}>
        {ticket.activity.map((one) => (
          <li key={one.id}>
            <time dateTime={one.at}>{one.atWords}</time>
            <span>
              <b>{one.by}</b> {one.words}
            </span>
          </li>
        ))}
      </ol>
      <WayOn ticket={ticket} onPanel={onPanel} />
    </Sheet>
  );
}

/** At most two ways on and Print. Goods and invoices are other areas' pages. */
function WayOn({ ticket, onPanel }: { ticket: Ticket; onPanel: (name: PanelName) => void }) {
  const may = useMay();
  if (!may.has('tickets:edit')) {
    return (
      <SheetFoot>
        <Button keys={keysOf('print')} href={papersAddress(ticket.number)}>
          Print
        </Button>
      </SheetFoot>
    );
  }
  // Print has a button of its own beside it.
  const first = ticket.next.find((one) => one.go !== 'print');
  const pages: Readonly<Record<string, string>> = {
    release: releaseAddress(ticket.number),
    invoice: invoiceAddress(ticket.number),
    'check-in': `#/counter/check-in/enquiry/${ticket.number}`,
  };
  const page = first && pages[first.go];
  const form = panelOf(ticket);
  return (
    <SheetFoot>
      {first && page ? (
        <GoButton href={page}>{first.words}</GoButton>
      ) : (
        <GoButton keys={keysOf('go')} onPress={() => onPanel(form)}>
          {(first && FORMS[first.go] === form && first.words) || 'Log a call'}
        </GoButton>
      )}
      <Button keys={keysOf('print')} href={papersAddress(ticket.number)}>
        Print
      </Button>
    </SheetFoot>
  );
}
