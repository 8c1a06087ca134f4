/**
 * Places of the frame that a page fills: the band's title and act, the keys in the foot.
 *
 * The frame is drawn once around all pages; a page writes into it from where it stands.
 */
import { createContext, useContext } from 'react';
import { createPortal } from 'react-dom';

/** The elements of the frame, null while it is being drawn. */
export type Slots = Readonly<{ title: Element | null; act: Element | null; keys: Element | null }>;

export const SlotsContext = createContext<Slots>({ title: null, act: null, keys: null });

const fill = (place: Element | null, children: React.ReactNode) => (place ? createPortal(children, place) : null);

/** What the band of a bench page says beside its name: `Guide and seat machine`. */
export function BandTitle({ children }: { children: React.ReactNode }) {
  return fill(useContext(SlotsContext).title, <h1>{children}</h1>);
}

/** The one way back of a bench page, at the band's end: a `Button`. */
export function BandAct({ children }: { children: React.ReactNode }) {
  return fill(useContext(SlotsContext).act, children);
}

/** Keys and short facts at the start of the foot. Use `KeyHints` for keys. */
export function FootKeys({ children }: { children: React.ReactNode }) {
  return fill(useContext(SlotsContext).keys, children);
}
