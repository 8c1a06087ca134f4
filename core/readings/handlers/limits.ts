/** Limits: added with their source, checked by a second person, chosen by a lead. */
import type { Ctx, Handlers } from '../../host/implement.ts';
import { personOf } from '../../host/implement.ts';
import { AppError, badField, notFound, ruleBroken } from '../../kernel/errors.ts';
import type { LimitId } from '../../kernel/ids.ts';
import { unitShape } from '../../kernel/measure-units.ts';
import { openBench } from '../compute/bench.ts';
import { limitText, showLimit } from '../compute/limit-words.ts';
import { listInForce, NOBODY } from '../compute/limits-in-force.ts';
import type { Limit } from '../compute/model.ts';
import { type LimitTyped, readLimit } from '../compute/typed-limit.ts';
import type { readingsContract } from '../contract.ts';
import { readFacts } from '../store/facts.ts';
import { findQuantityRow } from '../store/known.ts';
import * as store from '../store/limits.ts';

type Typed = LimitTyped &
  Readonly<{
    quantity: string;
    stage: Limit['stage'];
    side: Limit['side'];
    sourceTag: string | null;
    sourceWords: string;
  }>;
type Place = Pick<
  store.NewLimit,
  'forWhat' | 'castingType' | 'engineType' | 'ticket' | 'casting' | 'material' | 'from' | 'replaces'
>;

/** @throws AppError `invalid-input` with a sentence by field. */
function addLimit(db: Ctx['db'], typed: Typed, place: Place) {
  const quantity = findQuantityRow(db, typed.quantity);
  if (!quantity) throw badField('limits/no-such-quantity', 'quantity', 'This quantity is not in the catalogue.');
  if (unitShape(typed.unit).family !== quantity.family) {
    throw badField('limits/wrong-unit', 'unit', `${quantity.words} is not measured in ${typed.unit}.`);
  }
  const { low, high, target, faults, warnings } = readLimit(typed);
  const [field, message] = Object.entries(faults)[0] ?? [];
  if (field !== undefined && message !== undefined) {
    throw badField('limits/bad-figure', field, message, { fields: faults as Record<string, string> });
  }
  const limit = store.insertLimit(db, {
    ...place,
    quantity: quantity.id,
    stage: typed.stage,
    side: typed.side,
    low,
    high,
    target,
    unit: typed.unit,
    typedLow: typed.low,
    typedHigh: typed.high,
    typedTarget: typed.target,
    secondUnitText: typed.secondUnitText,
    sourceTag: typed.sourceTag,
    sourceWords: typed.sourceWords,
  });
  return { limit, warnings, words: `limit of ${quantity.words} from ${typed.sourceWords}` };
}

function getLimit(db: Ctx['db'], id: LimitId) {
  const limit = store.findLimit(db, id);
  if (!limit) throw notFound('limits/not-here', 'This limit');
  return limit;
}

/** What a limit of the catalogue must name, by whom it is for. */
const NEEDS = {
  casting_type: ['castingType', 'Choose the casting type.'],
  engine_type: ['engineType', 'Choose the engine.'],
  customer_instruction: ['ticket', 'Choose the ticket the customer wrote it for.'],
} as const;

export const limitHandlers: Pick<
  Handlers<typeof readingsContract>,
  | 'limits/add-limit'
  | 'limits/add-job-limit'
  | 'limits/list-missing'
  | 'limits/list-resolved'
  | 'limits/list-catalogue'
  | 'limits/check-limit'
  | 'limits/choose-limit'
> = {
  'limits/add-limit': {
    run(input, { db, today }) {
      const need = input.for === 'shop' ? null : NEEDS[input.for];
      if (need && input[need[0]] === null) throw badField('limits/for-whom', need[0], need[1]);
      const { limit, warnings, words } = addLimit(db, input, {
        forWhat: input.for,
        castingType: input.for === 'casting_type' ? input.castingType : null,
        engineType: input.for === 'engine_type' ? input.engineType : null,
        ticket: input.for === 'customer_instruction' ? input.ticket : null,
        casting: input.for === 'customer_instruction' ? input.casting : null,
        material: input.material,
        from: input.from ?? today,
        replaces: input.replaces,
      });
      return {
        output: { limit, warnings },
        activity: [{ subject: ['limit_row', limit], ticket: input.ticket, words: `Added ${words}` }],
        touched: input.ticket === null ? [] : [input.ticket],
      };
    },
  },
  'limits/add-job-limit': {
    run(input, { db, today }) {
      const { ticket } = readFacts(db, input.casting, today).casting;
      const { limit, warnings, words } = addLimit(db, input, {
        forWhat: input.customerWrote ? 'customer_instruction' : 'this_job',
        castingType: null,
        engineType: null,
        ticket,
        casting: input.casting,
        material: null,
        from: today,
        replaces: null,
      });
      return {
        output: { limit, warnings },
        activity: [{ subject: ['limit_row', limit], ticket, words: `Typed a ${words}, for this job only` }],
        touched: [ticket],
      };
    },
  },
  'limits/list-missing': {
    run({ limits }, { db }) {
      const keyOf = ({ quantity, stage, side }: (typeof limits)[number]) => `${quantity}|${stage}|${side}`;
      const there = new Set(store.listShopPlaces(db).map(keyOf));
      return limits.filter((limit) => !there.has(keyOf(limit)));
    },
  },
  'limits/list-resolved': {
    run({ casting }, { db, today }) {
      const { facts, ...bench } = openBench(readFacts(db, casting, today));
      const people = store.readLimitPeople(
        db,
        facts.limits.map((limit) => limit.id),
      );
      return listInForce(facts, bench.limit, (id) => people.get(id) ?? NOBODY);
    },
  },
  'limits/list-catalogue': {
    run({ castingType }, { db, today }) {
      return store.listCatalogueLimits(db, castingType, today).map(({ words, ...limit }) => ({
        ...showLimit({ limit, setAside: null, chosen: null }, limit.side),
        quantity: limit.quantity,
        words,
        stage: limit.stage,
      }));
    },
  },
  'limits/check-limit': {
    run({ limit: id, words }, ctx) {
      const limit = getLimit(ctx.db, id);
      if (limit.typedBy !== null && limit.typedBy === personOf(ctx)) {
        throw new AppError(
          'rule-broken',
          'limits/same-person',
          'You typed this limit. It is used as it stands; another person compares it with its source.',
        );
      }
      store.insertCheck(ctx.db, id, words);
      return {
        output: { limit: id },
        activity: [{ subject: ['limit_row', id], words: `Checked ${limit.quantity} ${limitText(limit)}` }],
      };
    },
  },
  'limits/choose-limit': {
    run({ casting, limit: id, why }, { db, today }) {
      const bench = openBench(readFacts(db, casting, today));
      const limit = bench.facts.limits.find((it) => it.id === id);
      const quantity = limit && findQuantityRow(db, limit.quantity);
      if (!limit || !quantity) {
        throw ruleBroken('limits/not-for-this', 'This limit is not one for this casting. Choose one from its list.');
      }
      const { ticket } = bench.facts.casting;
      store.insertChoice(db, { casting, ticket, quantity: quantity.id, limit, reason: why });
      return {
        output: { limit: id },
        activity: [
          {
            subject: ['casting', casting],
            ticket,
            words: `Chose ${limitText(limit)} for ${quantity.words} (${limit.sourceWords}): ${why}`,
          },
        ],
        touched: [ticket],
      };
    },
  },
};
