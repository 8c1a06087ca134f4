/** Writes catalogue entries that are not there yet, in the order in which they name each other. */

import type { ReadDb, WriteDb } from '../../db/query.ts';
import { flag } from '../../kernel/flag.ts';
import type { CatalogueEntries } from '../contract/entries.ts';
import { hasPorts, insertCastingType, insertEngine } from './castings.ts';
import { findIdByCode, getIdByCode } from './codes.ts';
import { bringInQuantities, isMeasuringCurrent } from './measuring.ts';
import { insertOperation, insertRule } from './operations.ts';

type Tally = { added: number; kept: number };

/**
 * Bring in everything of `entries` that is not there yet.
 *
 * @returns how many were added and how many were there already.
 */
export function bringIn(db: WriteDb, entries: CatalogueEntries): Tally {
  const tally: Tally = { added: 0, kept: 0 };
  const each = <E extends { code: string }>(
    table: Parameters<typeof findIdByCode>[1],
    list: readonly E[],
    insert: (entry: E, index: number) => void,
  ) => {
    for (const [index, entry] of list.entries()) {
      if (findIdByCode(db, table, entry.code) !== undefined) tally.kept += 1;
      else {
        insert(entry, index);
        tally.added += 1;
      }
    }
  };
  each('work_centre', entries.workCentres, (c, position) =>
    db.add('work_centre', {
      code: c.code,
      name: c.name,
      people: c.people,
      effective_s: c.effectiveSeconds,
      unattended: flag(c.unattended),
      outside: flag(c.outside),
      position,
    }),
  );
  if (entries.quantities) tally.added += bringInQuantities(db).length;
  const newOperations = entries.operations.filter((o) => findIdByCode(db, 'operation_kind', o.code) === undefined);
  each('operation_kind', entries.operations, (o, position) => void insertOperation(db, o, position));
  for (const operation of newOperations) bringInAddOns(db, operation.code, operation.usualAddOns);
  bringInGroups(db, entries.groups);
  bringInRules(db, entries.rules, tally);
  each('finding_kind', entries.findings, (f) => {
    const id = db.add('finding_kind', { code: f.code, shop_words: f.words, note: f.note });
    const offers = [
      ...f.offer.map((code) => ({ code, also: 0 as const })),
      ...f.alsoNeeded.map((code) => ({ code, also: 1 as const })),
    ];
    for (const [position, offer] of offers.entries()) {
      db.add('finding_offer', {
        finding_kind_id: id,
        operation_kind_id: getIdByCode(db, 'operation_kind', offer.code),
        also_needed: offer.also,
        position,
      });
    }
  });
  each('condition_kind', entries.conditions, (c) =>
    db.add('condition_kind', {
      code: c.code,
      shop_words: c.words,
      customer_words: c.words,
      found_on: c.where.join(' '),
      ask_customer: c.askCustomer,
      suggests_finding_id: c.suggestsFinding === null ? null : getIdByCode(db, 'finding_kind', c.suggestsFinding),
    }),
  );
  each('package', entries.packages, (p) => {
    const id = db.add('package', {
      code: p.code,
      shop_words: p.shopWords,
      customer_words: p.customerWords,
      casting_kind: p.castingKind,
      tax_class: p.taxClass,
      not_inside: p.notInside,
    });
    for (const item of p.items) {
      db.add('package_item', {
        package_id: id,
        operation_kind_id: getIdByCode(db, 'operation_kind', item.operation),
        metal: item.metal,
        position: item.position,
      });
    }
  });
  each('engine_type', entries.engineTypes, (e) => void insertEngine(db, e));
  each('casting_type', entries.castingTypes, (t) => void insertCastingType(db, t));
  each('rack_place', entries.places, (p) =>
    db.add('rack_place', {
      code: p.code,
      words: p.words,
      purpose: p.purpose,
      max_weight_g: p.maxWeight,
      only_metal: p.onlyMetal,
    }),
  );
  each('stock_item', entries.stock, (s) =>
    db.add('stock_item', {
      code: s.code,
      words: s.words,
      list_price_e4: s.listPrice,
      thickness_nm: s.thickness,
      thickness_typed: s.thicknessTyped,
      shim_unit: s.shimUnit,
    }),
  );
  return tally;
}

function bringInAddOns(db: WriteDb, code: string, usual: readonly string[]): void {
  const kind = getIdByCode(db, 'operation_kind', code);
  for (const other of usual)
    db.add('add_on', { operation_kind_id: kind, usual_kind_id: getIdByCode(db, 'operation_kind', other) });
}

function bringInGroups(db: WriteDb, groups: CatalogueEntries['groups']): void {
  for (const [code, members] of Object.entries(groups)) {
    for (const member of members) {
      const kind = getIdByCode(db, 'operation_kind', member);
      const there = db.one(
        db.q.selectFrom('op_group').select('id').where('code', '=', code).where('operation_kind_id', '=', kind),
      );
      if (!there) db.add('op_group', { code, operation_kind_id: kind });
    }
  }
}

const listRuleKeys = (db: ReadDb): string[] =>
  db
    .all(db.q.selectFrom('order_rule').selectAll())
    .map((r) => `${r.no}|${r.first_group}|${r.then_group}|${r.if_kind}|${r.if_cam_layout}|${r.if_fuel}`);
const ruleKey = (r: CatalogueEntries['rules'][number]): string =>
  `${r.no}|${r.first}|${r.before}|${r.ifKind}|${r.ifCamLayout}|${r.ifFuel}`;

function bringInRules(db: WriteDb, rules: CatalogueEntries['rules'], tally: Tally): void {
  const known = new Set(listRuleKeys(db));
  for (const rule of rules) {
    if (known.has(ruleKey(rule))) tally.kept += 1;
    else {
      insertRule(db, rule);
      tally.added += 1;
    }
  }
}

/** Whether nothing of `entries` is missing and the measuring stands as this program has it. Writes nothing. */
export function isBroughtIn(db: ReadDb, entries: CatalogueEntries): boolean {
  const lists = [
    ['work_centre', entries.workCentres],
    ['operation_kind', entries.operations],
    ['finding_kind', entries.findings],
    ['condition_kind', entries.conditions],
    ['package', entries.packages],
    ['engine_type', entries.engineTypes],
    ['casting_type', entries.castingTypes],
    ['rack_place', entries.places],
    ['stock_item', entries.stock],
  ] as const;
  const rules = new Set(listRuleKeys(db));
  return (
    lists.every(([table, list]) => list.every(({ code }) => findIdByCode(db, table, code) !== undefined)) &&
    entries.rules.every((rule) => rules.has(ruleKey(rule))) &&
    (!entries.quantities || (isMeasuringCurrent(db) && hasPorts(db)))
  );
}
