/** Lines and sums of a ticket as papers print them. */
import type { ReadDb } from '../../db/query.ts';
import type { TicketId, WorkLineId } from '../../kernel/ids.ts';
import { cents } from '../../kernel/units.ts';
import type { Bill } from '../../lines/compute/bill.ts';
import { isOnBill, type TicketMoney } from '../../lines/compute/ticket-bill.ts';
import { listLineViews } from '../../lines/store/line-views.ts';
import { readPriceBook } from '../../lines/store/price-book.ts';
import { joinAlike, list, sentence } from '../compute/words.ts';
import type { MoneyLine, Named, TotalLine } from '../contract/papers.ts';
import type { Scene } from './scene.ts';

type View = ReturnType<typeof listLineViews>[number];

/** Lines that stand on the bill now, in printing order. */
export function billedViews({ db }: Scene, ticket: TicketId, money: TicketMoney): View[] {
  const onBill = new Set(money.lines.filter((line) => isOnBill(money, line)).map((line) => line.id));
  return listLineViews(db, ticket, money, readPriceBook(db)).filter((view) => onBill.has(view.id));
}

/** The tags of a line; none for a line of the ticket as a whole. */
export const tagsOf = (view: View): number[] =>
  view.castings.length > 0 ? view.castings.map(({ tag }) => tag) : view.tag === null ? [] : [view.tag];

/** Lines that say the same for several castings stand once: "2 × 86.25". One of several castings names its tag. */
export function moneyLines(scene: Scene, views: readonly View[], castings: number): MoneyLine[] {
  const lines = views.map((view) => ({
    words: sentence(list([view.words, view.countNote])),
    tags: tagsOf(view),
    units: view.quantityWords === '1' ? '' : view.quantityWords,
    price: view.priceWords,
    amount: view.amount,
  }));
  return joinAlike(lines).map(({ words, tags, units, price, amount, count }) => {
    const each = cents(amount / count);
    const amounts =
      count === 1
        ? { units, price: units === '' && price === scene.money(each) ? '' : price }
        : { units: String(count), price: scene.money(each) };
    const named =
      castings > 1 && tags.length > 0 && tags.length < castings
        ? `${words}, ${list(tags.map((tag) => `tag ${tag}`))}`
        : words;
    return { words: named, ...amounts, amount: scene.money(cents(amount)) };
  });
}

/** Discount, rush, supplies, fee, minimum. */
export const derivedLines = (scene: Scene, bill: Bill): MoneyLine[] =>
  bill.derived.map(({ words, amount }) => ({ words, amount: scene.money(amount) }));

/** Before tax, each tax, the total. */
export function billTotals(scene: Scene, bill: Bill, totalWords: string): TotalLine[] {
  return [
    { words: 'Before tax', amount: scene.money(bill.figures.beforeTax) },
    ...bill.taxes.map((tax) => ({
      words: tax.exempt === null ? `${tax.words}, ${tax.working}` : `${tax.words}: exempt, certificate ${tax.exempt}`,
      amount: scene.money(tax.amount),
    })),
    { words: totalWords, amount: scene.money(bill.figures.total), strong: true },
  ];
}

/** What a package contains and does not, in the customer's words; once for each package. */
export function packageNotes({ db }: Scene, views: readonly View[]): Named[] {
  const seen = new Set<number>();
  return views.flatMap((view) => {
    if (view.packageId === null || seen.has(view.packageId)) return [];
    seen.add(view.packageId);
    const pack = db.one(
      db.q.selectFrom('package').select(['customer_words', 'not_inside']).where('id', '=', view.packageId),
    );
    const name = pack?.customer_words ?? view.words;
    const inside: Named = { label: `In ${name}:`, words: `${list(insideWords(db, view.id))}.` };
    return pack?.not_inside
      ? [inside, { label: 'Not in it:', words: `${pack.not_inside}. We ask before any of these.` }]
      : [inside];
  });
}

const insideWords = (db: ReadDb, line: WorkLineId): string[] => [
  ...new Set(
    db
      .all(
        db.q
          .selectFrom('operation as o')
          .innerJoin('operation_kind as k', 'k.id', 'o.operation_kind_id')
          .select('k.customer_words')
          .where('o.work_line_id', '=', line)
          .orderBy('o.position')
          .orderBy('o.id'),
      )
      .map((row) => row.customer_words),
  ),
];
