/** Queues, benches, tags and holds as lists. */
import type { Handlers } from '../../host/implement.ts';
import { notFound } from '../../kernel/errors.ts';
import { setUpWords } from '../compute/queue.ts';
import type { floorContract } from '../contract.ts';
import { listCentres, listHolds, listQueued, listRunning, listTags } from '../store/queue.ts';
import { setRanks } from '../store.ts';
import { centreView, holdView, queueViews, tagView } from './views.ts';

type Lists = Pick<
  Handlers<typeof floorContract>,
  'floor/list-centres' | 'floor/list-queue' | 'floor/list-tags' | 'floor/list-holds' | 'floor/reorder-queue'
>;

export const lists: Lists = {
  'floor/list-centres': { run: (_, { db }) => ({ centres: listCentres(db).map(centreView) }) },
  'floor/list-queue': {
    run({ centreId }, ctx) {
      const centre = listCentres(ctx.db).find((c) => c.id === centreId);
      if (!centre) throw notFound('floor/no-such-centre', 'This bench');
      const rows = queueViews(listQueued(ctx.db, centreId), listRunning(ctx.db, centreId), ctx);
      const of = (slot: string) => rows.filter((row) => row.slot === slot).map(({ slot: _, ...row }) => row);
      const next = of('next');
      return {
        centre: centreView(centre),
        running: of('running'),
        next: next.map((row, index) => ({ ...row, sameSetUp: row.sameSetUp && index > 0 })),
        waiting: of('waiting'),
        held: of('held'),
        orderWords: setUpWords(next.map((row) => row.setUp)),
        notApproved: centre.asked,
      };
    },
  },
  'floor/list-tags': {
    run: (_, { db, today, minute }) => ({ tags: listTags(db).map((row) => tagView(row, { day: today, minute })) }),
  },
  'floor/list-holds': { run: (_, ctx) => ({ holds: listHolds(ctx.db).map((row) => holdView(row, ctx)) }) },
  'floor/reorder-queue': {
    run({ centreId, operationIds }, { db }) {
      const centre = listCentres(db).find((c) => c.id === centreId);
      if (!centre) throw notFound('floor/no-such-centre', 'This bench');
      const touched = setRanks(db, centreId, operationIds);
      const words =
        operationIds.length === 0
          ? `${centre.name} is back in its usual order.`
          : `${centre.name} is in the order you set.`;
      return { output: { words }, activity: [{ subject: ['work_centre', centreId], words }], touched };
    },
  },
};
