/** The outbox in the browser's own database, which holds over a reload and a restart of the tablet. */
import type { Entry, OutboxStorage } from './outbox.ts';

const DATABASE = 'benchtag';
const STORE = 'outbox';

/** Entries in IndexedDB. Every call fails when the browser keeps none (a private window). */
export function browserStorage(factory: IDBFactory = indexedDB): OutboxStorage {
  let opened: Promise<IDBDatabase> | null = null;
  const open = () => {
    opened ??= openDatabase(factory).catch((error: unknown) => {
      opened = null;
      throw error;
    });
    return opened;
  };
  return {
    async list() {
      const store = (await open()).transaction(STORE, 'readonly').objectStore(STORE);
      return done<Entry[]>(store.getAll());
    },
    async put(entry) {
      const change = (await open()).transaction(STORE, 'readwrite', { durability: 'strict' });
      change.objectStore(STORE).put(entry);
      await finished(change);
    },
    async remove(key) {
      const change = (await open()).transaction(STORE, 'readwrite');
      change.objectStore(STORE).delete(key);
      await finished(change);
    },
  };
}

function openDatabase(factory: IDBFactory): Promise<IDBDatabase> {
  const request = factory.open(DATABASE, 1);
  request.onupgradeneeded = () => request.result.createObjectStore(STORE, { keyPath: 'key' });
  return done(request);
}

const done = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });

const finished = (change: IDBTransaction): Promise<void> =>
  new Promise((resolve, reject) => {
    change.oncomplete = () => resolve();
    change.onerror = () => reject(change.error);
    change.onabort = () => reject(change.error);
  });

/** Entries in this page only, for tests and where the browser keeps nothing. */
export function memoryStorage(before: readonly Entry[] = []): OutboxStorage {
  const kept = new Map(before.map((entry) => [entry.key, entry]));
  return {
    list: () => Promise.resolve([...kept.values()]),
    put: (entry) => Promise.resolve(void kept.set(entry.key, entry)),
    remove: (key) => Promise.resolve(void kept.delete(key)),
  };
}
