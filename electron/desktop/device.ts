/** This window as a paired device: its token lies in the program's own folder, readable by this person only. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { readDb } from '#core/db/query.ts';
import { everything } from '#core/host/session.ts';
import type { DeviceId } from '#core/kernel/ids.ts';
import { findDevice } from '#core/staff/store.ts';
import type { RunningApp } from '../wiring/open-app.ts';
import { hashToken } from '../wiring/sessions.ts';

/** The device of this window in the workspace of the moment; paired at first use. */
export function makeDesktopDevice(app: RunningApp, tokenFile: string): () => Promise<DeviceId> {
  const token = existsSync(tokenFile) ? readFileSync(tokenFile, 'utf8').trim() : app.host().secret();
  if (!existsSync(tokenFile)) writeFileSync(tokenFile, token, { mode: 0o600 });
  const tokenHash = hashToken(token);
  const find = () => findDevice(readDb(app.host().sqlite), tokenHash)?.id;
  return async () => {
    const known = find();
    if (known !== undefined) return known;
    await app
      .workspace()
      .answer(
        { name: 'devices/pair-device', input: { name: 'This computer', kind: 'desktop', tokenHash } },
        everything('desktop'),
      );
    const paired = find();
    if (paired === undefined) throw new Error('this window could not be paired with the workspace');
    return paired;
  };
}
