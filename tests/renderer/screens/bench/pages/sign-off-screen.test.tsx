import { cleanup, screen, waitFor } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, describe, expect, it } from 'vitest';
import { SignOffScreen } from '#renderer/screens/bench/pages/sign-off-screen.tsx';
import { showBench } from '../around.tsx';
import { castingOf } from '../castings.ts';

afterEach(cleanup);

const sheet = {
  castingId: 1,
  tag: 30921,
  version: 8,
  ticketNumber: 10482,
  placeWords: 'RIGHT',
  word: 'work done',
  needed: 1,
  signatures: [],
  nextPlace: 'first',
  notDone: [],
  readings: [],
  partsNotFitted: [],
  counts: [],
  photosWanted: [],
  waivers: [],
  stops: [],
  maySign: true,
  whyNot: null,
  samePersonAllowed: false,
};
const fail = {
  quantity: 'installed-height',
  quantityId: 1,
  spotId: 13,
  stage: 'after',
  point: null,
  words: '3E1 installed height',
  verdict: 'fail',
  value: '34.62 mm',
  limit: '34.75 – 35.25 mm',
  decision: null,
  stops: true,
};
const show = (over: Record<string, unknown>, answers = {}) =>
  showBench(<SignOffScreen tag={30921} />, {
    'floor/get-bench': castingOf([]),
    'castings/get-sign-off': { ...sheet, ...over },
    ...answers,
  });
const press = async (name: string) => userEvent.click(await screen.findByRole('button', { name }));

describe('SignOffScreen', () => {
  it('signs as the person who gives name and PIN, with the version that was seen', async () => {
    const { inputs, sent } = show(
      {},
      {
        'castings/sign-off-casting': { words: 'Signed.', word: 'signed off', signOff: 1, place: 'first', more: false },
      },
    );
    await press('Sami Okkerbee');
    await userEvent.type(screen.getByLabelText('PIN'), '740101');
    await press('Sign 30921');
    await waitFor(() =>
      expect(inputs('castings/sign-off-casting')).toEqual([{ castingId: 1, seenVersion: 8, place: 'first' }]),
    );
    expect(sent.find((one) => one.name === 'castings/sign-off-casting')).toMatchObject({ as: 9, pin: '740101' });
  });

  it('stays shut while anything stops it and lists every sentence', async () => {
    const stops = [
      { kind: 'reading', strength: 'hard', words: 'Not measured: 3E1 margin.', short: '', wayOn: null, rule: null },
    ];
    show({
      stops,
      notDone: [{ operationId: 7, words: 'vacuum test', state: 'ready to start' }],
      counts: ['2 plugs out, 1 back'],
    });
    expect(await screen.findByText('Not measured: 3E1 margin.')).toBeTruthy();
    expect(screen.getByText('vacuum test')).toBeTruthy();
    expect(screen.getByText('2 plugs out, 1 back')).toBeTruthy();
    expect(screen.getByRole('button', { name: 'Sign 30921' }).getAttribute('aria-disabled')).toBe('true');
  });

  it('lets a lead accept a failed reading with words; the verdict stays', async () => {
    const { inputs, sent } = show({ readings: [fail] }, { 'readings/decide-reading': { value: 34_620_000 } });
    await userEvent.type(await screen.findByLabelText(/Why 3E1 installed height/), 'customer wants it so');
    const [lead] = screen.getAllByRole('button', { name: 'Sami Okkerbee' });
    const [pin] = screen.getAllByLabelText('PIN');
    if (!lead || !pin) throw new Error('no form for the lead');
    await userEvent.click(lead);
    await userEvent.type(pin, '740101');
    await press('Lead accepts 1 of 1');
    await waitFor(() => expect(inputs('readings/decide-reading')).toHaveLength(1));
    expect(inputs('readings/decide-reading')[0]).toMatchObject({
      quantity: 'installed-height',
      spot: 13,
      accept: true,
      words: 'customer wants it so',
    });
    expect(sent.find((one) => one.name === 'readings/decide-reading')).toMatchObject({ as: 9 });
    expect(screen.getByText('fail')).toBeTruthy();
  });

  it('lets a lead reopen a signed casting with a reason', async () => {
    const signature = {
      place: 'first',
      by: { staff: 3, initials: 'OB', name: 'Odile Brackwen' },
      at: '2026-03-09T14:00:00.000Z',
      samePersonOkBy: null,
    };
    const { inputs, sent } = show(
      { signatures: [signature], nextPlace: null, word: 'signed off' },
      { 'castings/reopen-casting': { words: 'Reopened.', word: 'work done' } },
    );
    await press('Reopen');
    await userEvent.type(screen.getByLabelText('Reason'), 'wrong head');
    await press('Sami Okkerbee');
    await userEvent.type(screen.getByLabelText('PIN'), '740101');
    await press('Reopen 30921');
    await waitFor(() => expect(inputs('castings/reopen-casting')).toEqual([{ castingId: 1, reason: 'wrong head' }]));
    expect(sent.find((one) => one.name === 'castings/reopen-casting')).toMatchObject({ as: 9, pin: '740101' });
  });
});
