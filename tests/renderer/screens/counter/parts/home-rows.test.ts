import { describe, expect, it } from 'vitest';
import { hoursShown } from '#renderer/screens/counter/parts/day-of-promises.tsx';
import { addressOf, type HomeRow } from '#renderer/screens/counter/parts/home-rows.tsx';

const row = (target: object, ticketNumber: number | null = 20_455) =>
  ({
    ticketNumber,
    target: { screen: 'ticket', ticketId: 1, customerId: 7, focus: null, ...target },
  }) as unknown as HomeRow;

describe('addressOf', () => {
  it.each([
    ['the ticket', row({}), '#/counter/ticket/20455'],
    ['the question that waits', row({ screen: 'added-work', focus: 2 }), '#/counter/ticket/20455/added/2'],
    ['handing over', row({ screen: 'release' }), '#/racks/release/20455'],
    ['the customer, without a ticket', row({ screen: 'customer' }, null), '#/counter/customer/7'],
    ['an estimate, on its ticket', row({ screen: 'estimate', focus: 3 }), '#/counter/ticket/20455'],
  ])('leads to %s', (_, one, address) => {
    expect(addressOf(one)).toBe(address);
  });

  it('leads nowhere when there is nothing to open', () => {
    expect(addressOf(row({}, null))).toBeUndefined();
  });
});

describe('hoursShown', () => {
  it('shows half an hour before opening to an hour after closing, within the day', () => {
    expect(hoursShown({ from: 450, until: 1020 })).toEqual({ from: 420, to: 1080 });
    expect(hoursShown({ from: 10, until: 1430 })).toEqual({ from: 0, to: 1440 });
    expect(hoursShown(null)).toEqual({ from: 450, to: 1080 });
  });
});
