/** The words of parts and of a ticket's money, and whether pieces are where they must be before a ticket is ready. */
import type { MoneyFact, PartFact, TicketFacts } from './facts.ts';
import type { PartWord, TicketMoneyWord } from './words.ts';

/** First match from the top. */
export function partWord(part: Omit<PartFact, 'id' | 'castingId' | 'words' | 'expectedOn' | 'blocks'>): PartWord {
  if (part.returnedAt !== null) return 'returned';
  if (part.fittedAt !== null) return 'fitted';
  if (part.hereAt !== null) return 'here';
  if (part.backOrderedAt !== null) return 'back-ordered';
  if (part.orderedAt !== null) return 'ordered';
  if (part.source === 'customer') return 'customer bringing';
  return part.quotedAt === null ? 'needed' : 'quoted';
}

/** Money of a ticket before its first invoice; null afterwards, then each invoice has a word of its own. */
export function ticketMoneyWord(money: MoneyFact): TicketMoneyWord | null {
  if (money.invoices > 0) return null;
  return money.held > 0 ? 'deposit held' : 'unbilled';
}

/** Pieces that belong to the customer and lie nowhere: sentences; empty when all are in containers. */
export function looseGoods({ ticket, castings, items, parts, containers }: TicketFacts): string[] {
  const gone = new Set(castings.filter((c) => c.outAt !== null).map((c) => c.id));
  const loose = items
    .filter((i) => i.customersOwn && !i.missing && i.counted !== 0 && !gone.has(i.castingId))
    .filter((i) => i.containerId === null && i.fate === null)
    .map((i) => `The customer's ${i.words} is in no bag or box.`);
  const old = items.some((i) => i.fate === 'replaced') || parts.some((p) => p.fittedAt !== null);
  const kept = containers.some((c) => c.oldReturn);
  return ticket.oldPartsBack && old && !kept ? [...loose, 'The old parts go back: put them in a bag or box.'] : loose;
}
