/** The title block of a ticket; the customer's and the shop's words about it open beside it. */
import { useMay } from '../../../../client/use-me.ts';
import { customerAddress } from '../../../../kit/addresses.ts';
import { Button } from '../../../../kit/button.tsx';
import { TitleBlock, TitleCell } from '../../../../kit/sheet.tsx';
import type { PanelName } from '../panel-names.ts';
import type { Ticket } from '../ticket-shapes.ts';
import css from './ticket-head.module.css';

export function TicketHead({ ticket, onPanel }: { ticket: Ticket; onPanel: (name: PanelName) => void }) {
  const may = useMay();
  const { customer, fields } = ticket;
  const note = [customer.words, customer.person?.name, customer.phone].filter(Boolean).join(', ');
  return (
    <div className={css.head}>
      <div className={css.top}>
        <TitleBlock columns="auto minmax(0, 1.6fr) auto minmax(0, 1fr) auto auto">
          <TitleCell label="Ticket" big>
            {ticket.number}
          </TitleCell>
          <TitleCell label="Customer" note={note}>
            <a href={customerAddress(customer.customerId)}>{customer.name}</a>
          </TitleCell>
          <TitleCell label="Their order no.">
            {fields.orderNumber ?? (customer.needsOrderNumber ? <b className={css.wanted}>wanted</b> : 'none')}
          </TitleCell>
          <TitleCell label="Engine">{fields.engineWords ?? ticket.castings[0]?.engineWords ?? 'not named'}</TitleCell>
          <TitleCell label={ticket.arrivedAt ? 'Taken in' : 'Enquiry'} note={ticket.takenInBy?.initials}>
            {ticket.arrivedWords}
          </TitleCell>
          <TitleCell label="Promise">{ticket.promise?.words ?? 'none yet'}</TitleCell>
        </TitleBlock>
        {may.has('tickets:edit') && <Button onPress={() => onPanel('fields')}>What they said</Button>}
      </div>
      {customer.stopWords && <p className={css.stop}>{customer.stopWords}</p>}
      {customer.standingInstruction && <p>Standing instruction, signed: {customer.standingInstruction}</p>}
    </div>
  );
}
