/** Keys as they are shown: in buttons, and in the foot of a page. */
import css from './key-hints.module.css';
import { FootKeys } from './slots.tsx';

/** One key or chord: `Ctrl Enter`. */
export function Keys({ keys }: { keys: string }) {
  return <kbd className={css.keys}>{keys}</kbd>;
}

export type KeyHint = Readonly<{ keys: readonly string[]; words: string }>;

/** The keys that work on this page, shown in the foot. */
export function KeyHints({ hints }: { hints: readonly KeyHint[] }) {
  return (
    <FootKeys>
      {hints.map((hint) => (
        <span key={hint.words}>
          {hint.keys.map((keys) => (
            <Keys key={keys} keys={keys} />
          ))}{' '}
          {hint.words}
        </span>
      ))}
    </FootKeys>
  );
}
