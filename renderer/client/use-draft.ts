/**
 * What is being typed, kept as it is typed: on the host under the person's name, and in this page's own storage, which
 * holds when the host is away.
 */
import { useCallback, useEffect, useRef, useState } from 'react';
import { useClient } from './use-app.ts';

const storageName = (name: string): string => `benchtag-typed-${name}`;

/** What this page kept under a name, or null. Storage that is shut or text that is none of ours counts as nothing. */
export function readTyped<T>(name: string, accept: (value: unknown) => value is T): T | null {
  try {
    const text = sessionStorage.getItem(storageName(name));
    const value: unknown = text === null ? null : JSON.parse(text);
    return accept(value) ? value : null;
  } catch {
    return null;
  }
}

/** Keeps in this page's storage. A full or shut storage is no reason to stop anybody typing. */
export function keepTyped(name: string, value: unknown): void {
  try {
    if (value === null) sessionStorage.removeItem(storageName(name));
    else sessionStorage.setItem(storageName(name), JSON.stringify(value));
  } catch {
    // The host keeps it as well.
  }
}

/** A state that survives leaving the page and a reload, under `name`. Forget it with `keepTyped(name, null)`. */
export function useTyped<T>(
  name: string,
  start: T,
  accept: (value: unknown) => value is T,
): [T, (change: (before: T) => T) => void] {
  const [value, setValue] = useState<T>(() => readTyped(name, accept) ?? start);
  const set = useCallback(
    (change: (before: T) => T) => {
      setValue((before) => {
        const after = change(before);
        keepTyped(name, after);
        return after;
      });
    },
    [name],
  );
  return [value, set];
}

const PAUSE_MS = 700;

/**
 * Calls `keep` with the newest value a moment after typing stops, and once more when the page is left.
 *
 * @returns the moment last kept, or null
 */
export function useKeepSoon<T>(value: T, dirty: boolean, keep: (value: T) => Promise<unknown>): string | null {
  const client = useClient();
  const [keptAt, setKeptAt] = useState<string | null>(null);
  const latest = useRef({ value, dirty, keep });
  latest.current = { value, dirty, keep };
  // biome-ignore lint/correctness/useExhaustiveDependencies: the value starts the wait anew.
  useEffect(() => {
    if (!dirty) return;
    const timer = setTimeout(() => {
      latest.current
        .keep(latest.current.value)
        .then(() => setKeptAt(client.link().keptAt))
        // Kept in this page's storage; the next pause tries again.
        .catch(() => setKeptAt(null));
    }, PAUSE_MS);
    return () => clearTimeout(timer);
  }, [value, dirty, client]);
  return keptAt;
}
