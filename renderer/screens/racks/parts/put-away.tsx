/** Putting away: read or type tags and labels, then the place; several at a stroke. */
import { useRef, useState } from 'react';
import { useAppCommand, useAppQuery } from '../../../client/use-app.ts';
import { useTyped } from '../../../client/use-draft.ts';
import { Button, GoButton } from '../../../kit/button.tsx';
import { Field } from '../../../kit/field.tsx';
import { keysOf, useAct } from '../../../kit/keyboard.ts';
import { ErrorNote, Notice } from '../../../kit/notice.tsx';
import { Sheet, SheetBody, SheetFoot } from '../../../kit/sheet.tsx';
import { Suggest } from '../../../kit/suggest.tsx';
import { addTyped, EMPTY_PUT_AWAY, isPutAway, putAwayInput, putAwayMissing, thingError } from '../put-away-typed.ts';
import css from './put-away.module.css';

export function PutAway() {
  const command = useAppCommand('racks/put-away');
  const places = useAppQuery('racks/list-places', {}).data?.places ?? [];
  const [typed, set] = useTyped('put-away', EMPTY_PUT_AWAY, isPutAway);
  const [done, setDone] = useState<Readonly<{ words: string; warnings: readonly string[] }> | null>(null);
  const first = useRef<HTMLInputElement & HTMLTextAreaElement>(null);
  const missing = putAwayMissing(typed);
  const fields = command.error?.reply.fields ?? {};
  const looked = typed.place.trim().toLowerCase();
  const offered = places
    .filter((place) => `${place.code} ${place.words ?? ''} ${place.purposeWords}`.toLowerCase().includes(looked))
    .slice(0, 8);
  const put = async () => {
    if (missing) return;
    set(addTyped);
    const kept = await command.send(putAwayInput(typed));
    if (!kept) return;
    setDone(kept);
    set(() => EMPTY_PUT_AWAY);
    first.current?.focus();
  };
  const count = addTyped(typed).things.length;
  useAct('go', () => void put());
  return (
    <Sheet title="Put away" note="read or type, Enter adds" scroll>
      <SheetBody>
        <Field
          label="Tag or label"
          value={typed.text}
          onChange={(text) => set((before) => ({ ...before, text }))}
          onKeyDown={(event) => {
            if (event.key !== 'Enter' || event.ctrlKey) return;
            event.preventDefault();
            command.reset();
            set(addTyped);
          }}
          hint="41234, 41234-A, or the code on the tag"
          inputRef={first}
          autoFocus
        />
        {typed.things.length > 0 && (
          <ul className={css.things} aria-label="To be put away">
            {typed.things.map((thing, index) => (
              <li key={thing} className={thingError(fields, index) ? css.wrong : undefined}>
                <b>{thing}</b>
                <span role={thingError(fields, index) ? 'alert' : undefined}>{thingError(fields, index)}</span>
                <Button
                  label={`Leave out ${thing}`}
                  onPress={() => set((before) => ({ ...before, things: before.things.filter((one) => one !== thing) }))}
                >
                  Leave out
                </Button>
              </li>
            ))}
          </ul>
        )}
        <Suggest
          label="Place"
          text={typed.place}
          onText={(place) => set((before) => ({ ...before, place }))}
          options={offered.map((place) => ({
            key: place.placeId,
            words: place.code,
            note: [place.words ?? place.purposeWords, place.limitWords].filter(Boolean).join(', '),
            value: place.code,
          }))}
          onPick={(place) => set((before) => ({ ...before, place }))}
          error={fields.place}
        />
        <ErrorNote
          error={command.error}
          fieldsShown={['place', ...typed.things.flatMap((_, i) => [`things.${i}`, `things.${i}.text`])]}
        />
        {done && (
          <Notice kind={done.warnings.length > 0 ? 'ask' : 'plain'}>
            <p>{done.words}.</p>
            {done.warnings.map((warning) => (
              <p key={warning}>{warning}</p>
            ))}
          </Notice>
        )}
      </SheetBody>
      <SheetFoot>
        <GoButton keys={keysOf('go')} working={command.pending} shut={missing} onPress={() => void put()}>
          {putWords(count, typed.place.trim())}
        </GoButton>
      </SheetFoot>
    </Sheet>
  );
}

/** `Put 3 pieces in C-4-2`; `Put away` while nothing is read. */
const putWords = (count: number, place: string): string =>
  count === 0
    ? 'Put away'
    : `Put ${count} ${count === 1 ? 'piece' : 'pieces'} ${place === '' ? 'away' : `in ${place}`}`;
