import { cleanup, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { SaveReadings } from '#renderer/kit/save-readings.tsx';
import { Refusal, showBench } from '../screens/bench/around.tsx';

const file = { fileName: 'readings-41170.csv', mime: 'text/csv;charset=utf-8', text: 'tag\r\n41170\r\n', rows: 1 };
const casting = { castingId: 3, tagNo: 41170 };

afterEach(() => {
  cleanup();
  vi.restoreAllMocks();
  delete window.benchtag;
});

describe('SaveReadings', () => {
  it('hands the text to the browser under its name', async () => {
    const names: string[] = [];
    vi.spyOn(HTMLAnchorElement.prototype, 'click').mockImplementation(function (this: HTMLAnchorElement) {
      names.push(this.download);
    });
    const blobs: Blob[] = [];
    vi.spyOn(URL, 'createObjectURL').mockImplementation((blob) => {
      blobs.push(blob as Blob);
      return 'blob:readings';
    });
    const { inputs } = showBench(<SaveReadings castings={[casting]} />, { 'readings/export-readings': file });

    await userEvent.click(await screen.findByRole('button', { name: /CSV, for a spreadsheet/ }));

    expect(await screen.findByText('Saved: readings-41170.csv, 1 rows.')).toBeTruthy();
    expect(names).toEqual(['readings-41170.csv']);
    expect(inputs('readings/export-readings')).toEqual([{ casting: 3, as: 'csv' }]);
    expect(await Promise.all(blobs.map((blob) => blob.text()))).toEqual([file.text]);
  });

  it('asks the desktop where, and says so when the person turns back', async () => {
    const asked: unknown[] = [];
    window.benchtag = {
      async call(request) {
        asked.push(request);
        return { ok: true, output: { saved: null }, touched: [], at: '2026-03-09T14:00:00.000Z' };
      },
      onChange: () => () => undefined,
    };
    showBench(<SaveReadings castings={[casting]} />, { 'readings/export-readings': file });

    await userEvent.click(await screen.findByRole('button', { name: /CSV, for a spreadsheet/ }));

    expect(await screen.findByText('Not saved.')).toBeTruthy();
    expect(asked).toEqual([{ name: 'desktop/save-text', input: { name: file.fileName, text: file.text } }]);
  });

  it('says why the host refused', async () => {
    const no = new Refusal({ kind: 'not-found', code: 'readings/no-such-casting', message: 'This casting is gone.' });
    showBench(<SaveReadings castings={[casting, { castingId: 4, tagNo: 41171 }]} />, {
      'readings/export-readings': no,
    });

    await userEvent.click(await screen.findByRole('button', { name: /Readings 41171: JSON/ }));

    expect(await screen.findByText('This casting is gone.')).toBeTruthy();
  });
});
