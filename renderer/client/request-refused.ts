/** A request that was refused, or that never arrived. Screens match `reply.code`, never the message. */
import type { ReplyError } from './wire.ts';

export class RequestRefused extends Error {
  override readonly name = 'RequestRefused';
  readonly reply: ReplyError;

  constructor(reply: ReplyError) {
    super(reply.message);
    this.reply = reply;
  }
}

/** The code of a request that got no answer at all. */
export const NOT_REACHED = 'client/not-reached';

/** No answer from the host: what was typed is still on the screen. */
export const notReached = (): RequestRefused =>
  new RequestRefused({
    kind: 'unavailable',
    code: NOT_REACHED,
    message: 'The shop computer does not answer. What you typed is still here. Look whether it runs, then try again.',
  });

/** An answer that is no reply of ours, for example a page of something between us and the host. */
export const notUnderstood = (): RequestRefused =>
  new RequestRefused({
    kind: 'unavailable',
    code: 'client/not-understood',
    message: 'Something else answered in place of the shop computer. What you typed is still here. Check the address.',
  });
