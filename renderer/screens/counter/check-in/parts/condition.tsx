/** Condition at arrival: touch the drawing where it is, name it; or name it for the whole casting. */
import { useMemo, useState } from 'react';
import { type DrawnType, type DrawnView, viewsOf, viewWords } from '#core/drawing/drawn-type.ts';
import { useAppQuery } from '../../../../client/use-app.ts';
import { Button } from '../../../../kit/button.tsx';
import { CastingDrawing, type TouchedPlace } from '../../../../kit/casting-drawing.tsx';
import { Choice, Tick } from '../../../../kit/choice.tsx';
import { drawnTypeOf } from '../../../../kit/drawn-type.ts';
import { Field } from '../../../../kit/field.tsx';
import { Suggest } from '../../../../kit/suggest.tsx';
import { castingWords } from '../changes.ts';
import { plain } from '../find-type.ts';
import { type CastingTyped, type CheckInTyped, type MarkTyped, nextKey } from '../typed.ts';
import css from './condition.module.css';

type Props = Readonly<{ typed: CheckInTyped; casting: CastingTyped; change: (changes: Partial<CastingTyped>) => void }>;

export function Condition({ typed, casting, change }: Props) {
  const drawn = useDrawnType(casting.typeId, casting.position);
  const views = casting.kind ? viewsOf(casting.kind) : [];
  const [view, setView] = useState<DrawnView | null>(null);
  const shown = view ?? views[0];
  const [place, setPlace] = useState<TouchedPlace | null>(null);
  const [turned, setTurned] = useState(false);
  const setMark = (key: string, changes: Partial<MarkTyped>) =>
    change({ marks: casting.marks.map((mark) => (mark.key === key ? { ...mark, ...changes } : mark)) });
  const balloons = casting.marks.flatMap((mark, position) =>
    mark.view === shown && mark.x !== null && mark.y !== null
      ? [{ key: mark.key, label: String(position + 1), x: mark.x, y: mark.y }]
      : [],
  );
  return (
    <div className={css.condition}>
      {drawn && shown && (
        <>
          <div className={css.bar}>
            {views.length > 1 && (
              <Choice
                label="View"
                quiet
                options={views.map((one) => ({ value: one, words: viewWords(one) }))}
                value={shown}
                onChange={(one) => {
                  setView(one);
                  setPlace(null);
                }}
              />
            )}
            <Button pressed={turned} onPress={() => setTurned(!turned)}>
              Turn it
            </Button>
          </div>
          <CastingDrawing
            type={drawn}
            options={{
              view: shown,
              turned,
              balloons: place ? [...balloons, { key: 'new', label: '?', x: place.x, y: place.y }] : balloons,
            }}
            label={castingWords(typed, casting)}
            onPlace={setPlace}
          />
        </>
      )}
      <NameCondition
        kind={casting.kind}
        place={place}
        onName={(condition, conditionWords) => {
          change({
            marks: [
              ...casting.marks,
              {
                key: nextKey(casting.marks, 'm'),
                condition,
                conditionWords,
                view: shown ?? 'deck',
                x: place?.x ?? null,
                y: place?.y ?? null,
                words: place?.spot ? `at ${place.spot.label}` : '',
                photoWanted: false,
              },
            ],
          });
          setPlace(null);
        }}
      />
      <ol className={css.marks}>
        {casting.marks.map((mark, position) => (
          <li key={mark.key}>
            <i>{position + 1}</i>
            <b>{mark.conditionWords}</b>
            <Field
              label={`Words about ${mark.conditionWords}`}
              quiet
              placeholder="where, how much, who was told"
              value={mark.words}
              onChange={(words) => setMark(mark.key, { words })}
            />
            <Tick
              label="photo wanted"
              checked={mark.photoWanted}
              onChange={(photoWanted) => setMark(mark.key, { photoWanted })}
            />
            <Button
              label={`Take off ${mark.conditionWords}`}
              onPress={() => change({ marks: casting.marks.filter((one) => one.key !== mark.key) })}
            >
              Take off
            </Button>
          </li>
        ))}
      </ol>
    </div>
  );
}

function NameCondition({
  kind,
  place,
  onName,
}: {
  kind: CastingTyped['kind'];
  place: TouchedPlace | null;
  onName: (condition: string, words: string) => void;
}) {
  const [text, setText] = useState('');
  const { data } = useAppQuery('operations/list-conditions', kind ? { castingKind: kind } : {});
  const asked = plain(text);
  const found = (data?.conditions ?? []).filter((one) =>
    plain(`${one.shopWords} ${one.customerWords}`).includes(asked),
  );
  return (
    <Suggest
      key={place ? `${place.x}-${place.y}` : 'whole'}
      label={
        place
          ? `What is at the place you touched${place.spot ? `, ${place.spot.label}` : ''}?`
          : 'A condition, for the whole casting'
      }
      placeholder="gouge, pitting, crack seen, heat colour"
      text={text}
      onText={setText}
      options={found
        .slice(0, 8)
        .map((one) => ({ key: one.code, words: one.shopWords, note: one.customerWords, value: one }))}
      onPick={(one) => {
        onName(one.code, one.shopWords);
        setText('');
      }}
      autoFocus={place !== null}
    />
  );
}

/** A type of the catalogue with its places called as the engine counts them in this bank; null until it is there. */
function useDrawnType(typeId: number | null, position: CastingTyped['position']): DrawnType | null {
  const { data } = useAppQuery(
    'operations/get-casting-type',
    { castingType: typeId ?? 1 },
    { enabled: typeId !== null },
  );
  return useMemo(
    () =>
      data && typeId !== null
        ? drawnTypeOf(data, { position: position ?? 'not_known', numbering: data.numbering })
        : null,
    [data, typeId, position],
  );
}
