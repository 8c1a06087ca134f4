/** How practice data is made: by sending ordinary commands, one after the other, under the people who would have sent them. */
import type { App, RequestName } from '#core/app-contract.ts';
import type { Reply } from '#core/host/reply.ts';
import type { InputOf, OutputOf } from '#core/kernel/contract.ts';

export type Replay = Readonly<{
  /** Send one request as the person with these initials; the owner when left out, nobody before the first run. */
  ask(name: string, input: unknown, initials?: string): Promise<Reply>;
  /** Set the clock to a UTC moment. */
  setClock(moment: string): void;
}>;

/** @throws Error with the sentence when the program refuses: practice data must never be forced in. */
export async function send<N extends RequestName>(
  replay: Replay,
  name: N,
  input: InputOf<App[N]>,
  initials?: string,
): Promise<OutputOf<App[N]>> {
  const reply = await replay.ask(name, input, initials);
  if (reply.ok) return reply.output as OutputOf<App[N]>;
  const { code, message, fields, reference } = reply.error;
  throw new Error(
    `${name} was refused: ${code}: ${message} ${JSON.stringify({ fields, reference, input }).slice(0, 1500)}`,
  );
}
