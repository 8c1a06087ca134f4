/** What to say to a caller about a ticket, from its state. Pure and browser-safe. */
import { type FormatSettings, formatMoneySign } from '../../kernel/format.ts';
import type { Cents } from '../../kernel/units.ts';
import type { TicketWord } from '../../state/compute/words.ts';

export type Sayable = Readonly<{
  word: TicketWord;
  /** The shop's few words: "at Surfacer", "Seat cut now", "waiting parts". */
  whereWords: string;
  promise: Readonly<{ words: string; late: boolean }> | null;
  asked: Readonly<{ kind: 'estimate' | 'added work' | null; words: string }> | null;
  toPay: Cents;
  /** Net or end of month: pays by invoice. */
  onAccount: boolean;
  /** Places of what is ready, for example "D-2-1". */
  places: readonly string[];
  toldWords: string | null;
}>;

type Settings = Pick<FormatSettings, 'language' | 'currencySign'>;

/** One or two sentences, as they are spoken. */
export function sayThis(ticket: Sayable, settings: Settings): string {
  switch (ticket.word) {
    case 'enquiry':
      return 'You asked us for a price. Nothing is here yet.';
    case 'declined':
      return 'You told us not to go on. Your castings can be fetched.';
    case 'abandoned':
      return 'It was never fetched. Let me ask the owner.';
    case 'collected':
    case 'closed':
      return ticket.toPay > 0
        ? `It was fetched. ${formatMoneySign(ticket.toPay, settings)} is open.`
        : 'It was fetched.';
    case 'ready':
    case 'invoiced':
    case 'paid':
      return readyWords(ticket, settings);
    default:
      return workWords(ticket);
  }
}

function readyWords({ places, toPay, onAccount }: Sayable, settings: Settings): string {
  const where = places.length === 0 ? '' : `, rack ${places.slice(0, 2).join(' and ')}`;
  const pay =
    toPay <= 0
      ? 'Nothing to pay.'
      : onAccount
        ? 'On account, nothing to pay at the door.'
        : `${formatMoneySign(toPay, settings)} to pay.`;
  return `It is ready${where}. ${pay}`;
}

function workWords({ whereWords, promise, asked, word }: Sayable): string {
  const day =
    promise === null
      ? 'No day is promised yet.'
      : promise.late
        ? `It was promised for ${promise.words} and is late.`
        : `Promised for ${promise.words}.`;
  if (asked?.kind === 'estimate') return `We sent you ${asked.words.toLowerCase()} and wait for your answer. ${day}`;
  if (asked !== null) return `It waits for your answer: ${asked.words.replace(/[.\s]+$/, '')}. ${day}`;
  return `${doing(whereWords, word)} ${day}`;
}

/** The shop's few words as a sentence. */
function doing(where: string, word: TicketWord): string {
  if (where.endsWith(' now')) return `${capital(where.slice(0, -4))} is being done now.`;
  if (where.startsWith('at ')) return word === 'in work' ? `It is ${where}.` : `It goes to ${where.slice(3)} next.`;
  if (where === 'to be signed off') {
    // Nothing was asked for yet, or all is done: the words of the place are the same.
    return word === 'in work' ? 'The work is done; it is being checked.' : 'It is here; no work is agreed yet.';
  }
  if (where === 'to be put away') return 'It is checked and is being put away.';
  return `It waits: ${where}.`;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Beside the word: "waiting your answer", "told Fri 13 Mar 15:10"; null for nothing. */
export function moreWords({ asked, word, toldWords }: Sayable): string | null {
  if (asked !== null && !GONE.includes(word)) return 'waiting your answer';
  return (word === 'ready' || word === 'invoiced' || word === 'paid') && toldWords !== null
    ? `told ${toldWords}`
    : null;
}

const GONE: readonly TicketWord[] = ['collected', 'closed', 'declined', 'abandoned'];
