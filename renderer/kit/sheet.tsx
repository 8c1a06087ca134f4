/** White sheets on the plate, and the ruled title block that heads a page. */
import { useId } from 'react';
import { classes } from './class-names.ts';
import css from './sheet.module.css';

/** A sheet with a ruled head. Never one inside another; a second head inside is `SheetHead`. */
export function Sheet({
  title,
  note,
  end,
  children,
  scroll = false,
  stop = false,
}: {
  title: React.ReactNode;
  /** Small words after the title. */
  note?: React.ReactNode;
  /** Small words or a button at the end of the head. */
  end?: React.ReactNode;
  children?: React.ReactNode;
  /** The sheet scrolls inside when its content is longer than its place. */
  scroll?: boolean;
  /** It holds nothing to focus: the sheet itself is a stop, so that it can be scrolled by keyboard. */
  stop?: boolean;
}) {
  const heading = useId();
  return (
    <section
      className={classes(css.sheet, scroll && css.scroll)}
      aria-labelledby={heading}
      tabIndex={stop ? 0 : undefined}
    >
      <SheetHead id={heading} title={title} note={note} end={end} />
      {children}
    </section>
  );
}

/** The ruled head, also for a second part lower on the same sheet. */
export function SheetHead({
  title,
  note,
  end,
  id,
}: {
  title: React.ReactNode;
  note?: React.ReactNode;
  end?: React.ReactNode;
  id?: string;
}) {
  return (
    <div className={css.head}>
      <h2 id={id}>{title}</h2>
      {note && <small>{note}</small>}
      {end && <small className={css.end}>{end}</small>}
    </div>
  );
}

/** Buttons at the foot of a sheet, ruled off; they share the width. */
export function SheetFoot({ children }: { children: React.ReactNode }) {
  return <div className={css.foot}>{children}</div>;
}

/** Inner space of a sheet for words and fields. */
export function SheetBody({ children }: { children: React.ReactNode }) {
  return <div className={css.body}>{children}</div>;
}

/** What an empty sheet says: one sentence about what will stand there. */
export function Empty({ children }: { children: React.ReactNode }) {
  return <p className={css.empty}>{children}</p>;
}

/** The title block of a shop drawing: fixed facts, biggest number first. 4 to 8 cells. */
export function TitleBlock({
  columns,
  children,
}: {
  /** grid-template-columns */ columns: string;
  children: React.ReactNode;
}) {
  return (
    <dl className={css.block} style={{ '--columns': columns } as React.CSSProperties}>
      {children}
    </dl>
  );
}

/** The name of a page, for a screen reader and the window's title; the page itself shows it by what stands on it. */
export function PageName({ children }: { children: string }) {
  return (
    <>
      <title>{`${children} - Benchtag`}</title>
      <h1 className={css.spoken}>{children}</h1>
    </>
  );
}

/** Label over value. */
export function TitleCell({
  label,
  note,
  big = false,
  children,
}: {
  label: string;
  note?: React.ReactNode;
  big?: boolean;
  children: React.ReactNode;
}) {
  return (
    <div className={css.cell}>
      <dt>{label}</dt>
      <dd className={big ? css.big : undefined}>
        {children} {note && <small>{note}</small>}
      </dd>
    </div>
  );
}
