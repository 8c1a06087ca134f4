import { describe, expect, it, vi } from 'vitest';
import { keypadActs } from '#renderer/screens/bench/hooks/keypad-acts.ts';
import type { Question } from '#renderer/screens/bench/reading-question.ts';

function hand(text: string, asked: Question | null = null) {
  const calls = { take: vi.fn(), again: vi.fn(), same: vi.fn(), setText: vi.fn(), undo: vi.fn() };
  return { ...calls, ...keypadActs({ asked, text, ...calls }) };
}
const doubt: Question = {
  words: '39.534 is ten times the reading before.',
  choices: [{ typed: '3.9534 in', words: '3.9534 in' }],
  right: { typed: '39.534', words: '39.534 is right' },
};

describe('keypadActs', () => {
  it('repeats the figure before with plus, only while nothing is typed', () => {
    const empty = hand('');
    empty.plus();
    expect(empty.same).toHaveBeenCalledOnce();
    const typing = hand('3.9');
    typing.plus();
    expect(typing.same).not.toHaveBeenCalled();
  });

  it('takes the last digit off with times, and undoes when nothing is typed', () => {
    const typing = hand('3.95');
    typing.times();
    expect(typing.setText).toHaveBeenCalledWith('3.9');
    expect(typing.undo).not.toHaveBeenCalled();
    const empty = hand('');
    empty.times();
    expect(empty.undo).toHaveBeenCalledOnce();
  });

  it('answers a question: times takes what was meant, plus lets it stand', () => {
    const meant = hand('39.534', doubt);
    meant.times();
    expect(meant.take).toHaveBeenCalledWith('3.9534 in', true);
    const right = hand('39.534', doubt);
    right.plus();
    expect(right.take).toHaveBeenCalledWith('39.534', true);
  });

  it('types again with times where nothing is offered, and never repeats over a question', () => {
    const refused = hand('3.9x', { words: 'Not a figure.', choices: [], right: null });
    refused.times();
    expect(refused.again).toHaveBeenCalledOnce();
    refused.plus();
    expect(refused.same).not.toHaveBeenCalled();
    expect(refused.take).not.toHaveBeenCalled();
  });
});
