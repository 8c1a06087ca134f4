/** The Money pane: estimate, authorised, done so far, asked for, what it would be; then invoiced and paid. */
import type { z } from 'zod';
import type { ReadDb } from '../../db/query.ts';
import type { Day } from '../../kernel/days.ts';
import { type FormatSettings, formatMoney } from '../../kernel/format.ts';
import type { TicketId } from '../../kernel/ids.ts';
import { type Cents, cents, sumCents } from '../../kernel/units.ts';
import { authorisedWords } from '../../lines/compute/authorised.ts';
import { agreedSoFar, type TicketMoney, wholeBill } from '../../lines/compute/ticket-bill.ts';
import { listEstimates, listOptions } from '../../lines/store/answers.ts';
import { balanceOf, moneyWord } from '../../money/compute.ts';
import type { MoneyFact } from '../../state/compute/facts.ts';
import { ticketMoneyWord } from '../../state/compute/goods.ts';
import type { TicketMoney as MoneySchema } from '../contract/panes.ts';

type View = Omit<z.output<typeof MoneySchema>, 'account'>;

/** @param asked extra before tax of questions nobody answered, and their labels */
export function moneyView(
  reading: Readonly<{ db: ReadDb; today: Day; settings: FormatSettings }>,
  ticket: TicketId,
  money: TicketMoney,
  fact: MoneyFact,
  asked: readonly Readonly<{ label: string; extra: Cents }>[],
): View {
  const { db, today, settings } = reading;
  const agreed = agreedSoFar(money);
  const { figures } = wholeBill(money);
  const labels = new Map(
    listOptions(db, ticket).map((one) => [one.id as number, `A${one.added_work_number} ${one.letter}`]),
  );
  const estimate = listEstimates(db, ticket).at(-1) ?? null;
  const invoices = invoiceViews(db, ticket, today);
  const sum = sumCents(asked.map((one) => one.extra));
  const paid = cents(fact.invoiced - fact.balance);
  return {
    rows: rowsOf({ agreed, figures, estimate, asked, sum, fact, paid, settings }),
    basis: agreed.authorised.taxIn ? 'tax in' : 'before tax',
    estimate: estimate && {
      estimateId: estimate.id,
      revision: estimate.revision,
      beforeTax: estimate.before_tax_cents,
      tax: estimate.tax_cents,
      total: estimate.total_cents,
      validUntil: estimate.valid_until,
      sentAt: estimate.created_at,
    },
    now: { beforeTax: figures.beforeTax, tax: figures.tax, total: figures.total },
    authorised:
      agreed.authorised.base === null && agreed.authorised.adds.length === 0 ? null : agreed.authorised.amount,
    authorisedWords: authorisedWords(agreed.authorised, (option) => labels.get(option) ?? 'added work'),
    exposure: agreed.exposure,
    asked: sum,
    invoiced: fact.invoiced,
    paid,
    balance: fact.balance,
    depositHeld: fact.held,
    moneyWord: ticketMoneyWord(fact) ?? invoices.at(-1)?.word ?? 'invoiced',
    invoices,
  };
}

type RowsInput = Readonly<{
  agreed: ReturnType<typeof agreedSoFar>;
  figures: ReturnType<typeof wholeBill>['figures'];
  estimate: ReturnType<typeof listEstimates>[number] | null;
  asked: readonly Readonly<{ label: string; extra: Cents }>[];
  sum: Cents;
  fact: MoneyFact;
  paid: Cents;
  settings: FormatSettings;
}>;

const plain = (words: string, amount: Cents): View['rows'][number] => ({ words, amount, tone: 'plain', more: null });

function rowsOf({ agreed, figures, estimate, asked, sum, fact, paid, settings }: RowsInput): View['rows'] {
  const taxIn = agreed.authorised.taxIn;
  const whole = taxIn ? figures.total : figures.beforeTax;
  const quoted = estimate && (taxIn ? estimate.total_cents : estimate.before_tax_cents);
  return [
    ...(estimate && quoted !== null ? [plain(`Estimate, revision ${estimate.revision}`, quoted)] : []),
    ...(quoted === whole ? [] : [plain('Work on the ticket now', whole)]),
    ...agreedRows(agreed),
    ...askedRows({ asked, sum, whole, agreed, settings }),
    ...(fact.held > 0 ? [plain('Deposit held', fact.held)] : []),
    ...(fact.invoices > 0
      ? [plain('Invoiced', fact.invoiced), plain('Paid', paid), plain('To pay', fact.balance)]
      : []),
  ];
}

function agreedRows({ authorised, exposure }: RowsInput['agreed']): View['rows'] {
  const words = authorised.ceiling ? 'Authorised, ceiling' : 'Authorised';
  return [
    ...(authorised.amount > 0 ? [plain(words, authorised.amount)] : []),
    ...(exposure > 0 ? [plain('Done and ordered so far', exposure)] : []),
  ];
}

/** What waits for an answer, and what the ticket would come to with it. */
function askedRows({
  asked,
  sum,
  whole,
  agreed,
  settings,
}: Pick<RowsInput, 'asked' | 'sum' | 'agreed' | 'settings'> & Readonly<{ whole: Cents }>): View['rows'] {
  if (asked.length > 0) {
    const words = `Asked for: ${asked.map((one) => one.label).join(', ')}`;
    return [
      { words, amount: sum, tone: 'asked', more: null },
      pastRow('Would be', cents(whole + sum), agreed.most, settings),
    ];
  }
  return agreed.authorised.ceiling && whole > agreed.most ? [pastRow('Would be', whole, agreed.most, settings)] : [];
}

function pastRow(words: string, amount: Cents, most: Cents, settings: FormatSettings): View['rows'][number] {
  if (most === 0 || amount <= most) return { words, amount, tone: 'plain', more: null };
  return { words, amount, tone: 'past', more: `past by ${formatMoney(cents(amount - most), settings)}` };
}

function invoiceViews(db: ReadDb, ticket: TicketId, today: Day): View['invoices'] {
  const sums = (table: 'allocation' | 'write_off') =>
    new Map(
      db
        .sql<{ id: number; amount: number }>(
          `SELECT invoice_id AS id, SUM(amount_cents) AS amount FROM ${table} WHERE ticket_id = ? GROUP BY invoice_id`,
          ticket,
        )
        .map((row) => [row.id, cents(row.amount)]),
    );
  const allocated = sums('allocation');
  const written = sums('write_off');
  const credited = new Map(
    db
      .sql<{ id: number; amount: number }>(
        'SELECT invoice_id AS id, SUM(total_cents) AS amount FROM credit_note WHERE ticket_id = ? GROUP BY invoice_id',
        ticket,
      )
      .map((row) => [row.id, cents(row.amount)]),
  );
  const disputed = new Set(
    db
      .sql<{ id: number }>('SELECT invoice_id AS id FROM dispute WHERE ticket_id = ? AND closed_at IS NULL', ticket)
      .map((row) => row.id),
  );
  return db.all(db.q.selectFrom('invoice').selectAll().where('ticket_id', '=', ticket).orderBy('number')).map((row) => {
    const balance = balanceOf(row.total_cents, [allocated.get(row.id) ?? cents(0)], [written.get(row.id) ?? cents(0)]);
    const facts = {
      total: row.total_cents,
      balance,
      credited: credited.get(row.id) ?? cents(0),
      disputed: disputed.has(row.id),
      dueOn: row.due_on,
    };
    return {
      invoiceId: row.id,
      number: row.number,
      issuedOn: row.issued_on,
      dueOn: row.due_on,
      total: row.total_cents,
      balance,
      word: moneyWord(facts, today),
    };
  });
}
