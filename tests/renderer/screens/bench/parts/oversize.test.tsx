import { cleanup, screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, describe, expect, it } from 'vitest';
import type { OversizeChoice } from '#core/readings/compute/oversize-model.ts';
import { Oversize } from '#renderer/screens/bench/parts/oversize.tsx';
import { showBench } from '../around.tsx';
import { boresOf } from '../bores-sheet.ts';
import { candidate, choiceOf, NOT_ENOUGH } from '../oversizes.ts';

afterEach(cleanup);

function show(choice: OversizeChoice) {
  return showBench(<Oversize sheet={boresOf()} operation={44} onClose={() => {}} />, {
    'readings/get-oversize-choice': choice,
    'readings/use-oversize': { readings: [1, 2], words: '' },
  });
}
const press = (name: string | RegExp) => userEvent.click(screen.getByRole('button', { name }));

describe('Oversize', () => {
  it('shows the finished size large in both units and writes the size down by the rule', async () => {
    const { inputs } = show(choiceOf());
    const result = await screen.findByRole('region', { name: 'Finished size' });
    expect(within(result).getByText(/^3\.9700/)).toBeTruthy();
    expect(within(result).getByText('100.838 mm, .020 in over')).toBeTruthy();
    await press('Use .020 over');
    await waitFor(() =>
      expect(inputs('readings/use-oversize')).toEqual([
        { casting: 1, only: null, sleeves: [], operation: 44, oversize: '+.020in', rule: 'centred', sure: false },
      ]),
    );
  });

  it('says of every size by both rules whether it cleans up, in words beside the mark', async () => {
    show(choiceOf());
    const ten = await screen.findByRole('row', { name: /^\.010/ });
    expect(within(ten).getAllByText('not enough')).toHaveLength(2);
    expect(within(screen.getByRole('row', { name: /^\.020/ })).getAllByText('cleans up')).toHaveLength(2);
  });

  it('takes no size that does not pass, and says why', async () => {
    const { inputs } = show(choiceOf());
    await screen.findByRole('row', { name: /^\.010/ });
    await press('.010');
    await press(/^Use \.010 over/);
    expect(screen.getByText(NOT_ENOUGH.reason)).toBeTruthy();
    expect(inputs('readings/use-oversize')).toEqual([]);
  });

  it('wants a rule chosen where the two do not agree', async () => {
    const { rules } = choiceOf();
    const { inputs } = show(
      choiceOf({
        rules: rules.map((one, n) => ({ ...one, best: n === 0 ? '+.020in' : '+.030in' })),
        candidates: [
          candidate('.020', '3.9675', { original: NOT_ENOUGH }),
          candidate('.030', '3.9775', { finished: { value: 1, text: '3.9800', other: '101.092 mm' } }),
        ],
      }),
    );
    expect(await screen.findByText(/The two rules do not agree/)).toBeTruthy();
    await press(/^Kept on centre/);
    await press('Use .030 over');
    await waitFor(() =>
      expect(inputs('readings/use-oversize')).toMatchObject([{ oversize: '+.030in', rule: 'original' }]),
    );
  });

  it('asks before a size is used whose pistons were not measured', async () => {
    const ask = 'The pistons of .020 are not measured. Use their nominal size?';
    const unmeasured = candidate('.020', '3.9675', { measured: false, pistonWords: 'not measured', ask });
    const { inputs } = show(choiceOf({ candidates: [unmeasured] }));
    await screen.findByRole('row', { name: /^\.020/ });
    await press('Use .020 over');
    expect(screen.getByText(ask)).toBeTruthy();
    expect(inputs('readings/use-oversize')).toEqual([]);
    await press('Yes, use it');
    await waitFor(() => expect(inputs('readings/use-oversize')).toMatchObject([{ sure: true }]));
  });

  it('asks the host anew when a cylinder is sleeved or left', async () => {
    const { inputs } = show(choiceOf());
    await screen.findByRole('row', { name: /^\.020/ });
    await press('Cylinders');
    const second = screen.getByRole('group', { name: 'cylinder 2' });
    await userEvent.click(within(second).getByRole('radio', { name: 'sleeve' }));
    await waitFor(() =>
      expect(inputs('readings/get-oversize-choice').at(-1)).toEqual({ casting: 1, only: null, sleeves: [2] }),
    );
    await userEvent.click(within(second).getByRole('radio', { name: 'leave' }));
    await waitFor(() =>
      expect(inputs('readings/get-oversize-choice').at(-1)).toEqual({ casting: 1, only: [1], sleeves: [] }),
    );
  });

  it('says what is missing, and offers to type it', async () => {
    const missing = ['Type the piston clearance wanted as a limit of this job.'];
    show(choiceOf({ missing, candidates: [] }));
    expect((await screen.findAllByText(missing[0] ?? '')).length).toBeGreaterThan(0);
    await press('Figures');
    expect(screen.getByRole('link', { name: 'Type pistons, hone and depths' }).getAttribute('href')).toContain(
      '/table/pistons',
    );
  });
});
