/** One field for all that can be asked of a casting: operations and packages of the catalogue, or the customer's words. */
import { useState } from 'react';
import type { App } from '#core/app-contract.ts';
import type { DrawnKind } from '#core/drawing/drawn-type.ts';
import type { OutputOf } from '#core/kernel/contract.ts';
import { useAppQuery } from '../../../client/use-app.ts';
import { useFormat } from '../../../client/use-shop.ts';
import { Suggest } from '../../../kit/suggest.tsx';
import { plain } from '../check-in/find-type.ts';
import type { Material, WishTyped } from '../check-in/typed.ts';
import { isHourly } from './quantity.ts';

type Kind = OutputOf<App['operations/list-kinds']>['kinds'][number];
type Package = OutputOf<App['operations/list-packages']>['packages'][number];
type Stock = OutputOf<App['parts/list-stock']>['items'][number];
export type Picked = Readonly<{ operation: Kind } | { package: Package } | { part: Stock } | { said: string }>;

/** The facts of a casting by which work fits it. */
export type WishFor = Readonly<{ kind: DrawnKind | null; material: Material | null; typeId: number | null }>;

/** What was picked as a thing asked for. */
export const wishOf = (
  picked: Picked,
  castingKind: DrawnKind | null | undefined,
): Omit<WishTyped, 'key' | 'castings'> => {
  const empty = { said: '', quantity: '', note: '' };
  if ('said' in picked) {
    return {
      ...empty,
      kind: 'said',
      id: null,
      code: null,
      words: picked.said,
      customerWords: picked.said,
      said: picked.said,
    };
  }
  if ('part' in picked) {
    const { id, code, words } = picked.part;
    return { ...empty, kind: 'part', id, code, words, customerWords: words, quantity: '1' };
  }
  const one = 'operation' in picked ? picked.operation : picked.package;
  return {
    ...empty,
    kind: 'operation' in picked ? 'operation' : 'package',
    id: one.id,
    code: one.code,
    words: one.shopWords,
    customerWords: one.customerWords,
    hourly: 'operation' in picked && isHourly(picked.operation, castingKind),
  };
};

export function WishField({
  casting,
  onPick,
  parts = false,
}: {
  casting: WishFor | undefined;
  onPick: (picked: Picked) => void;
  /** Parts of the stock may be picked too. */
  parts?: boolean;
}) {
  const [text, setText] = useState('');
  const format = useFormat();
  const kind = casting?.kind ?? undefined;
  const facts = kind && {
    castingKind: kind,
    material: casting?.material ?? ('not_known' as const),
    castingType: casting?.typeId ?? null,
  };
  const kinds = useAppQuery('operations/list-kinds', facts ? { for: facts } : {}, { keep: true }).data?.kinds ?? [];
  const packages =
    useAppQuery('operations/list-packages', kind ? { castingKind: kind } : {}, { keep: true }).data?.packages ?? [];
  const stock = useAppQuery('parts/list-stock', {}, { enabled: parts }).data?.items ?? [];
  const asked = plain(text);
  const meets = (one: { shopWords: string; customerWords: string; code: string }) =>
    asked.split(' ').every((word) => plain(`${one.shopWords} ${one.customerWords} ${one.code}`).includes(word));
  const begins = (one: { shopWords: string }) => Number(plain(one.shopWords).startsWith(asked));
  const found = [
    ...packages.filter(meets).map((one) => ({
      key: `p${one.id}`,
      words: one.shopWords,
      note: `package, ${one.items.length} inside`,
      value: { package: one },
      first: begins(one),
    })),
    ...kinds
      .filter((one) => !one.retired && one.fit !== 'does_not_arise' && meets(one))
      .map((one) => ({
        key: `o${one.id}`,
        words: one.shopWords,
        note: one.fit === 'refused' ? (one.why ?? 'does not fit') : one.customerWords,
        value: { operation: one },
        first: begins(one),
      })),
    ...stock
      .filter((one) => asked.split(' ').every((word) => plain(`${one.words} ${one.code}`).includes(word)))
      .map((one) => ({
        key: `s${one.id}`,
        words: one.words,
        note: one.listPrice === null ? 'part, no price' : `part, ${format.price(one.listPrice)}`,
        value: { part: one },
        first: Number(plain(one.words).startsWith(asked)),
      })),
  ]
    .toSorted((a, b) => b.first - a.first)
    .slice(0, 8);
  return (
    <Suggest<Picked>
      label="Work asked for"
      quiet
      placeholder={casting ? 'work asked for: operation, package or their words' : 'add a casting first'}
      text={text}
      onText={setText}
      options={
        text.trim() === ''
          ? []
          : [
              ...found,
              {
                key: 'said',
                words: `their words: "${text.trim()}"`,
                note: 'kept beside ours',
                value: { said: text.trim() },
              },
            ]
      }
      onPick={(picked) => {
        onPick(picked);
        setText('');
      }}
      pickWords="adds"
    />
  );
}
