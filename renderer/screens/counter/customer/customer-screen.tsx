/** A customer: who they are, who may say yes and collect, what they agreed for every job, and their open tickets. */
import { useState } from 'react';
import { useAppQuery } from '../../../client/use-app.ts';
import { useMay } from '../../../client/use-me.ts';
import { useFormat } from '../../../client/use-shop.ts';
import { checkInFor, ticketAddress } from '../../../kit/addresses.ts';
import { Button, GoButton } from '../../../kit/button.tsx';
import { Notice } from '../../../kit/notice.tsx';
import { PageRefused, Waiting } from '../../../kit/pane.tsx';
import { Row, Rows } from '../../../kit/rows.tsx';
import { Empty, PageName, Sheet, SheetBody, SheetFoot, TitleBlock, TitleCell } from '../../../kit/sheet.tsx';
import { AccountForm } from './account-form.tsx';
import { CustomerForm } from './customer-form.tsx';
import css from './customer-screen.module.css';
import type { Customer, CustomerPerson } from './customer-shapes.ts';
import { PersonForm } from './person-form.tsx';

/** What is open at the right: a form, a person's form, or the open tickets. */
type Open = 'customer' | 'account' | 'new person' | number | null;

export function CustomerScreen({ id }: { id: number }) {
  const { data: customer, error, isPending, refetch } = useAppQuery('customers/get-customer', { customerId: id });
  const [open, setOpen] = useState<Open>(null);
  if (isPending) return <Waiting />;
  if (error) return <PageRefused error={error} onAgain={() => void refetch()} />;
  return (
    <div className={css.page}>
      <PageName>{customer.name}</PageName>
      <CustomerHead customer={customer} />
      <div className={css.columns}>
        <People customer={customer} open={open} onOpen={setOpen} />
        <About customer={customer} onOpen={setOpen} />
        <Right customer={customer} open={open} onDone={() => setOpen(null)} />
      </div>
    </div>
  );
}

function CustomerHead({ customer }: { customer: Customer }) {
  const account = useAppQuery('customers/get-account', { customerId: customer.customerId });
  const format = useFormat();
  const limit = customer.creditLimit === null ? 'no limit' : `limit ${format.money(customer.creditLimit)}`;
  return (
    <TitleBlock columns="minmax(0, 1.6fr) minmax(0, 1fr) auto auto auto">
      <TitleCell label="Customer" note={customer.trade ?? customer.kind}>
        {customer.name}
      </TitleCell>
      <TitleCell label="Prints as">{customer.printName}</TitleCell>
      <TitleCell label="Terms" note={limit}>
        {customer.terms.words}
      </TitleCell>
      <TitleCell label="Owes">{account.data ? format.money(account.data.owed) : ''}</TitleCell>
      <TitleCell label="Order number">{customer.needsOrderNumber ? 'needed' : 'not needed'}</TitleCell>
    </TitleBlock>
  );
}

/** `may approve up to 600.00, may collect. 555-0142`. */
function personWords(person: CustomerPerson): string {
  const collects = person.mayCollect ? ', may collect' : '';
  return `${person.approveWords}${collects}. ${person.contacts.map((contact) => contact.value).join(', ')}`;
}

function People({ customer, open, onOpen }: { customer: Customer; open: Open; onOpen: (open: Open) => void }) {
  const edits = useMay().has('customers:edit');
  return (
    <Sheet title="Who speaks for them" note="may say yes, may collect" scroll>
      {customer.persons.length === 0 && <Empty>Nobody is named yet.</Empty>}
      <Rows label="People">
        {customer.persons.map((person) => (
          <Row
            key={person.personId}
            title={
              <>
                <b>{person.name}</b>
                {person.roleWords && `, ${person.roleWords}`}
              </>
            }
            note={personWords(person)}
            end={edits && 'change'}
            onOpen={edits ? () => onOpen(person.personId) : undefined}
            selected={open === person.personId}
          />
        ))}
      </Rows>
      {edits && (
        <SheetFoot>
          <Button onPress={() => onOpen('new person')}>Another person</Button>
        </SheetFoot>
      )}
    </Sheet>
  );
}

function About({ customer, onOpen }: { customer: Customer; onOpen: (open: Open) => void }) {
  const may = useMay();
  const facts: readonly (readonly [label: string, words: string | null])[] = [
    ['Bills to', customer.billingAddress],
    ['Delivered to', customer.deliveryAddress],
    ['Route', customer.route],
    ['Notes', customer.notes],
    ['Standing instruction', customer.standingInstruction],
    ...customer.exemptions.map((exemption) => ['Tax', exemption.sentence] as const),
  ];
  const told = facts.filter(([, words]) => words !== null && words !== '');
  return (
    <Sheet title="About them" scroll>
      <SheetBody>
        {customer.stopWords && <Notice kind="ask">{customer.stopWords}</Notice>}
        {told.length === 0 && <p>Nothing more is known of them.</p>}
        {told.map(([label, words]) => (
          <p key={`${label}-${words}`}>
            <b>{label}:</b> {words}
          </p>
        ))}
      </SheetBody>
      <SheetFoot>
        {may.has('customers:edit') && <Button onPress={() => onOpen('customer')}>Change</Button>}
        {may.has('accounts:edit') && <Button onPress={() => onOpen('account')}>Terms and stop</Button>}
      </SheetFoot>
    </Sheet>
  );
}

function Right({ customer, open, onDone }: { customer: Customer; open: Open; onDone: () => void }) {
  if (open === 'customer') return <CustomerForm customer={customer} onDone={onDone} />;
  if (open === 'account') return <AccountForm customer={customer} onDone={onDone} />;
  if (open === null) return <OpenTickets customer={customer} />;
  const person = customer.persons.find((one) => one.personId === open);
  return <PersonForm key={open} customer={customer} person={person} onDone={onDone} />;
}

function OpenTickets({ customer }: { customer: Customer }) {
  const may = useMay();
  const format = useFormat();
  return (
    <Sheet title="Open tickets" end={`${customer.openTickets.length}`} scroll>
      {customer.openTickets.length === 0 && <Empty>No ticket of theirs is open.</Empty>}
      <Rows label="Open tickets">
        {customer.openTickets.map((ticket) => (
          <Row
            key={ticket.ticketId}
            href={ticketAddress(ticket.number)}
            title={<b>{ticket.number}</b>}
            note={ticket.engineWords}
            end={ticket.arrivedAt ? format.at(ticket.arrivedAt) : 'enquiry'}
          />
        ))}
      </Rows>
      {may.has('tickets:edit') && (
        <SheetFoot>
          <GoButton href={checkInFor(customer.customerId)}>Check in castings for them</GoButton>
        </SheetFoot>
      )}
    </Sheet>
  );
}
