/** Casting types: what each is, what usually comes with it, and limits with their source. */
import { useState } from 'react';
import { formatWeight } from '#core/kernel/format.ts';
import type { Grams } from '#core/kernel/units.ts';
import { useAppQuery } from '../../../client/use-app.ts';
import { useFormat } from '../../../client/use-shop.ts';
import { Field } from '../../../kit/field.tsx';
import { ErrorNote } from '../../../kit/notice.tsx';
import { Waiting } from '../../../kit/pane.tsx';
import { Row, Rows } from '../../../kit/rows.tsx';
import { Empty, Sheet } from '../../../kit/sheet.tsx';
import { ArrivalForm } from '../parts/arrival-form.tsx';
import { LimitForm } from '../parts/limit-form.tsx';
import css from './columns.module.css';

export function CastingTypesPage() {
  const { data, error } = useAppQuery('operations/list-casting-types', { privateToo: true });
  const format = useFormat();
  const [text, setText] = useState('');
  const [at, setAt] = useState<number | null>(null);
  const type = useAppQuery('operations/get-casting-type', { castingType: at ?? 1 }, { enabled: at !== null });
  if (error) return <ErrorNote error={error} />;
  if (!data) return <Waiting />;
  const looked = text.trim().toLowerCase();
  const rows = data.types.filter((one) =>
    `${one.code} ${one.name} ${one.castingNumberPattern ?? ''} ${one.engineType?.words ?? ''}`
      .toLowerCase()
      .includes(looked),
  );
  return (
    <div className={css.three}>
      <Sheet title="Casting types" end={`${data.types.length}`} scroll>
        <div className={css.filter}>
          <Field label="Look for" value={text} onChange={setText} placeholder="name, code or casting number" />
        </div>
        {rows.length === 0 && <Empty>No type is called that. Describe it at check-in and it stands here.</Empty>}
        <Rows label="Casting types">
          {rows.map((one) => (
            <Row
              key={one.id}
              title={
                <>
                  <b>{one.code}</b> {one.name.replace(one.code, '').trim()}
                </>
              }
              note={[
                one.engineType?.words !== one.name && one.engineType?.words,
                one.castingNumberPattern,
                one.private && 'described at check-in',
              ]
                .filter(Boolean)
                .join(', ')}
              end={one.usualWeight === null ? '' : formatWeight(one.usualWeight as Grams, format.settings)}
              endNote={one.material?.replace('_', ' ') ?? 'metal varies'}
              selected={one.id === at}
              onOpen={() => setAt(one.id)}
            />
          ))}
        </Rows>
      </Sheet>
      {type.error && <ErrorNote error={type.error} />}
      {at !== null && type.data ? (
        <>
          <ArrivalForm key={`a${at}`} type={type.data} />
          <LimitForm key={`l${at}`} type={type.data} />
        </>
      ) : (
        <Sheet title="A type">
          <Empty>Choose a type to see what comes with it and to add limits.</Empty>
        </Sheet>
      )}
    </div>
  );
}
