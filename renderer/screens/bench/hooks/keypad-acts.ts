/** The plus and the times key: all a keypad has besides digits, point, minus and Enter. */
import type { Question } from '../reading-question.ts';

export type KeypadActs = Readonly<{
  /** A figure in question is right as it is; else, with nothing typed, the figure before once more. */
  plus: () => void;
  /** The figure offered, or type again; else the last digit off; else, with nothing typed, undo. */
  times: () => void;
}>;

export function keypadActs({
  asked,
  text,
  take,
  again,
  same,
  setText,
  undo,
}: Readonly<{
  asked: Question | null;
  text: string;
  take: (text: string, sure: boolean) => void;
  again: () => void;
  same: (() => void) | undefined;
  setText: (text: string) => void;
  undo: (() => void) | undefined;
}>): KeypadActs {
  return {
    plus() {
      if (asked?.right) take(asked.right.typed, true);
      else if (!asked && text.trim() === '') same?.();
    },
    times() {
      const offered = asked?.choices[0];
      if (offered) take(offered.typed, true);
      else if (asked) again();
      else if (text !== '') setText(text.slice(0, -1));
      else undo?.();
    },
  };
}
