/** What they said and want, changed field by field. Only what was changed is sent, each with the value that was seen. */
import { useState } from 'react';
import { useAppCommand } from '../../../../client/use-app.ts';
import { Button } from '../../../../kit/button.tsx';
import { Choice } from '../../../../kit/choice.tsx';
import { Field } from '../../../../kit/field.tsx';
import { FormSheet } from '../../../../kit/form-sheet.tsx';
import { Notice } from '../../../../kit/notice.tsx';
import { type Conflict, changesOf, conflictsOf } from '../field-changes.ts';
import type { PanelProps, Ticket } from '../ticket-shapes.ts';

type TextName =
  | 'orderNumber'
  | 'wantedWords'
  | 'historyWords'
  | 'useWords'
  | 'fuelWords'
  | 'valveLift'
  | 'broughtBy'
  | 'notes';

const TEXTS: readonly (readonly [name: TextName, label: string, lines: number])[] = [
  ['orderNumber', 'Their order no.', 1],
  ['wantedWords', 'What they want', 2],
  ['historyWords', 'What they said', 2],
  ['useWords', 'Use', 1],
  ['fuelWords', 'Fuel', 1],
  ['valveLift', 'Valve lift, with its unit', 1],
  ['broughtBy', 'Brought by', 1],
  ['notes', 'Notes', 3],
];

const said = (value: unknown): string => (value === null || value === '' ? 'nothing' : String(value));

export function FieldsPanel({ ticket, onDone, onDecline }: PanelProps & Readonly<{ onDecline: () => void }>) {
  const command = useAppCommand('tickets/change-ticket');
  // What the person saw when the form was opened: a change of somebody else meanwhile is told apart from their own.
  const [seen, setSeen] = useState<Ticket['fields']>(ticket.fields);
  const [typed, setTyped] = useState<Ticket['fields']>(ticket.fields);
  const [taken, setTaken] = useState<readonly { field: string; words: string; by: string }[]>([]);
  const set = (changes: Partial<Ticket['fields']>) => setTyped((before) => ({ ...before, ...changes }));
  const errors = command.error?.reply.fields ?? {};
  const wrong = (name: string) => errors[`changes.${name}.to`] ?? errors[`changes.${name}`] ?? errors[name];
  const changes = changesOf(seen, typed);
  // Both have been looked at: what stands there now is what was seen, and the choice is what is typed.
  const settle = (conflict: Conflict, choice: unknown) => {
    setSeen((before) => ({ ...before, [conflict.field]: conflict.now }));
    setTyped((before) => ({ ...before, [conflict.field]: choice }));
    command.reset();
  };
  const save = async () => {
    const kept = await command.send({ ticketId: ticket.ticketId, seenVersion: ticket.version, changes });
    if (!kept) return;
    if (kept.takenOver.length === 0) onDone();
    else setTaken(kept.takenOver);
  };
  if (taken.length > 0) {
    return (
      <Notice kind="ask" acts={<Button onPress={onDone}>Good</Button>}>
        {taken.map((one) => (
          <p key={one.field}>
            {one.by} changed {one.words} meanwhile; it is kept as they wrote it.
          </p>
        ))}
      </Notice>
    );
  }
  return (
    <FormSheet
      title="What they said"
      act="Keep the changes"
      command={command}
      shut={Object.keys(changes).length === 0 ? 'Nothing is changed.' : undefined}
      fieldsShown={TEXTS.flatMap(([name]) => [name, `changes.${name}`, `changes.${name}.to`])}
      onDone={onDone}
      onGo={() => void save()}
    >
      {conflictsOf(command.error).map((conflict) => (
        <Notice
          key={conflict.field}
          kind="ask"
          acts={
            <>
              <Button onPress={() => settle(conflict, conflict.now)}>Take theirs</Button>
              <Button onPress={() => settle(conflict, conflict.yours)}>Keep mine</Button>
            </>
          }
        >
          <b>
            {conflict.by} changed {conflict.words} meanwhile.
          </b>{' '}
          Yours: {said(conflict.yours)}. Theirs: {said(conflict.now)}.
        </Notice>
      ))}
      {TEXTS.map(([name, label, lines]) => (
        <Field
          key={name}
          label={label}
          value={typed[name] ?? ''}
          onChange={(text) => set({ [name]: text })}
          error={wrong(name)}
          {...(lines > 1 && { lines })}
        />
      ))}
      <Choice
        label="Gasket"
        options={[
          { value: 'mls', words: 'MLS' },
          { value: 'composition', words: 'compos.' },
          { value: 'other', words: 'other' },
          { value: 'not_asked', words: 'not asked' },
        ]}
        value={typed.gasket}
        onChange={(gasket) => set({ gasket })}
      />
      <Choice
        label="Measuring"
        options={[
          { value: 'usual', words: 'usual' },
          { value: 'certified', words: 'certified, guard band on' },
        ]}
        value={typed.certified ? 'certified' : 'usual'}
        onChange={(measuring) => set({ certified: measuring === 'certified' })}
      />
      <Choice
        label="Old parts"
        options={[
          { value: 'return', words: 'return' },
          { value: 'discard', words: 'discard' },
          { value: 'not_asked', words: 'not asked' },
        ]}
        value={typed.oldParts}
        onChange={(oldParts) => set({ oldParts })}
      />
      <Choice
        label="Crack check"
        options={[
          { value: 'wanted', words: 'wanted' },
          { value: 'declined', words: 'declined, signed' },
        ]}
        value={typed.crackCheck}
        onChange={(crackCheck) => set({ crackCheck })}
        error={wrong('crackCheck')}
      />
      <Button kind="out" onPress={onDecline}>
        They do not want it: decline the ticket
      </Button>
    </FormSheet>
  );
}
