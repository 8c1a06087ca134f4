/** What prints: the next numbers, and the texts of the papers. */
import { useState } from 'react';
import type { App } from '#core/app-contract.ts';
import type { InputOf, OutputOf } from '#core/kernel/contract.ts';
import { useAppCommand, useAppQuery, useClient } from '../../../client/use-app.ts';
import { keepTyped, useTyped } from '../../../client/use-draft.ts';
import { useFormat } from '../../../client/use-shop.ts';
import { Button } from '../../../kit/button.tsx';
import { readCount } from '../../../kit/count.tsx';
import { Field } from '../../../kit/field.tsx';
import { FormSheet } from '../../../kit/form-sheet.tsx';
import { ErrorNote } from '../../../kit/notice.tsx';
import { Waiting } from '../../../kit/pane.tsx';
import { Row, Rows } from '../../../kit/rows.tsx';
import { Empty, Sheet, SheetBody } from '../../../kit/sheet.tsx';
import css from './columns.module.css';

type Numbers = OutputOf<App['shop/get-settings']>['numbers'];
type Texts = OutputOf<App['shop/get-settings']>['texts'];
type TextKind = InputOf<App['shop/add-text-version']>['kind'];

const SERIES_WORDS: Readonly<Record<Numbers[number]['series'], string>> = {
  ticket: 'Ticket',
  tag: 'Casting tag',
  invoice: 'Invoice',
  credit_note: 'Credit note',
  receipt: 'Receipt',
};

const TEXTS: readonly Readonly<{ kind: TextKind; words: string }>[] = [
  { kind: 'warranty', words: 'Warranty' },
  { kind: 'claim_terms', words: 'Terms on the claim ticket' },
  { kind: 'storage', words: 'Storage' },
  { kind: 'disclaimer', words: 'Not done by us' },
  { kind: 'letter_ready', words: 'Letter: ready' },
  { kind: 'letter_reminder', words: 'Letter: reminder' },
  { kind: 'letter_final', words: 'Letter: last reminder' },
];

export function PaperPage() {
  const { data, error } = useAppQuery('shop/get-settings', {});
  const [kind, setKind] = useState<TextKind>('warranty');
  if (error) return <ErrorNote error={error} />;
  if (!data) return <Waiting />;
  return (
    <div className={css.three}>
      <NextNumbers numbers={data.numbers} />
      <Sheet title="Texts" note="a new text prints from its day on" scroll>
        <Rows label="Texts">
          {TEXTS.map((one) => {
            const now = currentText(data.texts, one.kind);
            return (
              <Row
                key={one.kind}
                title={<b>{one.words}</b>}
                note={now ? `${now.body.slice(0, 120)}${now.body.length > 120 ? '...' : ''}` : 'Nothing prints.'}
                end={now ? 'change' : 'write it'}
                selected={one.kind === kind}
                onOpen={() => setKind(one.kind)}
              />
            );
          })}
        </Rows>
      </Sheet>
      <TextForm key={kind} kind={kind} texts={data.texts} />
    </div>
  );
}

const currentText = (texts: Texts, kind: TextKind): Texts[number] | undefined =>
  texts.findLast((one) => one.kind === kind);

function NextNumbers({ numbers }: { numbers: Numbers }) {
  return (
    <Sheet title="Next numbers" note="carry on from your paper" scroll>
      {numbers.map((one) => (
        <NextNumber key={one.series} {...one} />
      ))}
      {numbers.length === 0 && <Empty>Every series of numbers stands here.</Empty>}
    </Sheet>
  );
}

/** Series without a gap: once begun they go on by themselves. */
const UNBROKEN: readonly Numbers[number]['series'][] = ['invoice', 'credit_note', 'receipt'];

function NextNumber({ series, next, used }: Numbers[number]) {
  if (!(used && UNBROKEN.includes(series))) return <NumberField series={series} next={next} />;
  return (
    <SheetBody>
      <p>
        <b>
          {SERIES_WORDS[series]}, next {next}.
        </b>{' '}
        It runs without a gap since the first was given.
      </p>
    </SheetBody>
  );
}

function NumberField({ series, next }: Pick<Numbers[number], 'series' | 'next'>) {
  const command = useAppCommand('shop/set-next-number');
  const [text, setText] = useState('');
  const read = readCount(text, 999_999_999);
  return (
    <SheetBody>
      <Field
        label={`${SERIES_WORDS[series]}, next ${next}`}
        inputMode="numeric"
        value={text}
        placeholder={String(next)}
        onChange={setText}
        error={command.error?.reply.fields?.next ?? command.error?.reply.message}
      />
      <Button
        working={command.pending}
        shut={read === null ? 'Write a number.' : undefined}
        label={`Set the next number: ${SERIES_WORDS[series]}`}
        onPress={() => read !== null && void command.send({ series, next: read }).then((kept) => kept && setText(''))}
      >
        Set the next number
      </Button>
    </SheetBody>
  );
}

type TextTyped = Readonly<{ body: string; from: string }>;
const isText = (value: unknown): value is TextTyped =>
  typeof value === 'object' && value !== null && 'body' in value && 'from' in value;

function TextForm({ kind, texts }: { kind: TextKind; texts: Texts }) {
  const format = useFormat();
  const client = useClient();
  const now = currentText(texts, kind);
  const start = { body: now?.body ?? '', from: format.local(client.now()).day };
  const [typed, set] = useTyped<TextTyped>(`text-${kind}`, start, isText);
  const command = useAppCommand('shop/add-text-version');
  const fields = command.error?.reply.fields ?? {};
  const same = typed.body === (now?.body ?? '');
  return (
    <FormSheet
      title={TEXTS.find((one) => one.kind === kind)?.words ?? ''}
      note={now ? `stands since ${format.day(now.from)}` : 'nothing prints yet'}
      act="Keep this text"
      command={command}
      shut={same ? 'Nothing is changed.' : undefined}
      fieldsShown={['body', 'from']}
      onDone={() => set(() => start)}
      onGo={() =>
        void command
          .send({ kind, body: typed.body, from: typed.from })
          .then((kept) => kept && keepTyped(`text-${kind}`, null))
      }
    >
      <Field
        label="The text"
        lines={12}
        value={typed.body}
        onChange={(body) => set((before) => ({ ...before, body }))}
        error={fields.body}
      />
      <Field
        label="Prints from"
        type="date"
        value={typed.from}
        onChange={(from) => set((before) => ({ ...before, from }))}
        error={fields.from}
      />
    </FormSheet>
  );
}
