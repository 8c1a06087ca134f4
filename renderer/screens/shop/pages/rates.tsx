/** Prices, factors and taxes, each from a day on. A change here touches no line of any ticket. */
import { useState } from 'react';
import { useAppQuery, useClient } from '../../../client/use-app.ts';
import { useFormat } from '../../../client/use-shop.ts';
import { Choice } from '../../../kit/choice.tsx';
import { Field } from '../../../kit/field.tsx';
import { ErrorNote } from '../../../kit/notice.tsx';
import { Waiting } from '../../../kit/pane.tsx';
import { Row, Rows } from '../../../kit/rows.tsx';
import { Empty, Sheet } from '../../../kit/sheet.tsx';
import { FactorsPane } from '../parts/factors-pane.tsx';
import { PriceForm, type PriceOf } from '../parts/price-form.tsx';
import { TaxesPane } from '../parts/taxes-pane.tsx';
import type { Rates } from '../shop-shapes.ts';
import css from './columns.module.css';

const KIND_WORDS: Readonly<Record<string, string>> = {
  head: 'head',
  block: 'block',
  intake_manifold: 'intake manifold',
  exhaust_manifold: 'exhaust manifold',
  crank: 'crankshaft',
  rod_set: 'rods',
  flywheel: 'flywheel',
  cover: 'cover',
};

/** Operations and packages alike: what is priced, and the price of the day. */
function pricedRows(rates: Rates): readonly PriceOf[] {
  return [
    ...rates.operations.map((one) => ({
      ...one,
      key: `o${one.operationKindId}-${one.castingKind}`,
      title: one.words,
      on: KIND_WORDS[one.castingKind] ?? one.castingKind,
      per: one.chargeUnit,
      thing: { operationKindId: one.operationKindId, castingKind: one.castingKind },
    })),
    ...rates.packages.map((one) => ({
      ...one,
      key: `p${one.packageId}-${one.castingTypeId}`,
      title: `${one.words} (package)`,
      on: one.castingType,
      per: 'each',
      thing: { packageId: one.packageId, castingTypeId: one.castingTypeId },
    })),
  ];
}

export function RatesPage() {
  const client = useClient();
  const format = useFormat();
  const [list, setList] = useState('standard');
  const { data, error } = useAppQuery('rates/list-rates', { list }, { keep: true });
  const [text, setText] = useState('');
  const [at, setAt] = useState<string | null>(null);
  const [beside, setBeside] = useState<'factors' | 'taxes'>('factors');
  if (error) return <ErrorNote error={error} />;
  if (!data) return <Waiting />;
  const looked = text.trim().toLowerCase();
  const all = pricedRows(data);
  const rows = all.filter((one) => `${one.title} ${one.on} ${one.code}`.toLowerCase().includes(looked));
  const chosen = all.find((one) => one.key === at);
  const today = format.local(client.now()).day;
  return (
    <div className={css.two}>
      <Sheet
        title="Rates"
        note="changing one touches no ticket that stands"
        end={`${all.filter((one) => one.price === null).length} of ${all.length} have no price`}
        scroll
      >
        <div className={css.filter}>
          <Field label="Look for" value={text} onChange={setText} placeholder="operation, package or kind of casting" />
          {data.lists.length > 1 && (
            <Choice
              label="Price list"
              options={data.lists.map((value) => ({ value, words: value }))}
              value={list}
              onChange={setList}
            />
          )}
        </div>
        {rows.length === 0 && <Empty>Nothing is called that.</Empty>}
        <Rows label="Rates">
          {rows.map((one) => (
            <Row
              key={one.key}
              title={<b>{one.title}</b>}
              note={`on ${one.on}, per ${one.per}${one.from ? `, since ${format.day(one.from)}` : ''}${one.next ? `, ${format.price(one.next.price)} from ${format.day(one.next.from)}` : ''}`}
              end={one.price === null ? 'no price' : format.price(one.price)}
              selected={one.key === at}
              onOpen={() => setAt(one.key)}
            />
          ))}
        </Rows>
      </Sheet>
      {chosen ? (
        <PriceForm key={chosen.key} priced={chosen} list={list} today={today} onDone={() => setAt(null)} />
      ) : (
        <Sheet
          title={beside === 'factors' ? 'Factors' : 'Taxes'}
          note="choose a rate at the left to set its price"
          scroll
        >
          <div className={css.filter}>
            <Choice
              quiet
              label="Show"
              options={[
                { value: 'factors', words: 'Factors' },
                { value: 'taxes', words: 'Taxes' },
              ]}
              value={beside}
              onChange={setBeside}
            />
          </div>
          {beside === 'factors' ? <FactorsPane rates={data} today={today} /> : <TaxesPane rates={data} today={today} />}
        </Sheet>
      )}
    </div>
  );
}
