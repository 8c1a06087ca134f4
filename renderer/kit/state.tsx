/** Marks that say a person must move (paint), and the two marks of time: rush and late. */
import { classes } from './class-names.ts';
import css from './state.module.css';

/** Paint block, ink octagon, the reason in words, then its age or owner. `frame`: identity in doubt. */
export function Hold({ children, frame = false }: { children: React.ReactNode; frame?: boolean }) {
  return <span className={classes(css.hold, frame && css.frame)}>{children}</span>;
}

/** Slanted black parallelogram. */
export function Rush() {
  return <span className={css.rush}>RUSH</span>;
}

/** An ink word over a stroke of paint: `photo wanted`, `tell them`, `added A2`. */
export function Asked({ children }: { children: React.ReactNode }) {
  return <span className={css.asked}>{children}</span>;
}

/** Word and time in the late colour: `hone queue 2 h behind`. */
export function Late({ children }: { children: React.ReactNode }) {
  return <b className={css.late}>{children}</b>;
}

/** The part of a number that was looked for. */
export function Match({ children }: { children: React.ReactNode }) {
  return <mark className={css.match}>{children}</mark>;
}
