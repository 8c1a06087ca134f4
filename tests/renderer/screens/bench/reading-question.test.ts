import { describe, expect, it } from 'vitest';
import type { Entry } from '#renderer/client/outbox.ts';
import type { Preview } from '#renderer/screens/bench/bench-casting.ts';
import { questionOf, questionOfRefusal } from '#renderer/screens/bench/reading-question.ts';

const preview = (more: Partial<Preview>): Preview =>
  ({
    read: { kind: 'empty' },
    becomes: '',
    doubt: null,
    cell: null,
    column: null,
    judged: null,
    sentence: '',
    ...more,
  }) as Preview;
const figure = { typed: '0.030', unit: 'in', value: 762_000, mark: 'entered' } as const;

describe('questionOf', () => {
  it('asks which reading of bare digits is meant, each with its unit', () => {
    const question = questionOf(preview({ read: { kind: 'ask', question: '30?', choices: [figure] } }), '30');
    expect(question).toEqual({ words: '30?', choices: [{ typed: '0.030 in', words: '0.030 in' }], right: null });
  });
  it('asks about an unlikely figure and lets it stand as typed', () => {
    const doubt = { question: 'Ten times?', meant: { typed: '35.95', unit: 'mm' } };
    const question = questionOf(preview({ read: { kind: 'figure', ...figure }, doubt }), '359.5');
    expect(question).toMatchObject({
      choices: [{ typed: '35.95 mm' }],
      right: { typed: '359.5', words: '359.5 is right' },
    });
  });
  it('says what is wrong with a text that is no figure, without a way to keep it', () => {
    const read = { kind: 'refused', code: 'x', message: 'Type a number.' } as const;
    expect(questionOf(preview({ read }), 'abc')).toEqual({ words: 'Type a number.', choices: [], right: null });
  });
  it('asks nothing about a figure that reads well', () => {
    expect(questionOf(preview({ read: { kind: 'figure', ...figure } }), '0.030 in')).toBeNull();
  });
});

describe('questionOfRefusal', () => {
  const entry = (code: string, facts: Record<string, unknown>): Entry => ({
    key: 'k',
    order: 1,
    parcel: null,
    person: 7,
    at: '',
    place: 'p',
    shown: '359.5',
    refused: { kind: 'invalid-input', code, message: 'Sentence.', facts },
  });
  it('asks the same question when the host said no to a figure that was on its way', () => {
    expect(questionOfRefusal(entry('readings/unlikely', { meant: { typed: '35.95', unit: 'mm' } }))).toEqual({
      words: 'Sentence.',
      choices: [{ typed: '35.95 mm', words: '35.95 mm' }],
      right: { typed: '359.5', words: '359.5 is right' },
    });
    expect(questionOfRefusal(entry('readings/ask', { choices: [figure] }))).toMatchObject({
      choices: [{ typed: '0.030 in' }],
      right: null,
    });
  });
  it('says any other refusal as it is', () => {
    expect(questionOfRefusal(entry('readings/locked', {}))).toEqual({ words: 'Sentence.', choices: [], right: null });
  });
});
