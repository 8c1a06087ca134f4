/** Everything the check-in page keeps: what is typed, where it is kept, its price and its promise. */
import { useCallback, useDeferredValue, useEffect, useRef } from 'react';
import { useLocation } from 'wouter';
import type { App } from '#core/app-contract.ts';
import type { OutputOf } from '#core/kernel/contract.ts';
import type { Client } from '../../../../client/client.ts';
import { RequestRefused } from '../../../../client/request-refused.ts';
import { useAppCommand, useAppQuery, useClient } from '../../../../client/use-app.ts';
import { keepTyped, useKeepSoon, useTyped } from '../../../../client/use-draft.ts';
import { useFormat } from '../../../../client/use-shop.ts';
import { papersAddress } from '../../../../kit/addresses.ts';
import { leftBehind } from '../left-behind.ts';
import { quoteInput, suggestionInput } from '../quote.ts';
import { checkInInput, partsAsked, troublesOf } from '../request.ts';
import { type CheckInTyped, EMPTY_CHECK_IN, isBegun, isCheckIn, titleOf } from '../typed.ts';

/** Name in this page's storage. */
const STORED = 'check-in';

export type SetTyped = (change: (before: CheckInTyped) => CheckInTyped) => void;

/** What is typed, kept here and on the host while it is typed. `setAside` keeps it and leaves an empty page. */
export function useCheckInTyped() {
  const client = useClient();
  const [typed, set] = useTyped<CheckInTyped>(STORED, EMPTY_CHECK_IN, isCheckIn);
  const draft = useRef(typed.draft);
  draft.current = typed.draft;
  const keep = useCallback(
    async (value: CheckInTyped) => {
      const kept = await client.call('devices/keep-draft', {
        draft: draft.current,
        kind: 'check_in',
        title: titleOf(value).slice(0, 200),
        body: JSON.stringify(value),
      });
      if (draft.current === null) set((before) => ({ ...before, draft: kept.draft }));
    },
    [client, set],
  );
  useKeepSoon(withoutDraft(typed), isBegun(typed), () => keep(typed));
  const clear = useCallback(() => {
    keepTyped(STORED, null);
    set(() => EMPTY_CHECK_IN);
  }, [set]);
  const setAside = useCallback(async () => {
    if (isBegun(typed)) await keep(typed);
    clear();
  }, [keep, typed, clear]);
  return { typed, set, setAside, clear };
}

/** A value that changes when what is typed changes, and not when the host has given it a draft number. */
const withoutDraft = (typed: CheckInTyped): string => JSON.stringify({ ...typed, draft: null });

/** Rush share of the shop in basis points; 0 until it is known. */
const useRush = (): number => useAppQuery('shop/get-settings', {}).data?.settings.rush ?? 0;

/** The price of what is typed, and what could be promised; the one before stays until the next is there. */
export function usePriceAndPromise(typed: CheckInTyped, set: SetTyped) {
  const { settings } = useFormat();
  const rush = useRush();
  const later = useDeferredValue(typed);
  const asked = quoteInput(later, settings, rush);
  const quote = useAppQuery('pricing/get-quote', asked ?? { castings: [] }, { enabled: asked !== null, keep: true });
  const wanted = suggestionInput(later);
  const suggestion = useAppQuery('promises/get-suggestion', wanted ?? { castings: [] }, {
    enabled: wanted !== null,
    keep: true,
  });
  const comfortable = wanted === null ? undefined : suggestion.data?.comfortable;
  useEffect(() => {
    if (!comfortable || typed.promise.byHand) return;
    const time = `${String(Math.floor(comfortable.minute / 60)).padStart(2, '0')}:${String(comfortable.minute % 60).padStart(2, '0')}`;
    if (typed.promise.day === comfortable.day && typed.promise.time === time) return;
    set((before) => ({ ...before, promise: { ...before.promise, day: comfortable.day, time } }));
  }, [comfortable, typed.promise, set]);
  return {
    quote: asked === null ? undefined : quote.data,
    quoteError: asked === null ? null : quote.error,
    suggestion: wanted === null ? undefined : suggestion.data,
  };
}

/** Sends everything as one command, then its pictures, then opens the ticket. */
export function useSendCheckIn(typed: CheckInTyped, clear: () => void) {
  const client = useClient();
  const [, go] = useLocation();
  const { settings } = useFormat();
  const rush = useRush();
  const command = useAppCommand('tickets/check-in-ticket');
  const troubles = troublesOf(typed, settings);
  const send = async () => {
    if (Object.keys(troubles).length > 0) return;
    const made = await command.send(checkInInput(typed, settings, rush));
    if (!made) return;
    const left = await sendTheRest(client, typed, made);
    if (left.length > 0) keepTyped(leftBehind(made.number), left);
    clear();
    go(`${papersAddress(made.number).slice(1)}/pile`);
  };
  return { command, troubles, send };
}

type Made = OutputOf<App['tickets/check-in-ticket']>;

/** Parts and pictures, once the castings have their tags. @returns what did not arrive, one sentence each */
async function sendTheRest(client: Client, typed: CheckInTyped, made: Made): Promise<readonly string[]> {
  const left: string[] = [];
  const attempt = async (words: string, act: () => Promise<unknown>) => {
    try {
      await act();
    } catch (thrown) {
      if (!(thrown instanceof RequestRefused)) throw thrown;
      left.push(`${words}: ${thrown.reply.message}`);
    }
  };
  const { ticketId } = made;
  for (const { at, part } of partsAsked(typed)) {
    const castingId = made.castings[at]?.castingId ?? null;
    await attempt('A part was not added', () => client.call('parts/add-part', { ticketId, castingId, part }));
  }
  for (const [at, casting] of typed.castings.entries()) {
    const castingId = made.castings[at]?.castingId ?? null;
    for (const { sha256, name } of casting.photos) {
      const caption = name.slice(0, 240);
      await attempt(`The picture ${caption} was not added`, () =>
        client.call('photos/add-photo', { ticketId, castingId, stage: 'arrival', caption, file: { sha256 } }),
      );
    }
  }
  return left;
}
