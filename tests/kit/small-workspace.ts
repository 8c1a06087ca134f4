/** A real workspace folder with one shop and one owner, quickly made. */

import { nobody } from '#core/host/session.ts';
import type { Workspace } from '#electron/wiring/open-workspace.ts';
import { openWorkspace } from '#electron/wiring/open-workspace.ts';

export const OWNER_PIN = '482915';
const COST = 2 ** 4;

/** Open a workspace; with a clock that stands still when one is given. */
export const openSmall = (folder: string, clock?: () => Date): Workspace =>
  openWorkspace(folder, { pinCost: COST, ...(clock && { clock }) });

/** The first run of an empty workspace. @returns the owner's id */
export async function firstRun(workspace: Workspace, device: number | null = null): Promise<number> {
  const reply = await workspace.answer(
    {
      name: 'shop/first-run',
      input: {
        name: 'Lantern Heads',
        currencyCode: 'USD',
        currencySign: '$',
        units: 'inch',
        paper: 'letter',
        timeZone: 'UTC',
        personName: 'Ada Ferrow',
        personInitials: 'AF',
        pin: OWNER_PIN,
      },
    },
    nobody(device as never, 'test', true),
  );
  if (!reply.ok) throw new Error(reply.error.message);
  return (reply.output as { staff: number }).staff;
}
