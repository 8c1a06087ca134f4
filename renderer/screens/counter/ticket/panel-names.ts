/** What may be open at the right of a ticket: one form at a time, in place of the panes, never over them. */

export type PanelName =
  | 'answer'
  | 'call'
  | 'ceiling'
  | 'estimate'
  | 'promise'
  | 'sign'
  | 'fields'
  | 'add-work'
  | 'hold'
  | 'part'
  | 'photos'
  | 'account-yes'
  | 'decline';

type Next = Readonly<{ next: readonly Readonly<{ go: string }>[] }>;

/** The form the go button opens: what the ticket asks for most, else a call. Goods and invoices have pages of their own. */
export function panelOf(ticket: Next): PanelName {
  const first = ticket.next.find((one) => one.go in FORMS);
  return (first && FORMS[first.go]) || 'call';
}

/** Forms by what the ticket page offers next. */
export const FORMS: Readonly<Record<string, PanelName>> = {
  answer: 'answer',
  estimate: 'estimate',
  promise: 'promise',
  tell: 'call',
  sign: 'sign',
};
