import { cleanup, screen, waitFor } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { CastingScreen } from '#renderer/screens/bench/casting-screen.tsx';
import { type Answers, Refusal, showBench } from './around.tsx';
import { CASTING_TYPE, castingOf, operationOf } from './castings.ts';

beforeEach(() => localStorage.clear());
afterEach(cleanup);

const acted = { words: 'Kept.', operations: [], soft: [], warnings: [] };
const show = (bench: ReturnType<typeof castingOf>, answers: Answers = {}) =>
  showBench(<CastingScreen tag={30921} />, {
    'floor/get-bench': bench,
    'operations/get-casting-type': CASTING_TYPE,
    ...answers,
  });
const press = async (name: string | RegExp) => userEvent.click(await screen.findByRole('button', { name }));

describe('CastingScreen', () => {
  it('starts the next operation with one touch on its page', async () => {
    const { inputs } = show(
      castingOf([operationOf(3, 'pressure test', { mayStart: true, mayFinish: true, next: true, version: 4 })]),
      {
        'floor/start-operation': acted,
      },
    );
    await press('Start');
    await waitFor(() =>
      expect(inputs('floor/start-operation')).toEqual([{ operations: [{ operationId: 3, seenVersion: 4 }] }]),
    );
  });

  it('may end an operation that was never started', async () => {
    const { inputs } = show(
      castingOf([operationOf(3, 'pressure test', { mayStart: true, mayFinish: true, next: true })]),
      {
        'floor/finish-operation': acted,
      },
    );
    await press('Done');
    await waitFor(() => expect(inputs('floor/finish-operation')).toHaveLength(1));
  });

  it('does both castings of a pair at a stroke', async () => {
    const both = { operationId: 9, version: 2, tag: 30922 } as never;
    const { inputs } = show(castingOf([operationOf(3, 'wash', { mayStart: true, next: true, both })]), {
      'floor/start-operation': acted,
    });
    await press('Both, 30922 too');
    await press('Start');
    await waitFor(() =>
      expect(inputs('floor/start-operation')).toEqual([
        {
          operations: [
            { operationId: 3, seenVersion: 1 },
            { operationId: 9, seenVersion: 2 },
          ],
        },
      ]),
    );
  });

  it('closes a row of small operations with done down to here', async () => {
    const downTo = [1, 2, 3].map((operationId) => ({ operationId, words: 'x' })) as never;
    const { inputs } = show(castingOf([operationOf(3, 'final clean', { downTo, next: true })]), {
      'floor/finish-down-to': acted,
    });
    await press('Done down to here, 3');
    await waitFor(() =>
      expect(inputs('floor/finish-down-to')).toEqual([{ operationId: 3, seenVersion: 1, both: false }]),
    );
  });

  it('shows soft rules once, after the start', async () => {
    const soft = [{ words: 'Surfacing usually comes after seats.' }];
    show(castingOf([operationOf(3, 'surface', { mayStart: true, next: true })]), {
      'floor/start-operation': { ...acted, soft },
    });
    await press('Start');
    expect(await screen.findByText('Surfacing usually comes after seats.')).toBeTruthy();
  });

  const rule = { id: 11, no: 11, waiver: 'reason' };
  const stop = {
    kind: 'rule',
    strength: 'hard',
    words: 'Cam line comes before surfacing: it is not measured.',
    short: 'waits for cam line',
    wayOn: { words: 'Measure cam line', request: 'readings/list-tables', input: {} },
    rule,
  };

  it('says what is missing in place of Start, with the way on', async () => {
    show(castingOf([operationOf(3, 'surface', { stops: [stop as never] })]));
    expect(await screen.findByText(stop.words)).toBeTruthy();
    expect(screen.queryByRole('button', { name: 'Start' })).toBeNull();
    expect(screen.getByRole('link', { name: 'Measure cam line' }).getAttribute('href')).toBe(
      '#/bench/tag/30921/readings',
    );
  });

  it('lets a lead start it with a reason and the own PIN, sent as the lead', async () => {
    const { inputs, sent } = show(castingOf([operationOf(3, 'surface', { stops: [stop as never], version: 6 })]), {
      'floor/waive-rule': { words: 'Kept.' },
    });
    await press('Lead starts it');
    await userEvent.type(screen.getByLabelText(/Reason/), 'customer measured it');
    await press('Sami Okkerbee');
    await userEvent.type(screen.getByLabelText('PIN'), '740101');
    await press('Lead starts it');
    await waitFor(() => expect(inputs('floor/waive-rule')).toHaveLength(1));
    expect(inputs('floor/waive-rule')[0]).toEqual({
      operationId: 3,
      seenVersion: 6,
      ruleId: 11,
      reason: 'customer measured it',
    });
    expect(sent.find((one) => one.name === 'floor/waive-rule')).toMatchObject({ as: 9, pin: '740101' });
  });

  it('keeps the reason and says so when the PIN is wrong', async () => {
    const { inputs } = show(castingOf([operationOf(3, 'surface', { stops: [stop as never] })]), {
      'staff/sign-in': { signedIn: false, message: 'That PIN is not right.' },
    });
    await press('Lead starts it');
    await userEvent.type(screen.getByLabelText(/Reason/), 'customer measured it');
    await press('Sami Okkerbee');
    await userEvent.type(screen.getByLabelText('PIN'), '111222');
    await press('Lead starts it');
    expect(await screen.findByText('That PIN is not right.')).toBeTruthy();
    expect(inputs('floor/waive-rule')).toEqual([]);
    expect((screen.getByLabelText(/Reason/) as HTMLInputElement).value).toBe('customer measured it');
  });

  it('asks for the metal with the magnet in words before a caustic wash', async () => {
    const metal = {
      ...stop,
      words: 'Confirm the metal first: does a magnet stick?',
      rule: null,
      wayOn: { words: 'Confirm the metal', request: 'castings/confirm-metal', input: {} },
    };
    const { inputs } = show(castingOf([operationOf(3, 'hot tank', { stops: [metal as never] })]), {
      'castings/confirm-metal': { version: 2, metalWord: 'IRON', warnings: [] },
    });
    await press('Confirm the metal');
    expect(screen.getByText(/two places, away from seat inserts/)).toBeTruthy();
    await userEvent.click(screen.getByLabelText('Iron'));
    await waitFor(() =>
      expect(inputs('castings/confirm-metal')).toEqual([{ castingId: 1, material: 'iron_grey', how: 'magnet' }]),
    );
  });

  it('shows why the host refused and leaves the operation as it is', async () => {
    show(castingOf([operationOf(3, 'wash', { mayStart: true, next: true })]), {
      'floor/start-operation': new Refusal({
        kind: 'rule-broken',
        code: 'floor/not-approved',
        message: 'Not approved yet: ask the customer.',
      }),
    });
    await press('Start');
    expect(await screen.findByText('Not approved yet: ask the customer.')).toBeTruthy();
    expect(screen.getByRole('button', { name: 'Start' })).toBeTruthy();
  });

  it('says metal and warnings in words, paper that is out of date, and who must move', async () => {
    show(castingOf([operationOf(3, 'wash')], { paperWords: 'Paper is revision 1, now 2.', identityInDoubt: true }));
    expect(await screen.findByText('ALUMINIUM - NO CAUSTIC')).toBeTruthy();
    expect(screen.getByText('ALUMINIUM')).toBeTruthy();
    expect(screen.getByText(/Paper is revision 1, now 2/)).toBeTruthy();
    expect(screen.getByText('Identity in doubt.')).toBeTruthy();
  });

  it('leaves an operation out with a reason, and does one again with its cause', async () => {
    const done = operationOf(2, 'wash', { mark: 'done', word: 'done', version: 5 });
    const { inputs } = show(castingOf([done, operationOf(3, 'surface', { version: 4 })]), {
      'floor/mark-not-needed': { words: 'Kept.' },
      'floor/redo-operation': { words: 'Kept.', operationId: 9 },
    });
    await press('Not needed');
    await userEvent.type(screen.getByLabelText('Why is it not needed?'), 'flat enough');
    await press('Leave it out');
    await waitFor(() =>
      expect(inputs('floor/mark-not-needed')).toEqual([{ operationId: 3, seenVersion: 4, why: 'flat enough' }]),
    );
    await press(/^wash/);
    await press('Do it again');
    await userEvent.click(screen.getByLabelText('tool wear'));
    await waitFor(() =>
      expect(inputs('floor/redo-operation')).toEqual([
        { operationId: 2, seenVersion: 5, cause: 'tool_wear', words: null },
      ]),
    );
  });
});
