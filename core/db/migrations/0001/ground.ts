/** People of the shop, devices, settings, numbers, papers, files, activity. */
import {
  choice,
  count,
  countOr,
  day,
  dayOr,
  flag,
  int,
  intOr,
  moment,
  momentOr,
  ref,
  refOr,
  table,
  words,
  wordsOr,
} from './table.ts';

const OPEN_ROLES = ['counter', 'machinist', 'lead', 'books', 'owner'] as const;

export const groundTables = [
  table(
    'staff',
    [words('name', 80), words('initials', 4), 'pin_hash TEXT', wordsOr('job_words', 120), dayOr('retired_on')],
    {
      versioned: true,
    },
  ),
  'CREATE INDEX staff__initials ON staff (initials);',
  table('staff_role', [ref('staff_id', 'staff'), choice('role', OPEN_ROLES), momentOr('ended_at')]),
  'CREATE UNIQUE INDEX staff_role__held ON staff_role (staff_id, role) WHERE ended_at IS NULL;',
  table(
    'device',
    [
      words('name', 60),
      choice('kind', ['desktop', 'tablet', 'pc']),
      intOr('work_centre_id'),
      'token_hash TEXT NOT NULL UNIQUE',
      momentOr('revoked_at'),
    ],
    { versioned: true },
  ),
  table('sign_in', [ref('device_id', 'device'), ref('staff_id', 'staff'), moment('at'), momentOr('ended_at')]),
  // `at` of the latest right PIN; asked-again checks look here. Tries are counted to slow down guessing.
  table('pin_try', [ref('device_id', 'device'), ref('staff_id', 'staff'), moment('at'), flag('matched')], {
    append: true,
  }),
  table(
    'shop_setting',
    [
      words('name', 240),
      words('short_name', 40),
      wordsOr('address', 400),
      wordsOr('phone', 60),
      wordsOr('email', 120),
      wordsOr('tax_number', 60),
      words('currency_code', 3),
      words('currency_sign', 4),
      choice('units', ['inch', 'metric']),
      flag('show_both_units', 1),
      choice('paper', ['letter', 'a4']),
      words('language', 12),
      words('time_zone', 60),
      flag('practice'),
      count('minimum_labour_cents', 0),
      count('supplies_bp', 0),
      countOr('supplies_cap_cents'),
      count('fee_per_wash_cents', 0),
      count('storage_per_day_cents', 0),
      count('storage_after_days', 30),
      flag('storage_capped', 1),
      count('rush_bp', 2500),
      count('sublet_bp', 2000),
      count('buffer_bp', 2500),
      count('estimate_days', 30),
      count('deposit_new_retail_cents', 0),
      count('deposit_special_bp', 5000),
      count('credit_warn_bp', 8000),
      count('core_days', 30),
      count('core_good_bp', 10_000),
      count('core_repairable_bp', 6000),
      count('core_scrap_bp', 0),
      countOr('shim_stack_inch_nm'),
      countOr('shim_stack_mm_nm'),
      countOr('bench_rate_e4'),
      countOr('weld_rate_e4'),
      `${int('pin_digits', 6)} CHECK (pin_digits BETWEEN 4 AND 8)`,
      choice('tax_rounding', ['per_rate', 'per_line'], 'per_rate'),
      choice('age_from', ['due', 'issued'], 'due'),
      flag('same_person_signs'),
      flag('guard'),
      flag('ceiling_tax_in', 1),
      count('promise_minute', 1020),
      choice('hour_clock', ['24', '12'], '24'),
      count('idle_minutes', 20),
      wordsOr('backup_folder', 400),
    ],
    { versioned: true },
  ),
  table(
    'open_hours',
    [
      `${int('weekday')} CHECK (weekday BETWEEN 1 AND 7)`,
      choice('part', ['counter', 'bench']),
      count('from_minute'),
      count('until_minute'),
      momentOr('ended_at'),
    ],
    {
      checks: ['until_minute > from_minute'],
    },
  ),
  table('holiday', [day('on_day'), words('words', 80), momentOr('ended_at')]),
  table('sequence', [
    "series TEXT NOT NULL UNIQUE CHECK (series IN ('ticket', 'tag', 'invoice', 'credit_note', 'receipt'))",
    `${int('next')} CHECK (next > 0)`,
  ]),
  table(
    'text_version',
    [
      choice('kind', [
        'warranty',
        'claim_terms',
        'storage',
        'disclaimer',
        'letter_ready',
        'letter_reminder',
        'letter_final',
      ]),
      words('body', 8000),
      day('from_on'),
    ],
    { append: true },
  ),
  table(
    'attachment',
    [
      'sha256 TEXT NOT NULL UNIQUE CHECK (length(sha256) = 64)',
      count('bytes'),
      words('mime', 80),
      countOr('width'),
      countOr('height'),
    ],
    { append: true },
  ),
  table(
    'document',
    [
      words('kind', 40),
      words('subject_table', 40),
      int('subject_id'),
      refOr('ticket_id', 'ticket'),
      int('revision', 1),
      words('file_name', 200),
      ref('attachment_id', 'attachment'),
      wordsOr('facts_digest', 64),
    ],
    { append: true },
  ),
  'CREATE INDEX document__subject ON document (kind, subject_table, subject_id);',
  table(
    'printing',
    [
      ref('document_id', 'document'),
      choice('outcome', ['printed', 'kept_as_file', 'failed', 'handed_to_viewer']),
      wordsOr('words', 240),
    ],
    { append: true },
  ),
  table('draft', [
    choice('kind', ['check_in', 'added_work', 'readings', 'first_run']),
    ref('staff_id', 'staff'),
    refOr('device_id', 'device'),
    wordsOr('title', 200),
    'body TEXT NOT NULL',
    moment('kept_at'),
    momentOr('dropped_at'),
  ]),
  table(
    'request_key',
    [
      'key TEXT NOT NULL UNIQUE CHECK (length(key) BETWEEN 8 AND 80)',
      intOr('device_id'),
      words('name', 80),
      'reply TEXT NOT NULL',
    ],
    { append: true },
  ),
  `CREATE TABLE activity (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  at TEXT NOT NULL,
  staff_id INTEGER REFERENCES staff (id),
  device_id INTEGER REFERENCES device (id),
  came_from TEXT NOT NULL,
  app_version TEXT NOT NULL,
  command TEXT NOT NULL,
  ticket_id INTEGER REFERENCES ticket (id),
  subject_table TEXT NOT NULL,
  subject_id INTEGER NOT NULL,
  text_digest TEXT NOT NULL,
  previous_hash TEXT NOT NULL,
  hash TEXT NOT NULL UNIQUE
) STRICT;
CREATE INDEX activity__staff_id ON activity (staff_id);
CREATE INDEX activity__device_id ON activity (device_id);
CREATE INDEX activity__ticket_id ON activity (ticket_id);
CREATE INDEX activity__subject ON activity (subject_table, subject_id);
CREATE TRIGGER activity__no_update BEFORE UPDATE ON activity BEGIN SELECT RAISE(ABORT, 'activity rows are never changed'); END;
CREATE TRIGGER activity__no_delete BEFORE DELETE ON activity BEGIN SELECT RAISE(ABORT, 'activity rows are never deleted'); END;
CREATE TRIGGER activity__no_replace BEFORE INSERT ON activity WHEN EXISTS (SELECT 1 FROM activity WHERE id = NEW.id)
BEGIN SELECT RAISE(ABORT, 'activity rows are never replaced'); END;
CREATE TABLE activity_text (
  activity_id INTEGER PRIMARY KEY REFERENCES activity (id),
  salt TEXT NOT NULL,
  body TEXT
) STRICT;
CREATE TRIGGER activity_text__blank_only BEFORE UPDATE ON activity_text WHEN NEW.body IS NOT NULL OR NEW.salt IS NOT OLD.salt OR NEW.activity_id IS NOT OLD.activity_id
BEGIN SELECT RAISE(ABORT, 'activity text may only be blanked'); END;
CREATE TRIGGER activity_text__no_delete BEFORE DELETE ON activity_text BEGIN SELECT RAISE(ABORT, 'activity text is never deleted'); END;`,
];
