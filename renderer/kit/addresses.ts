/** Addresses of pages that several areas lead to, written once. Numbers are those people say: ticket, tag, question. */

export const CHECK_IN = '#/counter/check-in';
export const QUOTE = '#/counter/quote';
export const QUICK = '#/counter/quick';
/** Checking in for a customer we know. */
export const checkInFor = (customer: number): string => `#/counter/check-in/for/${customer}`;
export const ticketAddress = (number: number): string => `#/counter/ticket/${number}`;
/** A question to the customer: added work 2 of ticket 10482. */
export const askedAddress = (ticket: number, question: number): string =>
  `#/counter/ticket/${ticket}/added/${question}`;
/** Handing over. */
export const releaseAddress = (number: number): string => `#/racks/release/${number}`;
/** A casting at the bench. */
export const benchAddress = (tag: number): string => `#/bench/tag/${tag}`;
/** Writing the invoice of a ticket. */
export const invoiceAddress = (number: number): string => `#/books/invoice/${number}`;
/** The papers of a ticket. */
export const papersAddress = (number: number): string => `#/counter/ticket/${number}/papers`;
/** Making a question to the customer about a casting of a ticket. */
export const askAddress = (number: number, tag: number): string => `#/counter/ticket/${number}/ask/${tag}`;
export const customerAddress = (customer: number): string => `#/counter/customer/${customer}`;
