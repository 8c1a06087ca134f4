/** What the catalogue's requests do. */
import { implement } from '../host/implement.ts';
import { badField, notFound } from '../kernel/errors.ts';
import { spotsFromCounts } from './compute/spots.ts';
import { catalogueContract } from './contract.ts';
import { bringIn, isBroughtIn } from './store/bring-in.ts';
import * as castings from './store/castings.ts';
import { findIdByCode, getIdByCode } from './store/codes.ts';
import { listKindsFor } from './store/kinds-for.ts';
import { bringInBenchTables } from './store/measuring.ts';
import * as operations from './store/operations.ts';

const sum = (numbers: Readonly<Record<string, number | undefined>>): string =>
  Object.entries(numbers)
    .filter(([, n]) => (n ?? 0) > 0)
    .map(([name, n]) => `${n} ${name.replaceAll('_', ' ')}`)
    .join(', ');

export const catalogue = implement(catalogueContract, {
  'operations/bring-in': {
    run(input, { db }) {
      const tally = bringIn(db, input);
      if (input.quantities || input.operations.length > 0) bringInBenchTables(db);
      if (input.quantities) castings.bringInPorts(db);
      return {
        output: tally,
        activity: [
          {
            subject: ['operation_kind', 1],
            words: `Brought ${tally.added} entries into the catalogue; ${tally.kept} were there`,
          },
        ],
      };
    },
  },
  'operations/is-brought-in': { run: (input, { db }) => ({ whole: isBroughtIn(db, input) }) },
  'operations/list-kinds': { run: (input, { db }) => ({ kinds: listKindsFor(db, input.for) }) },
  'operations/list-packages': {
    run({ castingKind }, { db }) {
      const packages = operations
        .listPackages(db)
        .filter((p) => castingKind === undefined || p.castingKind === castingKind);
      return {
        packages: packages.map(({ taxClass: _, items, ...p }) => ({
          ...p,
          items: items.map(({ operation, words, metal }) => ({ operation, words, metal })),
        })),
      };
    },
  },
  'operations/list-casting-types': {
    run: ({ privateToo }, { db }) => ({ types: castings.listCastingTypes(db, privateToo) }),
  },
  'operations/get-casting-type': {
    run: ({ castingType }, { db }) => ({
      ...castings.getCastingType(db, castingType),
      numbering: castings.findNumbering(db, castingType),
      spots: castings.listSpots(db, castingType),
      arrival: castings.listArrival(db, castingType),
    }),
  },
  'operations/add-casting-type': {
    run(input, { db }) {
      const code = input.code ?? nextPrivateCode(db);
      if (findIdByCode(db, 'casting_type', code) !== undefined)
        throw badField('operations/code-used', 'code', `The code ${code} is used already. Choose another.`);
      const spots = input.spots ?? spotsFromCounts(input.kind, input.counts);
      const castingType = castings.insertCastingType(db, { ...input, code, spots, arrival: input.arrival ?? [] });
      return {
        output: { castingType },
        activity: [
          {
            subject: ['casting_type', castingType],
            words: `Added casting type ${input.name}: ${sum(input.counts) || 'no counts'}`,
          },
        ],
      };
    },
  },
  'operations/add-engine-type': {
    run(input, { db }) {
      if (findIdByCode(db, 'engine_type', input.code) !== undefined)
        throw badField('operations/code-used', 'code', `The code ${input.code} is used already. Choose another.`);
      const engineType = castings.insertEngine(db, input);
      return {
        output: { engineType },
        activity: [{ subject: ['engine_type', engineType], words: `Added engine type ${input.words}` }],
      };
    },
  },
  'operations/list-engine-types': { run: (_, { db }) => ({ engines: castings.listEngines(db) }) },
  'operations/set-arrival-template': {
    run({ castingType, items }, { db, today }) {
      const type = castings.getCastingType(db, castingType);
      const before = castings.listArrival(db, castingType);
      for (const row of before) db.set('arrival_template', row.id, { retired_on: today });
      castings.insertArrival(db, castingType, items);
      return {
        output: {},
        activity: [
          { subject: ['casting_type', castingType], words: `Set what arrives with ${type.name}`, before, after: items },
        ],
      };
    },
  },
  'operations/change-kind': {
    run(input, { db }) {
      const seen = operations.listKinds(db).find((k) => k.id === input.kind);
      if (!seen) throw notFound('operations/no-such-kind', 'This operation');
      const version = db.step('operation_kind', input.kind, input.seenVersion, {
        ...(input.shopWords !== undefined && { shop_words: input.shopWords }),
        ...(input.customerWords !== undefined && { customer_words: input.customerWords }),
        ...(input.workCentre !== undefined && { work_centre_id: getIdByCode(db, 'work_centre', input.workCentre) }),
      });
      return {
        output: { version },
        activity: [
          {
            subject: ['operation_kind', input.kind],
            words: `Changed operation ${seen.code}`,
            before: { shopWords: seen.shopWords, customerWords: seen.customerWords, workCentre: seen.workCentre },
            after: input,
          },
        ],
      };
    },
  },
  'operations/retire-kind': {
    run({ kind, seenVersion }, { db, today }) {
      const seen = operations.listKinds(db).find((k) => k.id === kind);
      if (!seen) throw notFound('operations/no-such-kind', 'This operation');
      db.step('operation_kind', kind, seenVersion, { retired_on: today });
      return {
        output: {},
        activity: [{ subject: ['operation_kind', kind], words: `${seen.shopWords} is no longer sold` }],
      };
    },
  },
  'operations/list-work-centres': {
    run: (_, { db }) => ({
      centres: operations
        .listCentres(db)
        .map((c) => ({ ...c, unattended: c.unattended === 1, outside: c.outside === 1 })),
    }),
  },
  'operations/set-work-centre': {
    run(input, { db }) {
      const seen = operations.listCentres(db).find((c) => c.id === input.centre);
      if (!seen) throw notFound('operations/no-such-centre', 'This work centre');
      const version = db.step('work_centre', input.centre, input.seenVersion, {
        ...(input.name !== undefined && { name: input.name }),
        ...(input.people !== undefined && { people: input.people }),
        ...(input.effectiveSeconds !== undefined && { effective_s: input.effectiveSeconds }),
      });
      return {
        output: { version },
        activity: [
          {
            subject: ['work_centre', input.centre],
            words: `Set work centre ${input.name ?? seen.name}`,
            before: seen,
            after: input,
          },
        ],
      };
    },
  },
  'operations/list-conditions': {
    run({ castingKind }, { db }) {
      const conditions = operations
        .listConditions(db)
        .filter(
          ({ foundOn }) =>
            castingKind === undefined || foundOn.split(' ').some((on) => on === 'any' || on === castingKind),
        );
      return { conditions: conditions.map(({ foundOn: _, ...condition }) => condition) };
    },
  },
  'operations/list-findings': { run: (_, { db }) => ({ findings: operations.listFindings(db) }) },
  'operations/list-stock': { run: (_, { db }) => ({ stock: operations.listStock(db) }) },
});

/** Types made for one casting are numbered P1, P2 ... */
function nextPrivateCode(db: Parameters<typeof castings.listCastingTypes>[0]): string {
  const taken = castings.listCastingTypes(db, true).filter((t) => t.private).length;
  let n = taken + 1;
  while (findIdByCode(db, 'casting_type', `P${n}`) !== undefined) n += 1;
  return `P${n}`;
}
