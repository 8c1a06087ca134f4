/** Who acts on this page, and what they may do. */
import { useMemo } from 'react';
import type { App } from '#core/app-contract.ts';
import type { OutputOf } from '#core/kernel/contract.ts';
import type { Capability } from '#core/kernel/roles.ts';
import { useAppQuery, useLink } from './use-app.ts';

export type Me = OutputOf<App['staff/get-me']>;

/** The person who acts, undefined while nobody does. */
export function useMe(): Me | undefined {
  const { person } = useLink();
  return useAppQuery('staff/get-me', {}, { enabled: person !== null }).data;
}

/** What that person may do; empty while nobody acts. Screens offer only this; the host decides. */
export function useMay(): ReadonlySet<Capability> {
  const me = useMe();
  return useMemo(() => new Set((me?.may ?? []) as Capability[]), [me]);
}
