/**
 * Which engines a quantity is for. A row that cannot arise on a casting is left out of its tables; where the engine or its
 * cam is not known it stays, and says what is wanted. Pure.
 */

/** A V engine's manifold, decks of two banks, an overhead cam's drive, a pushrod engine's lifters, a pair of heads, fuel. */
export const ONLY_FOR = ['v engine', 'two banks', 'overhead cam', 'pushrods', 'pair', 'petrol', 'diesel'] as const;
export type OnlyFor = (typeof ONLY_FOR)[number];

/** What is known of a casting; null where nobody said. */
export type Applied = Readonly<{
  layout: 'inline' | 'v' | 'flat' | 'single' | null;
  camLayout: 'none' | 'side' | 'ohv' | 'sohc' | 'dohc';
  fuel: string;
  hasPair: boolean;
  /** A block with two decks. */
  hasBanks: boolean;
}>;

/** @returns true for a quantity of every engine. */
export function applies(onlyFor: OnlyFor | null, { layout, camLayout, fuel, hasPair, hasBanks }: Applied): boolean {
  switch (onlyFor) {
    case null:
      return true;
    case 'v engine':
      return layout === 'v' || layout === null;
    case 'two banks':
      return hasBanks;
    case 'overhead cam':
      return camLayout === 'sohc' || camLayout === 'dohc' || camLayout === 'none';
    case 'pushrods':
      return camLayout === 'ohv' || camLayout === 'none';
    case 'pair':
      return hasPair;
    case 'diesel':
      return fuel === 'diesel';
    case 'petrol':
      return fuel !== 'diesel';
  }
}
