import { cleanup, screen, waitFor } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { FoundScreen } from '#renderer/screens/bench/pages/found-screen.tsx';
import { Refusal, showBench } from '../around.tsx';
import { CASTING_TYPE, castingOf, operationOf } from '../castings.ts';

beforeEach(() => sessionStorage.clear());
afterEach(cleanup);

const answers = {
  'floor/get-bench': castingOf([operationOf(3, 'pressure test')]),
  'operations/get-casting-type': CASTING_TYPE,
  'operations/list-findings': { findings: [{ id: 5, code: 'crack', shopWords: 'crack', note: null, offers: [] }] },
};
const kept = {
  words: 'Kept: crack on 30921.',
  findingId: 1,
  holdId: 1,
  offers: [{ kindCode: 'pin', words: 'stitch crack', alsoNeeded: false }],
  otherOne: [{ castingId: 2, tag: 30922, question: '30922 is the other one of the pair: hold it or go on?' }],
};
const press = async (name: string) => userEvent.click(await screen.findByRole('button', { name }));

describe('FoundScreen', () => {
  it('keeps a finding with place and hold in four touches', async () => {
    const { inputs } = showBench(<FoundScreen tag={30921} />, { ...answers, 'floor/report-finding': kept });
    await press('crack');
    await press('valve 4E');
    await press('crack or scrap decision');
    await press('Keep it and hold');
    await waitFor(() =>
      expect(inputs('floor/report-finding')).toMatchObject([
        { castingId: 1, findingKindId: 5, spotId: 32, hold: { reason: 'crack_or_scrap' }, photos: [] },
      ]),
    );
    expect(await screen.findByText('Kept: crack on 30921.')).toBeTruthy();
  });

  it('asks at once about the other casting of a pair', async () => {
    const { inputs } = showBench(<FoundScreen tag={30921} />, {
      ...answers,
      'floor/report-finding': kept,
      'floor/open-hold': { words: '30922 is on hold.', holdId: 2, otherOne: [] },
    });
    await press('crack');
    await press('Keep it');
    await press('Hold 30922');
    await waitFor(() => expect(inputs('floor/open-hold')).toMatchObject([{ castingId: 2, reason: 'crack_or_scrap' }]));
    expect(await screen.findByText('30922 is on hold.')).toBeTruthy();
  });

  it('loses nothing typed when the host says no, nor on a reload', async () => {
    const no = new Refusal({
      kind: 'unavailable',
      code: 'host/disk-full',
      message: 'The disk is full. Nothing typed is lost.',
    });
    const { unmount } = showBench(<FoundScreen tag={30921} />, { ...answers, 'floor/report-finding': no });
    await press('crack');
    await userEvent.type(screen.getByLabelText('In words, if need be'), 'between the seats');
    await press('Keep it');
    expect(await screen.findByText('The disk is full. Nothing typed is lost.')).toBeTruthy();
    unmount();
    showBench(<FoundScreen tag={30921} />, answers);
    expect(((await screen.findByLabelText('In words, if need be')) as HTMLInputElement).value).toBe(
      'between the seats',
    );
    expect((await screen.findByRole('button', { name: 'crack' })).getAttribute('aria-pressed')).toBe('true');
  });

  it('stays shut until something was found', async () => {
    showBench(<FoundScreen tag={30921} />, answers);
    expect((await screen.findByRole('button', { name: 'Keep it' })).getAttribute('aria-disabled')).toBe('true');
    expect(screen.getByText('Touch what you found.')).toBeTruthy();
  });
});
