/** Wash loads: castings that go through a machine together. */
import { metalClassOf, metalForbids } from '../../catalogue/compute/fit.ts';
import { type Ctx, type Handlers, NotedRefusal, personOf } from '../../host/implement.ts';
import { badField, ruleBroken } from '../../kernel/errors.ts';
import type { OperationId } from '../../kernel/ids.ts';
import { capital } from '../compute/bench-words.ts';
import type { floorContract } from '../contract.ts';
import * as store from '../store/wash.ts';
import { insertIncident } from '../store.ts';
import { readActing } from './acting.ts';
import { who } from './views.ts';
import { finish, type Step, start } from './work.ts';

type Wash = Pick<
  Handlers<typeof floorContract>,
  'floor/list-wash-loads' | 'floor/start-wash-load' | 'floor/end-wash-load'
>;
type Kind = NonNullable<ReturnType<typeof store.findWash>>;

export const wash: Wash = {
  'floor/list-wash-loads': {
    run: (_, { db }) => ({
      loads: store.listOpenLoads(db).map((load) => ({
        id: load.id,
        wash: capital(load.shop_words ?? load.method),
        machine: load.machine,
        startedAt: load.started_at,
        by: who(load.created_by, load.initials, load.name),
        tags: load.tags,
      })),
    }),
  },
  'floor/start-wash-load': {
    run({ wash: code, machine, tags }, ctx) {
      const kind = store.findWash(ctx.db, code);
      if (!kind) throw badField('floor/no-such-wash', 'wash', 'This wash is not in the catalogue. Choose another.');
      const operations = [...new Set(tags)].map((tag, index) => washOf(ctx, kind, tag, index));
      const steps = operations.map((id) => startUnlessBegun(ctx, id));
      const load = store.insertLoad(ctx.db, kind.code, machine, ctx.now);
      for (const { acting } of steps) {
        const item = { ticket: acting.ticket, operation: acting.operation.id, confirmedBy: personOf(ctx) };
        store.insertLoadItem(ctx.db, load, item);
      }
      const said = `${capital(kind.shop_words)} started with ${tagsOf(steps)}.`;
      return {
        output: { words: said, washLoadId: load, warnings: warningsOf(steps) },
        activity: [{ subject: ['wash_load', load], words: said, ticket: steps[0]?.acting.ticket }],
        touched: steps.map((step) => step.acting.ticket),
      };
    },
  },
  'floor/end-wash-load': {
    run({ washLoadId }, ctx) {
      const load = store.getLoad(ctx.db, washLoadId);
      if (load.ended_at !== null) throw ruleBroken('floor/load-out', 'This load is out already.');
      const steps = store.listLoadOperations(ctx.db, washLoadId).flatMap((id) => finishUnlessDone(ctx, id));
      store.endLoad(ctx.db, washLoadId, ctx.now);
      const said = steps.length === 0 ? 'The load is out.' : `The load is out: ${tagsOf(steps)}.`;
      return {
        output: { words: said, warnings: warningsOf(steps) },
        activity: [{ subject: ['wash_load', washLoadId], words: said, ticket: steps[0]?.acting.ticket }],
        touched: steps.map((step) => step.acting.ticket),
      };
    },
  },
};

/** The open wash of a tag. Its metal is looked at before its ticket: a wrong one never gets as far as the machine. */
function washOf(ctx: Ctx, kind: Kind, tag: number, index: number): OperationId {
  const casting = store.findTagged(ctx.db, tag);
  if (!casting) throw badField('floor/no-such-tag', `tags.${index}`, `Tag ${tag} is not in the shop. Read it again.`);
  const forbidden = metalForbids(kind, metalClassOf(casting.material));
  if (forbidden !== undefined) {
    const words = `${kind.shop_words} was loaded with ${tag}: ${forbidden}`;
    throw new NotedRefusal(ruleBroken('floor/metal', `${tag}: ${forbidden}`, { facts: { tag } }), ({ db }) => {
      const id = insertIncident(db, { casting_id: casting.id, ticket_id: casting.ticket_id, kind: 'near_miss', words });
      const line = { subject: ['incident', id] as const, ticket: casting.ticket_id, words: `Near miss: ${words}` };
      return { output: null, activity: [line], touched: [casting.ticket_id] };
    });
  }
  const operation = store.findOpenWash(ctx.db, casting.id, kind.id);
  if (operation !== undefined) return operation;
  throw badField(
    'floor/no-such-wash-on-ticket',
    `tags.${index}`,
    `${tag} has no ${kind.shop_words} to be done. Look at its page.`,
  );
}

function startUnlessBegun(ctx: Ctx, id: OperationId): Step {
  const acting = readActing(ctx.db, id);
  const { operation, state } = acting;
  if (state.running.length === 0) return start(ctx, id);
  return { acting, soft: [], warnings: [], version: operation.version, word: state.word };
}

/** Somebody may have closed it at its own page meanwhile. */
function finishUnlessDone(ctx: Ctx, id: OperationId): Step[] {
  const { operation, state } = readActing(ctx.db, id);
  return operation.finishedAt !== null || !state.live ? [] : [finish(ctx, id, operation.version)];
}

const tagsOf = (steps: readonly Step[]): string => steps.map((step) => step.acting.casting.tag).join(', ');
const warningsOf = (steps: readonly Step[]): string[] => [...new Set(steps.flatMap((step) => step.warnings))];
