import { afterAll, describe, expect, it } from 'vitest';
import { closeBrowser, startBrowserApp } from '#tests/kit/browser-app.ts';

afterAll(closeBrowser);

describe('a browser at the counter', () => {
  it('signs in by name and PIN and opens on the counter', async () => {
    const { page, signIn, checkAccess, end } = await startBrowserApp('2027-03-02 07:30');

    await signIn('Teodor Vaskelund', '740102');
    await page.getByText('Tuesday 2 March').waitFor();

    expect(await page.getByText('Nothing is promised today.').first().isVisible()).toBe(true);
    await checkAccess();
    await end();
  });
});
