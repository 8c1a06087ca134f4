/** The dye band at the top: name, areas, find box, who. Its lower edge is graduated and a notch marks the area. */
import { useEffect, useRef } from 'react';
import { classes } from '../kit/class-names.ts';
import { Keys } from '../kit/key-hints.tsx';
import { keysOf } from '../kit/keyboard.ts';
import type { Area } from './areas.ts';
import css from './band.module.css';

export type FindBox = Readonly<{
  text: string;
  /** Counts its changes; each one puts the hand into the box. */
  asked: number;
  onText(text: string): void;
  onKey(key: string): boolean;
}>;

export function Band({
  areas,
  at,
  practice,
  bench,
  find,
  who,
  titleRef,
  actRef,
}: {
  areas: readonly Area[];
  at: string | undefined;
  practice: boolean;
  bench: boolean;
  find: FindBox | null;
  who: React.ReactNode;
  titleRef: (place: Element | null) => void;
  actRef: (place: Element | null) => void;
}) {
  return (
    <header className={classes(css.band, bench && css.bench)}>
      <span className={css.name}>{bench ? 'Bench' : 'Benchtag'}</span>
      {practice && <span className={css.practice}>PRACTICE</span>}
      {bench && <span className={css.title} ref={titleRef} />}
      {!bench && (
        <nav className={css.areas} aria-label="Areas">
          {areas.map((area) => (
            <a key={area.key} href={`#${area.path}`} aria-current={area.key === at ? 'page' : undefined}>
              {area.words}
            </a>
          ))}
        </nav>
      )}
      {find && <FindField find={find} bench={bench} />}
      {who}
      <span className={css.act} ref={actRef} />
    </header>
  );
}

/** The band before anybody works here: name, shop, and whether it is the practice shop. */
export function PlainBand({ words, practice = false }: { words: string; practice?: boolean }) {
  return (
    <header className={classes(css.band, css.plain)}>
      <span className={css.name}>Benchtag</span>
      {practice && <span className={css.practice}>PRACTICE</span>}
      <span>{words}</span>
    </header>
  );
}

function FindField({ find, bench }: { find: FindBox; bench: boolean }) {
  const box = useRef<HTMLInputElement>(null);
  useEffect(() => {
    if (find.asked === 0) return;
    box.current?.focus();
    box.current?.select();
  }, [find.asked]);
  return (
    <search className={css.findbox}>
      <input
        ref={box}
        aria-label="Find: phone, name, tag, casting number, order number"
        placeholder={bench ? 'Find: tag, casting no.' : 'Find: phone, name, tag, casting no., order no.'}
        autoComplete="off"
        spellCheck={false}
        value={find.text}
        onChange={(event) => find.onText(event.target.value)}
        onKeyDown={(event) => {
          if (event.ctrlKey || event.altKey || event.metaKey) return;
          if (find.onKey(event.key)) {
            event.preventDefault();
            event.stopPropagation();
          }
        }}
      />
      {!bench && <Keys keys={find.text === '' ? keysOf('find') : 'Esc'} />}
    </search>
  );
}
