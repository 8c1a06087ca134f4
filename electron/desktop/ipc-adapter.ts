/**
 * The window's one channel: `app:call` takes a request and answers a reply, as http does. What was done elsewhere is told on
 * `app:changed`. Only our own page in our own window's main frame is heard.
 */
import type { IpcMain, IpcMainInvokeEvent } from 'electron';
import { toReplyError } from '#core/host/failure.ts';
import type { Reply, Request } from '#core/host/reply.ts';
import type { DeviceId } from '#core/kernel/ids.ts';
import { resolveSession } from '#core/staff/handlers/sessions.ts';
import type { RunningApp } from '../wiring/open-app.ts';
import { isOurAddress } from './app-protocol.ts';
import type { Papers } from './papers.ts';

export const CALL = 'app:call';
export const CHANGED = 'app:changed';

type Answering = Readonly<{
  app: RunningApp;
  /** This window's device in the workspace of the moment. */
  device(): Promise<DeviceId>;
  papers: Papers;
}>;

type Sender = Pick<IpcMainInvokeEvent, 'senderFrame'>;

/** True for our page in a main frame; a frame inside it, a PDF or anything else is not heard. */
function isOurs(event: Sender): boolean {
  const frame = event.senderFrame;
  return frame !== null && frame.parent === null && isOurAddress(frame.url);
}

/** Listen on the channel. */
export function answerIpc(ipcMain: Pick<IpcMain, 'handle'>, answering: Answering): void {
  ipcMain.handle(CALL, async (event: IpcMainInvokeEvent, request: unknown): Promise<Reply> => {
    try {
      if (!isOurs(event)) return refused('desktop/not-ours', 'This page may not ask.');
      if (!isRequest(request)) return refused('desktop/no-name', 'The request has no name.');
      const own = await answering.papers.answer(request);
      if (own) return own;
      const device = await answering.device();
      const session = resolveSession(answering.app.host(), {
        device,
        as: request.as,
        from: 'desktop',
        atTheMachine: true,
      });
      return await answering.app.answer(request, session);
    } catch (error) {
      return { ok: false, error: toReplyError(error, answering.app.host(), CALL) };
    }
  });
}

const isRequest = (value: unknown): value is Request =>
  typeof value === 'object' && value !== null && 'name' in value && typeof value.name === 'string';
const refused = (code: string, message: string): Reply => ({
  ok: false,
  error: { kind: 'not-allowed', code, message },
});
