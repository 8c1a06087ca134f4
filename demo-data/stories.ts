/** The stories of the practice shop, side by side in the order of their days. */
import type { Replay } from './replay.ts';
import { makeBaton } from './stories/baton.ts';
import { makeStory, type Story } from './stories/kit.ts';
import { dayJob } from './stories/s01.ts';
import { crackAndWeld } from './stories/s02.ts';
import { wrongMetal } from './stories/s04.ts';
import { theDay } from './stories/today.ts';

const STORIES: readonly ((story: Story) => Promise<void>)[] = [dayJob, crackAndWeld, wrongMetal, theDay];

/** Play every story that the program can reach. */
export async function playStories(replay: Replay): Promise<void> {
  const baton = makeBaton(STORIES.length, (moment) => replay.setClock(moment));
  await Promise.all(STORIES.map((tell, order) => tell(makeStory(replay, baton, order)).finally(() => baton.leave())));
}
