/** A bench screen with a host that answers by request name; what was sent is remembered. */
import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { render } from '@testing-library/react';
import type { ReactNode } from 'react';
import type { RequestName } from '#core/app-contract.ts';
import { createClient } from '#renderer/client/client.ts';
import { createOutbox } from '#renderer/client/outbox.ts';
import { memoryStorage } from '#renderer/client/outbox-storage.ts';
import { notReached } from '#renderer/client/request-refused.ts';
import type { Transport } from '#renderer/client/transport.ts';
import { ClientContext, refreshOnChange } from '#renderer/client/use-app.ts';
import { OutboxContext } from '#renderer/client/use-outbox.ts';
import type { ReplyError, Request } from '#renderer/client/wire.ts';

const AT = '2026-03-09T14:00:00.000Z';
/** An answer, or what it is for a given input; a `Refusal` is a no. */
type Answer = unknown | ((input: never) => unknown);
export class Refusal {
  readonly error: ReplyError;
  constructor(error: ReplyError) {
    this.error = error;
  }
}

export type Answers = Partial<Record<RequestName, Answer>>;

const USUAL: Answers = {
  'shop/get-face': { language: 'en', currencySign: '', hourClock: '24', timeZone: 'UTC' },
  'staff/list-sign-in-names': {
    device: 'tablet',
    people: [
      { staff: 7, name: 'Dervla Kestane', initials: 'DK', signedInHere: true },
      { staff: 9, name: 'Sami Okkerbee', initials: 'SO', signedInHere: true },
    ],
  },
  'staff/sign-in': { signedIn: true, me: {} },
};

export function showBench(screen: ReactNode, answers: Answers) {
  const sent: Request[] = [];
  const line = { there: true };
  const all: Answers = { ...USUAL, ...answers };
  const transport: Transport = {
    async call(request) {
      sent.push(request);
      if (!line.there) throw notReached();
      const answer = all[request.name as RequestName];
      if (answer === undefined) throw new Error(`no answer for ${request.name}`);
      const output = typeof answer === 'function' ? answer(request.input as never) : answer;
      if (output instanceof Refusal) return { ok: false, error: output.error };
      return { ok: true, output, touched: [], at: AT };
    },
    listen: () => () => undefined,
  };
  const client = createClient(transport);
  client.actAs(7);
  const queries = new QueryClient({
    defaultOptions: { queries: { retry: false, staleTime: Number.POSITIVE_INFINITY } },
  });
  refreshOnChange(client, queries);
  const outbox = createOutbox(client, memoryStorage());
  const view = render(
    <QueryClientProvider client={queries}>
      <ClientContext value={client}>
        <OutboxContext value={outbox}>{screen}</OutboxContext>
      </ClientContext>
    </QueryClientProvider>,
  );
  /** Commands of one name, in order. */
  const inputs = (name: RequestName) => sent.filter((one) => one.name === name).map((one) => one.input);
  return { ...view, sent, inputs, line, outbox };
}
