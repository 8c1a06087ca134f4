/** Going on to the next place: keeps what is typed, or stays with a question about it. */
import { useRef, useState } from 'react';
import type { Preview } from '../bench-casting.ts';
import { type Question, questionOf } from '../reading-question.ts';
import { isWords, type Spot } from '../reading-view.ts';
import type { TableHand } from './use-table-hand.ts';

/** A question stands at its place until the text there changes. */
type Asked = Readonly<{ place: string; text: string; question: Question }>;

type Options = Readonly<{
  hand: TableHand;
  spot: Spot | null;
  place: string;
  fresh: Preview | undefined;
  ask: () => Promise<Preview | undefined>;
  keep: (to: Spot, typed: string, sure: boolean, preview?: Preview) => void;
}>;

export function useNext({ hand, spot, place, fresh, ask, keep }: Options) {
  const [asked, setAsked] = useState<Asked | null>(null);
  const typing = hand.text.trim();
  const latest = useRef('');
  latest.current = typing;

  function next(): void {
    if (typing === '' || !spot) hand.step(1);
    else if (fresh || isWords(spot.row)) seen(spot, fresh);
    else unseen(spot);
  }
  function seen(from: Spot, preview: Preview | undefined): void {
    const question = preview ? questionOf(preview, typing) : null;
    if (question) setAsked({ place, text: typing, question });
    else {
      keep(from, typing, false, preview);
      hand.step(1);
    }
  }
  /**
   * A gauge types faster than the answer to its last digit comes, and its next figure must not run into this one: the hand
   * goes on at once, and comes back when there is a question and nothing else is being typed. Else the host refuses the
   * figure and it waits at its place.
   */
  function unseen(from: Spot): void {
    const { at } = hand;
    const coming = ask();
    hand.step(1);
    void coming.then((preview) => {
      const question = preview ? questionOf(preview, typing) : null;
      if (!question || !at || latest.current !== '') return keep(from, typing, false, preview);
      setAsked({ place, text: typing, question });
      hand.putBack(at, typing);
    });
  }

  return {
    next,
    question: asked?.place === place && asked.text === typing ? asked.question : null,
    drop: () => setAsked(null),
  };
}
