import { cleanup, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { useState } from 'react';
import { afterEach, describe, expect, it } from 'vitest';
import { Suggest } from '#renderer/kit/suggest.tsx';

afterEach(cleanup);

const KINDS = ['Pressure test', 'Press in guides', 'Surface'];

function Asked() {
  const [text, setText] = useState('');
  const [taken, setTaken] = useState<string[]>([]);
  const found = KINDS.filter((kind) => kind.toLowerCase().startsWith(text.toLowerCase()));
  return (
    <>
      <Suggest
        label="Work asked for"
        text={text}
        onText={setText}
        options={found.map((kind) => ({ key: kind, words: kind, value: kind }))}
        onPick={(kind) => {
          setTaken([...taken, kind]);
          setText('');
        }}
        pickWords="adds"
      />
      <output>{taken.join()}</output>
    </>
  );
}

describe('Suggest', () => {
  it('takes the first with Enter and the next with Down', async () => {
    render(<Asked />);
    const user = userEvent.setup();
    const field = screen.getByRole('combobox', { name: 'Work asked for' });

    await user.type(field, 'pres');
    expect(screen.getAllByRole('option')).toHaveLength(2);
    await user.keyboard('{Enter}');
    await user.type(field, 'pres{ArrowDown}{Enter}');

    expect(screen.getByRole('status').textContent).toBe('Pressure test,Press in guides');
  });

  it('leaves the words as typed with Esc, and then Enter takes nothing', async () => {
    render(<Asked />);
    const user = userEvent.setup();
    const field = screen.getByRole('combobox', { name: 'Work asked for' });

    await user.type(field, 'sur{Escape}{Enter}');

    expect(field).toHaveProperty('value', 'sur');
    expect(screen.getByRole('status').textContent).toBe('');
  });
});
