/**
 * The price book in memory, and what one wish becomes with it: a line with its operations, or a refusal with what does fit.
 *
 * Pure: check-in's live price, adding to a ticket and pricing an option of added work all come through here.
 */
import { type FitCasting, type FitKind, fitOf, fitsInstead, type MetalClass } from '../../catalogue/compute/fit.ts';
import type { OrderRule, RuleKind } from '../../catalogue/compute/order-rules.ts';
import type { Id, WorkCentreId } from '../../kernel/ids.ts';
import { type Cents, type PriceE4, type Seconds, seconds } from '../../kernel/units.ts';
import type { FactorRow, RateRow, TaxClass } from '../../rates/compute.ts';
import { lineAmount, lineWorking, PER_PIECE, type PriceTerms } from './line.ts';
import { type CountSource, type Offer, offerOn, type PricedCasting, type PricingDay, usualQuantity } from './offer.ts';

export type BookUse = Readonly<{
  chargeUnit: string;
  countFrom: CountSource;
  setup: number;
  unattended: number;
  /** Seconds for each of a count; `charged` is the line's own quantity. */
  times: readonly Readonly<{ count: string; perUnit: number }>[];
  rates: readonly RateRow[];
}>;

export type BookKind = RuleKind &
  Readonly<{
    id: Id<'operation_kind'>;
    customerWords: string;
    taxClass: TaxClass;
    workCentreId: WorkCentreId | null;
    retired: boolean;
    /** By kind of casting. */
    uses: ReadonlyMap<string, BookUse>;
    fits: FitKind['fits'];
    groups: readonly string[];
  }>;

export type BookPackage = Readonly<{
  id: Id<'package'>;
  code: string;
  shopWords: string;
  customerWords: string;
  castingKind: string;
  taxClass: TaxClass;
  retired: boolean;
  items: readonly Readonly<{ kind: Id<'operation_kind'>; metal: 'any' | 'iron' | 'aluminium' }>[];
  /** By casting type. */
  rates: ReadonlyMap<number, readonly RateRow[]>;
}>;

export type PriceBook = Readonly<{
  kinds: ReadonlyMap<number, BookKind>;
  packages: ReadonlyMap<number, BookPackage>;
  factors: readonly FactorRow[];
  rules: readonly OrderRule[];
  groups: ReadonlyMap<string, ReadonlySet<string>>;
}>;

/** A casting with the facts that move prices and fits; `castingTypeId` null when it is only described. */
export type BookCasting = PricedCasting &
  FitCasting &
  Readonly<{ metal: MetalClass | 'not_known'; castingTypeId: number | null; typeName: string }>;

/** One step a line puts on a casting. */
export type DraftOperation = Readonly<{ kind: BookKind; units: number; planned: Seconds; unattended: Seconds }>;

export type Draft = Readonly<{
  words: string;
  shopWords: string;
  offer: Offer;
  operations: readonly DraftOperation[];
  /** A person has to say how many before it counts. */
  asksQuantity: boolean;
}>;

export type Refusal = Readonly<{
  /** What is the matter and what to do, as one or two sentences. */
  words: string;
  /** No price in force: the casting itself does not refuse it. */
  priceOnly: boolean;
  fits: readonly BookKind[];
}>;

export type Drafted = Readonly<{ draft: Draft } | { refusal: Refusal }>;

/** One operation asked for on one casting. `quantity` null: the casting's own count. */
export function draftOperation(
  book: PriceBook,
  kind: BookKind,
  casting: BookCasting,
  pricing: PricingDay,
  quantity: number | null,
): Drafted {
  const use = kind.uses.get(casting.kind);
  const refused = operationRefusal(book, kind, casting, quantity);
  if (refused || !use) return { refusal: refused ?? { words: '', priceOnly: false, fits: [] } };
  const offer = offerOn({ ...use, code: kind.code, taxClass: kind.taxClass }, casting, pricing, quantity);
  if (!offer) return { refusal: noPrice(kind.words, pricing) };
  return {
    draft: {
      words: capital(kind.customerWords),
      shopWords: capital(kind.words),
      offer,
      operations: [draftStep(kind, use, casting, quantity)],
      asksQuantity: quantity === null && use.countFrom === 'ask',
    },
  };
}

function operationRefusal(
  book: PriceBook,
  kind: BookKind,
  casting: BookCasting,
  quantity: number | null,
): Refusal | undefined {
  const counted = typedCount(kind.uses.get(casting.kind), casting, quantity);
  const fit = fitOf(fitKind(kind, casting.kind), counted);
  if (fit.fit === 'normal' || fit.fit === 'special') return undefined;
  const others = [...book.kinds.values()].filter((other) => !other.retired);
  const codes = fitsInstead(
    fitKind(kind, casting.kind),
    others.map((other) => fitKind(other, casting.kind)),
    casting,
  );
  return { words: fit.words, priceOnly: false, fits: others.filter((other) => codes.includes(other.code)) };
}

