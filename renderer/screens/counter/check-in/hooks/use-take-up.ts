/** Starting the page from something: a check-in that was set aside, or a customer found on the telephone. */
import { useEffect, useRef } from 'react';
import type { App } from '#core/app-contract.ts';
import type { OutputOf } from '#core/kernel/contract.ts';
import type { RequestRefused } from '../../../../client/request-refused.ts';
import { useAppQuery } from '../../../../client/use-app.ts';
import { type CheckInTyped, EMPTY_CHECK_IN, isCheckIn } from '../typed.ts';
import type { SetTyped } from './use-check-in.ts';

export type From = Readonly<{
  customer?: number | undefined;
  draft?: number | undefined;
  /** Number of an enquiry whose castings are here now. */
  enquiry?: number | undefined;
}>;

/** What stands in the way of taking up: an answer on its way, or its refusal. */
export function useTakeUp(
  typed: CheckInTyped,
  set: SetTyped,
  { customer, draft, enquiry }: From,
): Readonly<{ waiting: boolean; error: RequestRefused | null }> {
  // Once taken up, the page is the person's own: a later answer must not write over what is typed since.
  const taken = useRef<string | null>(null);
  const wanted = draft !== undefined && draft !== typed.draft && taken.current !== `draft ${draft}`;
  const drafts = useAppQuery('devices/list-drafts', { kind: 'check_in' }, { enabled: wanted });
  const forCustomer = customer !== undefined && customer !== typed.customer.id && taken.current !== `for ${customer}`;
  const page = useAppQuery('customers/get-customer', { customerId: customer ?? 1 }, { enabled: forCustomer });

  const forEnquiry = enquiry !== undefined && taken.current !== `enquiry ${enquiry}`;
  const asked = useAppQuery('tickets/get-ticket', { number: enquiry ?? 1 }, { enabled: forEnquiry });

  useEffect(() => {
    if (!wanted || !drafts.data) return;
    taken.current = `draft ${draft}`;
    const body = readBody(drafts.data.drafts.find((one) => one.draft === draft)?.body);
    if (body) set(() => ({ ...body, draft }));
  }, [wanted, drafts.data, draft, set]);
  useEffect(() => {
    if (!forCustomer || !page.data) return;
    taken.current = `for ${customer}`;
    const person = page.data.persons[0];
    const { name, kind } = page.data;
    set(() => ({
      ...EMPTY_CHECK_IN,
      customer: {
        id: customer,
        name,
        phone: person?.contacts.find((contact) => contact.kind === 'phone')?.value ?? '',
        kind,
        personId: person?.personId ?? null,
        said: person?.name ?? '',
        mayApprove: person?.mayApprove ?? false,
      },
    }));
  }, [forCustomer, page.data, customer, set]);
  useEffect(() => {
    if (!forEnquiry || !asked.data) return;
    taken.current = `enquiry ${enquiry}`;
    const { data } = asked;
    set((before) => (before.enquiry === data.ticketId ? before : fromEnquiry(data)));
  }, [forEnquiry, asked, enquiry, set]);
  return {
    waiting: (wanted && drafts.isPending) || (forCustomer && page.isPending) || (forEnquiry && asked.isPending),
    error: (wanted ? drafts.error : null) ?? (forCustomer ? page.error : null) ?? (forEnquiry ? asked.error : null),
  };
}

/** What an enquiry already knows: who asks, what they said and their order number. */
const fromEnquiry = (ticket: OutputOf<App['tickets/get-ticket']>): CheckInTyped => ({
  ...EMPTY_CHECK_IN,
  enquiry: ticket.ticketId,
  customer: {
    ...EMPTY_CHECK_IN.customer,
    id: ticket.customer.customerId,
    name: ticket.customer.name,
    phone: ticket.customer.phone ?? '',
    personId: ticket.customer.person?.personId ?? null,
    said: ticket.customer.person?.name ?? '',
  },
  orderNumber: ticket.fields.orderNumber ?? '',
  history: ticket.fields.historyWords ?? '',
  use: ticket.fields.useWords ?? '',
});

function readBody(text: string | undefined): CheckInTyped | null {
  if (text === undefined) return null;
  try {
    const value: unknown = JSON.parse(text);
    return isCheckIn(value) ? value : null;
  } catch {
    return null;
  }
}
