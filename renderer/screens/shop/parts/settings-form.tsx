/** A group of settings as a form; only what changed is sent, and the PIN is asked. */
import { useAppCommand, useAppQuery } from '../../../client/use-app.ts';
import { useTyped } from '../../../client/use-draft.ts';
import { useFormat } from '../../../client/use-shop.ts';
import { Choice, Tick } from '../../../kit/choice.tsx';
import { classes } from '../../../kit/class-names.ts';
import { Field } from '../../../kit/field.tsx';
import { FormSheet } from '../../../kit/form-sheet.tsx';
import { ErrorNote } from '../../../kit/notice.tsx';
import { Waiting } from '../../../kit/pane.tsx';
import columns from '../pages/columns.module.css';
import { type SettingField, settingChanges, settingText, type TextOf } from '../settings-typed.ts';

const isTexts = (value: unknown): value is TextOf => typeof value === 'object' && value !== null;
const NOTHING: TextOf = {};

export function SettingsForm({
  name,
  title,
  note,
  fields,
}: {
  /** Under which what is typed is kept. */
  name: string;
  title: string;
  note?: string;
  fields: readonly SettingField[];
}) {
  const format = useFormat();
  const { data, error } = useAppQuery('shop/get-settings', {});
  const command = useAppCommand('shop/change-settings');
  const [typed, set] = useTyped<TextOf>(`settings-${name}`, NOTHING, isTexts);
  if (error) return <ErrorNote error={error} />;
  if (!data) return <Waiting />;
  const { changes, wrong } = settingChanges(fields, data.settings, typed, format.settings);
  const count = Object.keys(changes).length;
  const answers = command.error?.reply.fields ?? {};
  const firstWrong = Object.values(wrong)[0];
  return (
    <FormSheet
      title={title}
      note={note}
      act={count > 1 ? `Keep ${count} changes` : 'Keep the change'}
      command={command}
      shut={firstWrong ?? (count === 0 ? 'Nothing is changed.' : undefined)}
      fieldsShown={fields.map((field) => `changes.${field.key}`)}
      onDone={count > 0 || firstWrong !== undefined ? () => set(() => NOTHING) : undefined}
      onGo={() => void command.send({ seenVersion: data.version, changes }).then((kept) => kept && set(() => NOTHING))}
    >
      <div className={columns.fields}>
        {fields.map((field) => (
          <div key={field.key} className={classes((field.as === 'lines' || field.key === 'name') && columns.wide)}>
            <SettingInput
              field={field}
              text={typed[field.key] ?? settingText(field, data.settings, format.settings)}
              error={wrong[field.key] ?? answers[`changes.${field.key}`]}
              onText={(text) => set((before) => ({ ...before, [field.key]: text }))}
            />
          </div>
        ))}
      </div>
    </FormSheet>
  );
}

function SettingInput({
  field,
  text,
  error,
  onText,
}: {
  field: SettingField;
  text: string;
  error: string | undefined;
  onText: (text: string) => void;
}) {
  if (field.as === 'tick') {
    return <Tick label={field.label} checked={text === 'true'} onChange={(on) => onText(String(on))} />;
  }
  if (field.as === 'choice') {
    return <Choice label={field.label} options={field.options ?? []} value={text} onChange={onText} error={error} />;
  }
  const figures = ['money', 'price', 'percent'].includes(field.as);
  return (
    <Field
      label={field.label}
      value={text}
      onChange={onText}
      error={error}
      end={field.as === 'percent' ? '%' : undefined}
      {...(field.as === 'lines' && { lines: 2 })}
      {...(figures && { inputMode: 'decimal' })}
      {...(field.as === 'count' && { inputMode: 'numeric' })}
    />
  );
}
