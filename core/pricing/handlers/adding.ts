/** Adding operations, packages and charges to a ticket. */
import type { Ctx, Handlers } from '../../host/implement.ts';
import type { TicketId } from '../../kernel/ids.ts';
import { addCharge } from '../../lines/store/add-charges.ts';
import { type Added, addOperation, addPackage, finishJob, type Job, openJob } from '../../lines/store/add-lines.ts';
import { getTicket, refuseClosed } from '../../tickets/store.ts';
import type { pricingContract } from '../contract.ts';

type Adding = Pick<
  Handlers<typeof pricingContract>,
  'pricing/add-operations' | 'pricing/add-package-line' | 'pricing/add-charge'
>;

export const adding: Adding = {
  'pricing/add-operations': {
    run(input, ctx) {
      const job = startJob(ctx, input.ticketId);
      const added = input.operations.map((wish, index) =>
        addOperation(ctx.db, job, input.castingId, wish, `operations.${index}`),
      );
      finishJob(ctx.db, job);
      const [first, ...rest] = added.map((line) => activityOf(job, line));
      if (!first) throw new RangeError('no operation was added');
      return {
        output: { lines: added.map(outputOf) },
        activity: [first, ...rest],
        touched: [input.ticketId],
      };
    },
  },
  'pricing/add-package-line': {
    run(input, ctx) {
      const job = startJob(ctx, input.ticketId);
      const added = addPackage(ctx.db, job, input.castings, input, 'packageId');
      finishJob(ctx.db, job);
      return { output: outputOf(added), activity: [activityOf(job, added)], touched: [input.ticketId] };
    },
  },
  'pricing/add-charge': {
    run(input, ctx) {
      const job = startJob(ctx, input.ticketId);
      const added = addCharge(ctx.db, job, input.castingId, input.charge);
      return { output: outputOf(added), activity: [activityOf(job, added)], touched: [input.ticketId] };
    },
  },
};

function startJob(ctx: Ctx, ticketId: TicketId): Job {
  refuseClosed(getTicket(ctx.db, ticketId));
  return openJob(ctx.db, ticketId);
}

const outputOf = ({ lineId, operationIds, amount, working }: Added) => ({ lineId, operationIds, amount, working });

const activityOf = (job: Job, { lineId, words, amount, working }: Added) => ({
  subject: ['work_line', lineId] as const,
  words: `Added ${words} to ticket ${job.ticket.number}`,
  ticket: job.ticket.id,
  after: { words, amount, working },
});
