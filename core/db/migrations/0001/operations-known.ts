/** Operations, how they are sold and timed, what fits, order rules, packages, findings and conditions. */
import { CAM_LAYOUTS, CASTING_KINDS, COUNTS, FUELS, GATES, TAX_CLASSES, UNITS } from './choices.ts';
import { choice, choiceOr, count, dayOr, flag, int, ref, refOr, table, words, wordsOr } from './table.ts';

export const operationKindTables = [
  table(
    'condition_kind',
    [
      'code TEXT NOT NULL UNIQUE',
      words('shop_words', 160),
      words('customer_words', 160),
      words('found_on', 80),
      choice('ask_customer', ['no', 'note', 'maybe', 'yes', 'after_measure', 'at_once']),
      refOr('suggests_finding_id', 'finding_kind'),
      dayOr('retired_on'),
    ],
    { versioned: true },
  ),
  table(
    'finding_kind',
    ['code TEXT NOT NULL UNIQUE', words('shop_words', 160), wordsOr('note', 240), dayOr('retired_on')],
    { versioned: true },
  ),
  table('finding_offer', [
    ref('finding_kind_id', 'finding_kind'),
    ref('operation_kind_id', 'operation_kind'),
    flag('also_needed'),
    int('position', 0),
  ]),
  table(
    'operation_kind',
    [
      'code TEXT NOT NULL UNIQUE',
      words('shop_words', 120),
      words('customer_words', 160),
      words('section', 40),
      refOr('work_centre_id', 'work_centre'),
      choice('wait_after', ['none', 'overnight', 'working_days'], 'none'),
      count('wait_days', 0),
      choice('gate', GATES),
      choice('tax_class', TAX_CLASSES),
      flag('two_signatures'),
      flag('handling'),
      wordsOr('cautions', 600),
      int('position', 0),
      dayOr('retired_on'),
    ],
    { versioned: true },
  ),
  table(
    'op_use',
    [
      ref('operation_kind_id', 'operation_kind'),
      choice('casting_kind', CASTING_KINDS),
      choice('charge_unit', UNITS),
      choice('count_from', COUNTS),
      count('setup_s'),
      count('unattended_s', 0),
      dayOr('retired_on'),
    ],
    { unique: ['operation_kind_id, casting_kind'] },
  ),
  table('op_time', [ref('op_use_id', 'op_use'), words('count_name', 30), count('per_unit_s')]),
  table(
    'op_fit',
    [
      ref('operation_kind_id', 'operation_kind'),
      choice('fact', ['metal', 'cam_layout', 'fuel', 'guide_style', 'water_jacket']),
      words('value', 30),
      choice('fit', ['normal', 'special', 'refused']),
    ],
    { unique: ['operation_kind_id, fact, value'] },
  ),
  table('op_group', [words('code', 40), ref('operation_kind_id', 'operation_kind')], {
    unique: ['code, operation_kind_id'],
  }),
  table('add_on', [ref('operation_kind_id', 'operation_kind'), ref('usual_kind_id', 'operation_kind')], {
    unique: ['operation_kind_id, usual_kind_id'],
  }),
  table(
    'order_rule',
    [
      int('no'),
      words('first_group', 60),
      words('then_group', 60),
      choice('strength', ['hard', 'soft']),
      choice('need', ['if_present', 'must_exist']),
      choice('scope', ['casting', 'pair', 'ticket']),
      choiceOr('if_kind', CASTING_KINDS),
      choiceOr('if_metal', ['iron', 'aluminium', 'other']),
      choiceOr('if_cam_layout', CAM_LAYOUTS),
      choiceOr('if_fuel', FUELS),
      choice('waiver', ['none', 'reason', 'customer_signature']),
      words('why', 240),
      dayOr('retired_on'),
    ],
    { versioned: true },
  ),
  table(
    'package',
    [
      'code TEXT NOT NULL UNIQUE',
      words('shop_words', 120),
      words('customer_words', 160),
      choice('casting_kind', CASTING_KINDS),
      choice('tax_class', TAX_CLASSES),
      wordsOr('not_inside', 240),
      dayOr('retired_on'),
    ],
    { versioned: true },
  ),
  table('package_item', [
    ref('package_id', 'package'),
    ref('operation_kind_id', 'operation_kind'),
    choice('metal', ['any', 'iron', 'aluminium'], 'any'),
    int('position'),
    dayOr('retired_on'),
  ]),
];
