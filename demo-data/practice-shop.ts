/**
 * Makes the practice shop in a folder: opens an ordinary workspace and replays its story as ordinary commands, under the
 * people and at the moments that the story names. Two runs differ in secrets only.
 */
import { openWorkspace } from '#electron/wiring/open-workspace.ts';
import { commandLineSession } from '#electron/wiring/sessions.ts';
import { loadShop } from './load-shop.ts';
import type { Replay } from './replay.ts';
import { playStories } from './stories.ts';

/** Small: the practice PINs are printed, a slow hash protects nothing here. */
const PRACTICE_PIN_COST = 2 ** 10;

/** @throws Error with the sentence of the first command that is refused. */
export async function makePracticeShop(folder: string): Promise<void> {
  let now = new Date('2026-01-05T14:00:00.000Z');
  const workspace = openWorkspace(folder, { clock: () => now, pinCost: PRACTICE_PIN_COST });
  try {
    const replay: Replay = {
      ask: (name, input, initials = 'OB') => {
        const session = commandLineSession(workspace.host(), initials);
        return workspace.answer({ name, input }, { ...session, from: 'practice shop' });
      },
      setClock: (moment) => {
        now = new Date(moment);
      },
    };
    await loadShop(replay, { stopNow: false });
    await playStories(replay);
  } finally {
    await workspace.close();
  }
}
