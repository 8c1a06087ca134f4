/**
 * Lets several stories run side by side in one order of time: whoever waits for the earliest moment goes on next.
 *
 * Each story is an ordinary async function that says `await at('2027-03-02 07:40')` before it acts. Only one acts at a time,
 * so the clock never goes back and two runs give the same order (ties go to the story that was named first).
 */
type Waiting = Readonly<{ moment: string; order: number; go(): void }>;

export type Baton = Readonly<{
  /** Wait until it is this UTC moment's turn. */
  until(moment: string, order: number): Promise<void>;
  /** A story is over. */
  leave(): void;
}>;

/** @param stories how many take part */
export function makeBaton(stories: number, setClock: (moment: string) => void): Baton {
  const waiting: Waiting[] = [];
  let here = stories;
  const next = (): void => {
    if (waiting.length < here || waiting.length === 0) return;
    waiting.sort((a, b) => (a.moment === b.moment ? a.order - b.order : a.moment < b.moment ? -1 : 1));
    const first = waiting.shift();
    if (!first) return;
    setClock(first.moment);
    first.go();
  };
  return {
    until: (moment, order) =>
      new Promise((go) => {
        waiting.push({ moment, order, go });
        next();
      }),
    leave() {
      here -= 1;
      next();
    },
  };
}
