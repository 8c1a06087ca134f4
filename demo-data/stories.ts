/** The stories of the practice shop in the order of their days. */
import type { Workspace } from '#electron/wiring/open-workspace.ts';
import type { Replay } from './replay.ts';

/** Play every story that the program can reach. */
export async function playStories(_replay: Replay, _workspace: Workspace): Promise<void> {}
