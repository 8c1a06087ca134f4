/** The whole price of a ticket as it stands. */
import type { Handlers } from '../../host/implement.ts';
import { authorisedWords } from '../../lines/compute/authorised.ts';
import { agreedSoFar, wholeBill } from '../../lines/compute/ticket-bill.ts';
import { listOptions } from '../../lines/store/answers.ts';
import { billView, listLineViews } from '../../lines/store/line-views.ts';
import { readPriceBook } from '../../lines/store/price-book.ts';
import { getTicketForPrice, readTicketMoney } from '../../lines/store/ticket-money.ts';
import type { pricingContract } from '../contract.ts';
import { listEstimateViews } from './estimates.ts';

export const sheet: Pick<Handlers<typeof pricingContract>, 'pricing/get-sheet'> = {
  'pricing/get-sheet': {
    run({ ticketId }, ctx) {
      const { db, today } = ctx;
      const ticket = getTicketForPrice(db, ticketId);
      const money = readTicketMoney(db, ticketId, today);
      const { authorised, exposure, left } = agreedSoFar(money);
      const labels = new Map(
        listOptions(db, ticketId).map((o) => [o.id as number, `A${o.added_work_number} ${o.letter}`]),
      );
      return {
        ticketId,
        ticketNumber: ticket.number,
        ticketVersion: ticket.version,
        priceDay: ticket.priceDay,
        lines: listLineViews(db, ticketId, money, readPriceBook(db)),
        bill: billView(wholeBill(money)),
        estimates: listEstimateViews(ctx, ticketId, money),
        authorised: {
          amount: authorised.amount,
          taxIn: authorised.taxIn,
          ceiling: authorised.ceiling,
          words: authorisedWords(authorised, (option) => labels.get(option) ?? 'added work'),
          exposure,
          left,
          overrunBp: money.overrun,
        },
        rush: ticket.rush,
      };
    },
  },
};