/** A count somebody typed stands, also where the catalogue knows none for this casting. */
function typedCount(use: BookUse | undefined, casting: BookCasting, quantity: number | null): BookCasting {
  if (!use || quantity === null || quantity <= 0) return casting;
  return { ...casting, counts: { ...casting.counts, [use.countFrom]: quantity } };
}

const fitKind = (kind: BookKind, castingKind: string): FitKind => ({
  code: kind.code,
  words: kind.words,
  section: kind.section,
  fits: kind.fits,
  countFrom: kind.uses.get(castingKind)?.countFrom ?? null,
  groups: kind.groups,
});

const noPrice = (words: string, { on }: PricingDay): Refusal => ({
  words: `${capital(words)} has no price on ${on}. Ask the owner to set one, or add it as a typed charge.`,
  priceOnly: true,
  fits: [],
});

/**
 * A package on one casting type, for so many castings of it.
 *
 * @param price an agreed price of one in place of the rate, or null
 */
export function draftPackage(
  book: PriceBook,
  pack: BookPackage,
  casting: BookCasting,
  pricing: PricingDay,
  more: Readonly<{ castings: number; price: PriceE4 | null }>,
): Drafted {
  if (pack.castingKind !== casting.kind) {
    const words = `${capital(pack.shopWords)} is for a ${pack.castingKind.replaceAll('_', ' ')}, not for this casting.`;
    return { refusal: { words, priceOnly: false, fits: [] } };
  }
  const inside = packageOperations(book, pack, casting);
  if ('refusal' in inside) return inside;
  const offer = packageOffer(pack, casting, pricing, more);
  if (!offer) return { refusal: noPrice(`${pack.shopWords} for ${casting.typeName}`, pricing) };
  const { operations } = inside;
  return {
    draft: {
      words: capital(pack.customerWords),
      shopWords: capital(pack.shopWords),
      offer,
      operations,
      asksQuantity: false,
    },
  };
}

function packageOffer(
  pack: BookPackage,
  casting: BookCasting,
  pricing: PricingDay,
  { castings, price }: Readonly<{ castings: number; price: PriceE4 | null }>,
): Offer | undefined {
  const rates = casting.castingTypeId === null ? [] : (pack.rates.get(casting.castingTypeId) ?? []);
  const sold = { code: pack.code, chargeUnit: 'each', countFrom: 'one', taxClass: pack.taxClass, rates } as const;
  if (price === null) return offerOn(sold, casting, pricing, castings);
  const terms: PriceTerms = {
    quantity: castings,
    per: PER_PIECE,
    unitPrice: price,
    factors: [],
    lineMinimum: 0 as Cents,
  };
  return {
    ...terms,
    amount: lineAmount(terms),
    working: lineWorking(terms, 'each'),
    unit: 'each',
    taxClass: pack.taxClass,
  };
}

/**
 * The operations of a package on this casting. What does not arise is left out. Where the metal is not iron, or not known,
 * the variant for aluminium is taken: it harms neither metal, and the bench still holds every wash until the metal is known.
 */
export function packageOperations(
  book: PriceBook,
  pack: BookPackage,
  casting: BookCasting,
): Readonly<{ operations: DraftOperation[] } | { refusal: Refusal }> {
  const metal = casting.metal === 'iron' ? 'iron' : 'aluminium';
  const operations: DraftOperation[] = [];
  for (const item of pack.items) {
    const kind = book.kinds.get(item.kind);
    if (!kind || (item.metal !== 'any' && item.metal !== metal)) continue;
    const use = kind.uses.get(casting.kind);
    const fit = fitOf(fitKind(kind, casting.kind), casting).fit;
    // A wash is held at the bench while the metal is not known; only a known metal refuses the package.
    if (fit === 'refused' && casting.metal !== 'not_known') {
      const words = `${capital(pack.shopWords)} holds ${kind.words}. ${fitOf(fitKind(kind, casting.kind), casting).words}`;
      return { refusal: { words, priceOnly: false, fits: [] } };
    }
    if (use && fit !== 'does not arise') operations.push(draftStep(kind, use, casting, null));
  }
  return { operations };
}

/** Units and times of one operation on one casting. */
function draftStep(kind: BookKind, use: BookUse, casting: BookCasting, quantity: number | null): DraftOperation {
  const hourly = use.chargeUnit === 'hour';
  const charged = quantity ?? usualQuantity(use.countFrom, casting.counts) ?? 0;
  const units = hourly ? 1 : Math.max(charged, 1);
  const secondsOf = ({ count, perUnit }: BookUse['times'][number]) => {
    if (hourly && count === 'charged') return Math.ceil((charged * perUnit) / 3600);
    const own = count === 'charged' || count === use.countFrom;
    return perUnit * (own ? charged : (casting.counts[count] ?? 0));
  };
  const work = use.times.reduce((sum, time) => sum + secondsOf(time), use.setup);
  return { kind, units, planned: seconds(work), unattended: seconds(use.unattended) };
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
