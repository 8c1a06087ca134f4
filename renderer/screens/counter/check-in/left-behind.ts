/** Name under which this page keeps what did not arrive after a check-in: sentences, shown with the papers. */
export const leftBehind = (ticket: number): string => `left-${ticket}`;
