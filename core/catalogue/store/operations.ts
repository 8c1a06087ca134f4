/** Reads and writes of operations, packages, rules, findings and conditions. */

import type { z } from 'zod';
import type { ReadDb, WriteDb } from '../../db/query.ts';
import { flag } from '../../kernel/flag.ts';
import type { OperationKindId } from '../../kernel/ids.ts';
import type { OperationEntry, RuleEntry } from '../contract/entries.ts';
import { getIdByCode } from './codes.ts';

/** Add an operation with its uses, times, fits and needed readings; `position` is its place in the catalogue. */
export function insertOperation(db: WriteDb, o: z.output<typeof OperationEntry>, position: number): OperationKindId {
  const kind = db.add('operation_kind', {
    code: o.code,
    shop_words: o.shopWords,
    customer_words: o.customerWords,
    section: o.section,
    work_centre_id: getIdByCode(db, 'work_centre', o.workCentre),
    wait_after: o.waitAfter,
    wait_days: o.waitDays,
    gate: o.gate,
    tax_class: o.taxClass,
    two_signatures: flag(o.twoSignatures),
    cautions: o.cautions.length > 0 ? o.cautions.join('; ') : null,
    position,
  });
  for (const fit of o.fits)
    db.add('op_fit', { operation_kind_id: kind, fact: fit.fact, value: fit.value, fit: fit.fit });
  for (const use of o.uses) {
    const id = db.add('op_use', {
      operation_kind_id: kind,
      casting_kind: use.castingKind,
      charge_unit: use.chargeUnit,
      count_from: use.countFrom,
      setup_s: use.setupSeconds,
      unattended_s: use.unattendedSeconds,
    });
    for (const time of use.perUnit)
      db.add('op_time', { op_use_id: id, count_name: time.count, per_unit_s: time.seconds });
  }
  for (const need of o.needed) {
    db.add('needed_reading', {
      operation_kind_id: kind,
      quantity_id: getIdByCode(db, 'quantity', need.quantity),
      stage: need.stage,
      at_place: need.where,
      required: flag(need.required),
    });
  }
  return kind;
}

/** Add one order rule. */
export function insertRule(db: WriteDb, r: z.output<typeof RuleEntry>): void {
  db.add('order_rule', {
    no: r.no,
    first_group: r.first,
    then_group: r.before,
    strength: r.strength,
    need: r.need,
    scope: r.scope,
    if_kind: r.ifKind,
    if_metal: r.ifMetal,
    if_cam_layout: r.ifCamLayout,
    if_fuel: r.ifFuel,
    waiver: r.waiver,
    why: r.why,
  });
}

/** Operations in catalogue order, with the name of their work centre. */
export const listKinds = (db: ReadDb) =>
  db.all(
    db.q
      .selectFrom('operation_kind as k')
      .leftJoin('work_centre as w', 'w.id', 'k.work_centre_id')
      .select([
        'k.id',
        'k.version',
        'k.code',
        'k.shop_words as shopWords',
        'k.customer_words as customerWords',
        'k.section',
        'w.name as workCentre',
        'k.gate',
        'k.tax_class as taxClass',
        'k.cautions',
        'k.retired_on as retiredOn',
        'k.position',
      ])
      .orderBy('k.position')
      .orderBy('k.id'),
  );

/** How operations are sold, per kind of casting. */
export const listUses = (db: ReadDb) =>
  db.all(
    db.q
      .selectFrom('op_use')
      .select([
        'id',
        'operation_kind_id as kind',
        'casting_kind as castingKind',
        'charge_unit as chargeUnit',
        'count_from as countFrom',
        'setup_s as setup',
        'unattended_s as unattended',
      ])
      .where('retired_on', 'is', null)
      .orderBy('id'),
  );

/** Rows of fit, all operations. */
export const listFits = (db: ReadDb) =>
  db.all(db.q.selectFrom('op_fit').select(['operation_kind_id as kind', 'fact', 'value', 'fit']).orderBy('id'));

/** Group codes with their operations. */
export const listGroups = (db: ReadDb) =>
  db.all(db.q.selectFrom('op_group').select(['code', 'operation_kind_id as kind']).orderBy('id'));

/** Order rules in force, in their order. */
export const listRules = (db: ReadDb) =>
  db.all(db.q.selectFrom('order_rule').selectAll().where('retired_on', 'is', null).orderBy('no').orderBy('id'));

/** Packages with their items in order. */
export function listPackages(db: ReadDb) {
  const items = db.all(
    db.q
      .selectFrom('package_item as i')
      .innerJoin('operation_kind as k', 'k.id', 'i.operation_kind_id')
      .select([
        'i.package_id as package',
        'i.operation_kind_id as kind',
        'k.code as operation',
        'k.shop_words as words',
        'i.metal',
        'i.position',
      ])
      .where('i.retired_on', 'is', null)
      .orderBy('i.position')
      .orderBy('i.id'),
  );
  return db
    .all(
      db.q
        .selectFrom('package')
        .select([
          'id',
          'version',
          'code',
          'shop_words as shopWords',
          'customer_words as customerWords',
          'casting_kind as castingKind',
          'tax_class as taxClass',
          'not_inside as notInside',
        ])
        .where('retired_on', 'is', null)
        .orderBy('id'),
    )
    .map((p) => ({ ...p, items: items.filter((i) => i.package === p.id) }));
}

/** Findings with what each usually leads to. */
export function listFindings(db: ReadDb) {
  const offers = db.all(
    db.q
      .selectFrom('finding_offer as o')
      .innerJoin('operation_kind as k', 'k.id', 'o.operation_kind_id')
      .select(['o.finding_kind_id as finding', 'k.code as operation', 'k.shop_words as words', 'o.also_needed as also'])
      .orderBy('o.position'),
  );
  return db
    .all(
      db.q
        .selectFrom('finding_kind')
        .select(['id', 'code', 'shop_words as shopWords', 'note'])
        .where('retired_on', 'is', null)
        .orderBy('id'),
    )
    .map((f) => ({
      ...f,
      offers: offers
        .filter((o) => o.finding === f.id)
        .map((o) => ({ operation: o.operation, words: o.words, alsoNeeded: o.also === 1 })),
    }));
}

/** Conditions in catalogue order; `found_on` is a list of casting kinds or `any`. */
export const listConditions = (db: ReadDb) =>
  db.all(
    db.q
      .selectFrom('condition_kind')
      .select([
        'id',
        'code',
        'shop_words as shopWords',
        'customer_words as customerWords',
        'ask_customer as askCustomer',
        'found_on as foundOn',
      ])
      .where('retired_on', 'is', null)
      .orderBy('id'),
  );

export const listCentres = (db: ReadDb) =>
  db.all(
    db.q
      .selectFrom('work_centre')
      .select(['id', 'version', 'code', 'name', 'people', 'effective_s as effectiveSeconds', 'unattended', 'outside'])
      .where('retired_on', 'is', null)
      .orderBy('position')
      .orderBy('id'),
  );

export const listStock = (db: ReadDb) =>
  db.all(
    db.q
      .selectFrom('stock_item')
      .select([
        'id',
        'code',
        'words',
        'list_price_e4 as listPrice',
        'thickness_nm as thickness',
        'thickness_typed as thicknessTyped',
        'shim_unit as shimUnit',
      ])
      .where('retired_on', 'is', null)
      .orderBy('id'),
  );
