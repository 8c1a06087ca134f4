/** Rates, factors, taxes, quantities, bench tables, gauges, places, stock. */
import { CASTING_KINDS, FAMILIES, SPOT_KINDS, STAGES, TAX_CLASSES } from './choices.ts';
import {
  choice,
  choiceOr,
  count,
  countOr,
  day,
  dayOr,
  flag,
  int,
  intOr,
  ref,
  refOr,
  table,
  words,
  wordsOr,
} from './table.ts';

export const rateTables = [
  table(
    'rate',
    [
      refOr('op_use_id', 'op_use'),
      refOr('package_id', 'package'),
      refOr('casting_type_id', 'casting_type'),
      count('price_e4'),
      count('line_minimum_cents', 0),
      day('from_on'),
      words('list_name', 40),
    ],
    {
      append: true,
      checks: [
        '(op_use_id IS NOT NULL AND package_id IS NULL AND casting_type_id IS NULL) OR (op_use_id IS NULL AND package_id IS NOT NULL AND casting_type_id IS NOT NULL)',
      ],
    },
  ),
  'CREATE UNIQUE INDEX rate__one_op ON rate (op_use_id, list_name, from_on) WHERE op_use_id IS NOT NULL;',
  'CREATE UNIQUE INDEX rate__one_package ON rate (package_id, casting_type_id, list_name, from_on) WHERE package_id IS NOT NULL;',
  table(
    'factor',
    [
      words('code', 40),
      count('factor'),
      choice('when_fact', ['material', 'cam_layout', 'heavy_diesel', 'close_tolerance']),
      wordsOr('when_value', 30),
      day('from_on'),
      dayOr('until_on'),
    ],
    { versioned: true },
  ),
  table('factor_op', [
    ref('factor_id', 'factor'),
    refOr('operation_kind_id', 'operation_kind'),
    refOr('package_id', 'package'),
  ]),
  table('tax_rate', [words('code', 40), words('words', 80), count('bp'), day('from_on'), dayOr('until_on')], {
    versioned: true,
  }),
  table('tax_rate_class', [ref('tax_rate_id', 'tax_rate'), choice('tax_class', TAX_CLASSES)], {
    append: true,
    unique: ['tax_rate_id, tax_class'],
  }),
  table(
    'quantity',
    [
      'code TEXT NOT NULL UNIQUE',
      words('words', 120),
      choice('family', FAMILIES),
      choiceOr('spot_kind', SPOT_KINDS),
      wordsOr('derived', 60),
      flag('side_matters'),
      choice('entry_rule', ['none', 'implied', 'last_digits'], 'none'),
      count('entry_digits', 0),
      wordsOr('choices', 600),
    ],
    { versioned: true },
  ),
  table('quantity_point', [ref('quantity_id', 'quantity'), words('code', 20), words('words', 80), int('position')], {
    unique: ['quantity_id, code'],
  }),
  table('needed_reading', [
    ref('operation_kind_id', 'operation_kind'),
    ref('quantity_id', 'quantity'),
    choice('stage', STAGES),
    choice('at_place', ['all_spots', 'worked_spots', 'once']),
    flag('required', 1),
    dayOr('retired_on'),
  ]),
  table('bench_table', [
    'code TEXT NOT NULL UNIQUE',
    words('words', 120),
    choice('casting_kind', CASTING_KINDS),
    choiceOr('spot_kind', SPOT_KINDS),
    refOr('operation_kind_id', 'operation_kind'),
  ]),
  table('bench_table_row', [
    ref('bench_table_id', 'bench_table'),
    ref('quantity_id', 'quantity'),
    wordsOr('point', 20),
    choice('stage', STAGES),
    int('position'),
    flag('shown', 1),
  ]),
  table(
    'tool',
    [
      words('name', 60),
      wordsOr('serial', 60),
      words('kind', 80),
      refOr('work_centre_id', 'work_centre'),
      words('unit', 12),
      intOr('range_low'),
      intOr('range_high'),
      intOr('resolution'),
      intOr('uncertainty'),
      countOr('uncertainty_bp'),
      wordsOr('set_against', 120),
      dayOr('retired_on'),
    ],
    { versioned: true, unique: ['name'] },
  ),
  table('tool_check', [ref('tool_id', 'tool'), day('on_day'), words('result', 240), day('next_due_on')], {
    append: true,
  }),
  table(
    'rack_place',
    [
      'code TEXT NOT NULL UNIQUE',
      wordsOr('words', 120),
      choice('purpose', ['arrival', 'waiting', 'parts', 'bench', 'ready', 'quarantine', 'floor', 'outside']),
      countOr('max_weight_g'),
      choiceOr('only_metal', ['iron', 'aluminium']),
      dayOr('retired_on'),
    ],
    { versioned: true },
  ),
  table(
    'stock_item',
    [
      'code TEXT NOT NULL UNIQUE',
      words('words', 120),
      countOr('list_price_e4'),
      countOr('core_charge_cents'),
      countOr('thickness_nm'),
      wordsOr('thickness_typed', 20),
      choiceOr('shim_unit', ['in', 'mm']),
      int('on_hand', 0),
      dayOr('retired_on'),
    ],
    { versioned: true },
  ),
  table('fixture', [words('name', 80), wordsOr('words', 160), dayOr('retired_on')], { versioned: true }),
  // The catalogue that the program brings: which entry came with which program version, so that an update never overwrites the shop's edits.
  table('seed_entry', [words('table_name', 40), words('code', 80), words('digest', 64), words('app_version', 20)], {
    unique: ['table_name, code'],
  }),
];
