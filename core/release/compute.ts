/**
 * What may leave, and why not: signed off, counted out, in no doubt, paid or on account. Pure and browser-safe.
 *
 * Source: common practice, no source; local law on liens and storage comes first.
 */
import { type DoorItem, doorStop } from '../intake/compute.ts';
import { type FormatSettings, formatMoney } from '../kernel/format.ts';
import type { Cents } from '../kernel/units.ts';

export type LeavingCasting = Readonly<{
  tag: number;
  out: boolean;
  /** Signed off, or scrap agreed. */
  settled: boolean;
  /** A written reason why it goes as it came. */
  unworkedWhy: string | null;
  workBegun: boolean;
  /** The person may decide what a lead decides. */
  leadSays: boolean;
  identityInDoubt: boolean;
  items: readonly DoorItem[];
}>;

/** Why a casting cannot leave; empty when it may. */
export function castingStops(casting: LeavingCasting): string[] {
  if (casting.out) return [`${casting.tag} is out of the house already.`];
  const stops: string[] = [];
  if (casting.identityInDoubt) stops.push(`${casting.tag}: which casting is this? Clear the identity question first.`);
  if (!casting.settled) {
    if (casting.unworkedWhy === null)
      stops.push(`${casting.tag} is not signed off. Sign it off, or write why it leaves unworked.`);
    else if (casting.workBegun && !casting.leadSays)
      stops.push(`${casting.tag}: work has begun. A lead says whether it leaves unfinished.`);
  }
  return [...stops, ...casting.items.map(doorStop).filter((stop) => stop !== null)];
}

export type LeavingContainer = Readonly<{
  label: string;
  out: boolean;
  count: number | null;
  counted: number | null;
  explained: string | null;
}>;

/** Why a bag or box cannot leave; null when it may. */
export function containerStop({ label, out, count, counted, explained }: LeavingContainer): string | null {
  if (out) return `${label} is out of the house already.`;
  if (count === null || explained !== null || counted === count) return null;
  if (counted === null) return `${label}: ${count} came, none counted out. Count before handing over.`;
  return `${label}: ${count} came, ${counted} counted out. Explain before handing over.`;
}

export type DoorMoney = Readonly<{
  /** Charges of what leaves that stand on no invoice, as the bill would come out. */
  unbilledLines: number;
  balance: Cents;
  /** Net or end of month: may owe. */
  hasTerms: boolean;
  termsWords: string;
  onStop: boolean;
  overLimit: boolean;
  /** A named yes to let goods go although stopped or over the limit. */
  yes: boolean;
}>;

/** May goods go without a named yes? `words` for the head of the page, `why` when they may not. */
export function doorMoney(
  money: DoorMoney,
  settings: Pick<FormatSettings, 'language'>,
): Readonly<{ words: string; clear: boolean; why: string | null }> {
  const open = formatMoney(money.balance, settings);
  if (money.unbilledLines > 0) {
    return {
      words: 'not invoiced yet',
      clear: false,
      why: 'Its work is not invoiced yet. Issue the invoice first, or a lead or the owner lets it go with a reason.',
    };
  }
  if (money.balance <= 0) return { words: 'paid in full', clear: true, why: null };
  if (!money.hasTerms)
    return {
      words: `${open} is open`,
      clear: false,
      why: `${open} is open. A lead or the owner can let it go with a reason.`,
    };
  if ((money.onStop || money.overLimit) && !money.yes) {
    const state = money.onStop ? 'The account is on stop' : 'The account is over its limit';
    return {
      words: `${open} is open`,
      clear: false,
      why: `${state} and ${open} is open. A lead or the owner can let it go with a reason.`,
    };
  }
  return { words: `on account, ${money.termsWords}`, clear: true, why: null };
}
