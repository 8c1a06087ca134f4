/** Invoices, credits, payments. Issued papers never change; their numbers run without a gap. */
import { TAX_CLASSES } from './choices.ts';
import { choice, count, day, flag, int, intOr, momentOr, ref, refOr, table, words, wordsOr } from './table.ts';

const ROLES = [
  'labour',
  'part',
  'supplies',
  'fee',
  'rush',
  'discount',
  'minimum',
  'core',
  'sublet',
  'freight',
  'storage',
  'text',
] as const;

/** A new number is the highest plus one; while the series is empty it is the first number set in `sequence`. */
const unbroken = (
  name: string,
  column: string,
  series: string,
): string => `CREATE TRIGGER ${name}__unbroken BEFORE INSERT ON ${name}
WHEN NEW.${column} IS NOT COALESCE((SELECT MAX(${column}) + 1 FROM ${name}), (SELECT next FROM sequence WHERE series = '${series}'), 1)
BEGIN SELECT RAISE(ABORT, '${name} numbers run without a gap'); END;`;

export const moneyTables = [
  table(
    'invoice',
    [
      `${int('number')} UNIQUE`,
      ref('ticket_id', 'ticket'),
      ref('customer_id', 'customer'),
      day('issued_on'),
      day('due_on'),
      'frozen_json TEXT NOT NULL',
      wordsOr('order_number', 60),
      refOr('warranty_text_id', 'text_version'),
      int('before_tax_cents'),
      int('tax_cents'),
      int('total_cents'),
    ],
    { append: true },
  ),
  unbroken('invoice', 'number', 'invoice'),
  table(
    'invoice_line',
    [
      ref('invoice_id', 'invoice'),
      ref('ticket_id', 'ticket'),
      refOr('work_line_id', 'work_line'),
      refOr('casting_id', 'casting'),
      words('words', 240),
      count('quantity'),
      int('per', 1),
      int('unit_price_e4', 0),
      wordsOr('working', 240),
      int('amount_cents'),
      choice('tax_class', TAX_CLASSES),
      choice('role', ROLES),
      int('position'),
    ],
    { append: true },
  ),
  table(
    'invoice_tax',
    [
      ref('invoice_id', 'invoice'),
      ref('ticket_id', 'ticket'),
      words('rate_code', 40),
      words('rate_words', 80),
      count('rate_bp'),
      int('base_cents'),
      int('amount_cents'),
      wordsOr('exempt_certificate', 60),
    ],
    { append: true },
  ),
  table(
    'credit_note',
    [
      `${int('number')} UNIQUE`,
      ref('invoice_id', 'invoice'),
      ref('ticket_id', 'ticket'),
      ref('customer_id', 'customer'),
      day('issued_on'),
      choice('reason', ['price_error', 'quality', 'goodwill', 'core', 'return']),
      ref('approved_by', 'staff'),
      words('words', 240),
      int('before_tax_cents'),
      int('tax_cents'),
      int('total_cents'),
    ],
    { append: true },
  ),
  unbroken('credit_note', 'number', 'credit_note'),
  table(
    'credit_note_line',
    [
      ref('credit_note_id', 'credit_note'),
      ref('ticket_id', 'ticket'),
      refOr('invoice_line_id', 'invoice_line'),
      words('words', 240),
      count('quantity'),
      int('amount_cents'),
      choice('tax_class', TAX_CLASSES),
    ],
    { append: true },
  ),
  table(
    'credit_note_tax',
    [
      ref('credit_note_id', 'credit_note'),
      ref('ticket_id', 'ticket'),
      words('rate_code', 40),
      count('rate_bp'),
      int('base_cents'),
      int('amount_cents'),
    ],
    { append: true },
  ),
  table(
    'payment',
    [
      `${int('receipt_number')} UNIQUE`,
      ref('customer_id', 'customer'),
      choice('kind', ['cash', 'card', 'transfer', 'cheque', 'other']),
      int('amount_cents'),
      refOr('reverses_id', 'payment'),
      refOr('for_ticket_id', 'ticket'),
      day('received_on'),
      wordsOr('words', 240),
      int('tax_cents', 0),
    ],
    { append: true, checks: ['amount_cents <> 0'] },
  ),
  unbroken('payment', 'receipt_number', 'receipt'),
  table(
    'allocation',
    [
      refOr('payment_id', 'payment'),
      refOr('credit_note_id', 'credit_note'),
      ref('invoice_id', 'invoice'),
      ref('ticket_id', 'ticket'),
      int('amount_cents'),
    ],
    { append: true, checks: ['(payment_id IS NULL) <> (credit_note_id IS NULL)', 'amount_cents <> 0'] },
  ),
  table(
    'write_off',
    [
      ref('invoice_id', 'invoice'),
      ref('ticket_id', 'ticket'),
      count('amount_cents'),
      words('reason', 240),
      ref('approved_by', 'staff'),
    ],
    { append: true },
  ),
  table('dispute', [
    ref('invoice_id', 'invoice'),
    ref('ticket_id', 'ticket'),
    words('words', 600),
    momentOr('closed_at'),
    wordsOr('closed_words', 600),
  ]),
  // Tickets whose account was over its limit or on stop: somebody named said yes to go on.
  table(
    'account_yes',
    [
      ref('ticket_id', 'ticket'),
      ref('customer_id', 'customer'),
      choice('about', ['work', 'release']),
      words('why', 240),
      flag('ended'),
      intOr('use_cents'),
    ],
    { append: true },
  ),
];
