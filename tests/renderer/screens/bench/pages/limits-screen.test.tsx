import { cleanup, screen, waitFor } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, describe, expect, it } from 'vitest';
import { LimitsScreen } from '#renderer/screens/bench/pages/limits-screen.tsx';
import { showBench } from '../around.tsx';
import { castingOf } from '../castings.ts';

afterEach(cleanup);

const limit = {
  id: 5,
  quantity: 'margin',
  words: 'margin',
  stage: 'after',
  side: 'E',
  low: 1,
  high: null,
  target: null,
  unit: 'in',
  text: 'at least 0.047',
  targetText: null,
  source: 'cam card',
  forWhat: 'this_job',
  checked: false,
  notes: ['not checked'],
  typedBy: 'DK',
  checkedBy: '',
};
const other = {
  ...limit,
  id: 6,
  text: 'at least 0.060',
  source: 'engine data',
  checked: true,
  typedBy: 'OB',
  notes: [],
};
const answers = { 'floor/get-bench': castingOf([]), 'limits/list-resolved': [{ ...limit, others: [other] }] };
const open = async () => userEvent.click(await screen.findByRole('button', { name: /margin, exhaust/ }));

describe('LimitsScreen', () => {
  it('shows each limit with its source and who typed it, and that nobody checked it', async () => {
    showBench(<LimitsScreen tag={30921} />, answers);

    const line = await screen.findByRole('button', { name: /margin, exhaust/ });

    expect(line.textContent).toContain('cam card. typed by DK');
    expect(line.textContent).toContain('at least 0.047 in');
    expect(line.textContent).toContain('not checked');
  });

  it('lets a second person say that they checked it', async () => {
    const { inputs } = showBench(<LimitsScreen tag={30921} />, { ...answers, 'limits/check-limit': { limit: 5 } });
    await open();

    await userEvent.click(screen.getByRole('button', { name: 'I checked it with its source' }));

    await waitFor(() => expect(inputs('limits/check-limit')).toMatchObject([{ limit: 5 }]));
  });

  it('lets a lead take another one, by name, PIN and reason', async () => {
    const { sent } = showBench(<LimitsScreen tag={30921} />, { ...answers, 'limits/choose-limit': { limit: 6 } });
    await open();
    await userEvent.click(screen.getByRole('button', { name: /at least 0.060/ }));
    await userEvent.type(screen.getByLabelText('Why, printed beside it'), 'thick valves');
    await userEvent.click(await screen.findByRole('button', { name: 'Sami Okkerbee' }));
    await userEvent.type(screen.getByLabelText('PIN'), '582914');

    await userEvent.click(screen.getByRole('button', { name: 'Lead takes at least 0.060 in' }));

    await waitFor(() =>
      expect(sent.find((one) => one.name === 'limits/choose-limit')).toMatchObject({
        input: { limit: 6, why: 'thick valves' },
      }),
    );
  });
});
