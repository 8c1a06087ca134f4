/** The five areas. An area stands in the band when its screens are built in and the person may see it. */
import { type ComponentType, type LazyExoticComponent, lazy } from 'react';
import type { Capability } from '#core/kernel/roles.ts';

export type AreaKey = 'counter' | 'bench' | 'racks' | 'books' | 'shop';

export type Area = Readonly<{
  key: AreaKey;
  words: string;
  path: string;
  /** What a person must be allowed to see it. */
  needs: Capability;
  Routes: LazyExoticComponent<ComponentType>;
}>;

type AreaModule = Readonly<{ Routes: ComponentType }>;

/** The area screens that exist; each is fetched when it is first opened. */
const files = import.meta.glob<AreaModule>('../screens/*/routes.tsx');

const WORDS: readonly (readonly [AreaKey, string, Capability])[] = [
  ['counter', 'Counter', 'tickets:see'],
  ['bench', 'Bench', 'floor:work'],
  ['racks', 'Racks', 'floor:work'],
  ['books', 'Books', 'money:see'],
  ['shop', 'Shop', 'shop:edit'],
];

/** In the order of the band. */
const areas: readonly Area[] = WORDS.flatMap(([key, words, needs]) => {
  const load = files[`../screens/${key}/routes.tsx`];
  if (!load) return [];
  return [{ key, words, path: `/${key}`, needs, Routes: lazy(async () => ({ default: (await load()).Routes })) }];
});

/** The areas a person may see. */
export const areasFor = (may: ReadonlySet<Capability>): readonly Area[] => areas.filter((area) => may.has(area.needs));
