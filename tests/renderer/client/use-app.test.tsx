import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { act, cleanup, renderHook, waitFor } from '@testing-library/react';
import type { ReactNode } from 'react';
import { afterEach, describe, expect, it } from 'vitest';
import { createClient } from '#renderer/client/client.ts';
import { notReached } from '#renderer/client/request-refused.ts';
import type { Transport } from '#renderer/client/transport.ts';
import { ClientContext, isStale, useAppCommand } from '#renderer/client/use-app.ts';
import type { Reply, Request } from '#renderer/client/wire.ts';

afterEach(cleanup);

function around(answer: (request: Request, times: number) => Reply | Error) {
  const sent: Request[] = [];
  const transport: Transport = {
    call: async (request) => {
      sent.push(request);
      const reply = answer(request, sent.length);
      if (reply instanceof Error) throw reply;
      return reply;
    },
    listen: () => () => undefined,
  };
  const client = createClient(transport);
  const queries = new QueryClient();
  const wrapper = ({ children }: { children: ReactNode }) => (
    <QueryClientProvider client={queries}>
      <ClientContext value={client}>{children}</ClientContext>
    </QueryClientProvider>
  );
  return { wrapper, sent };
}

const ok: Reply = { ok: true, output: {}, touched: [], at: '2026-03-09T14:00:00.000Z' };
const refused = (code: string): Reply => ({ ok: false, error: { kind: 'not-allowed', code, message: 'No.' } });

describe('useAppCommand', () => {
  it('sends the same input again under the same key after a lost answer, so that it is done once', async () => {
    const { wrapper, sent } = around((_, times) => (times === 1 ? notReached() : ok));
    const { result } = renderHook(() => useAppCommand('staff/sign-out'), { wrapper });

    await act(() => result.current.send({}));
    const lost = result.current.error;
    await act(() => result.current.send({}));
    await act(() => result.current.send({}));

    expect(lost?.reply.code).toBe('client/not-reached');
    expect(sent[1]?.key).toBe(sent[0]?.key);
    expect(sent[2]?.key).not.toBe(sent[0]?.key);
    expect(result.current.error).toBeNull();
  });

  it('asks for the PIN and then sends what was sent before', async () => {
    const { wrapper, sent } = around((request) => {
      if (request.pin === undefined) return refused('staff/pin-again');
      return request.pin === '7401' ? ok : refused('staff/pin-wrong');
    });
    const { result } = renderHook(() => useAppCommand('devices/drop-draft'), { wrapper });
    let answer: unknown = 'waits';
    act(() => void result.current.send({ draft: 3 }).then((output) => (answer = output)));
    await waitFor(() => expect(result.current.wantsPin).toBe(true));
    expect(result.current.error).toBeNull();

    await act(() => result.current.givePin('1111'));
    expect(result.current.wantsPin).toBe(true);
    expect(result.current.error?.reply.code).toBe('staff/pin-wrong');
    await act(() => result.current.givePin('7401'));

    expect(answer).toEqual({});
    expect(result.current.wantsPin).toBe(false);
    expect(new Set(sent.map((request) => request.key)).size).toBe(1);
    expect(sent.map((request) => request.input)).toEqual([{ draft: 3 }, { draft: 3 }, { draft: 3 }]);
  });

  it('leaves everything as it was when the PIN is not given', async () => {
    const { wrapper } = around(() => refused('staff/pin-again'));
    const { result } = renderHook(() => useAppCommand('staff/sign-out'), { wrapper });
    let answer: unknown = 'waits';
    act(() => void result.current.send({}).then((output) => (answer = output)));
    await waitFor(() => expect(result.current.wantsPin).toBe(true));

    act(() => result.current.dropPin());
    await act(async () => undefined);

    expect(answer).toBeUndefined();
    expect(result.current.wantsPin).toBe(false);
  });
});

describe('isStale', () => {
  it.each([
    ['an answer about no one ticket, after any command', 'home/get-counter', undefined, 'lines/x', [5], true],
    ['an answer about another ticket', 'tickets/get-ticket', 4, 'lines/x', [5], false],
    ['an answer about this ticket', 'tickets/get-ticket', 5, 'lines/x', [5], true],
    ['a command that names no ticket', 'tickets/get-ticket', 4, 'shop/x', [], true],
    ['a draft that is kept, for the lists of drafts', 'devices/list-drafts', undefined, 'devices/keep-draft', [], true],
    ['a draft that is kept, for all other answers', 'home/get-counter', undefined, 'devices/keep-draft', [], false],
  ])('%s', (_, query, ticket, name, touched, stale) => {
    expect(isStale(query, ticket, [{ name, touched }])).toBe(stale);
  });
});
