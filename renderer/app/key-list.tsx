/** F1: the keys of this page, over nothing; Esc or F1 closes. */
import { Button } from '../kit/button.tsx';
import { Keys } from '../kit/key-hints.tsx';
import { KEYBOARD, keysOf } from '../kit/keyboard.ts';
import css from './frame.module.css';

export function KeyList({ onClose }: { onClose: () => void }) {
  return (
    <section className={css.people} aria-label="Keys">
      {KEYBOARD.map((line) => (
        <span key={line.act}>
          <Keys keys={keysOf(line.act)} /> {line.words}
        </span>
      ))}
      <Button onPress={onClose}>Close</Button>
    </section>
  );
}
