/** The first day of an empty workspace, in a real browser: the shop is opened, nothing typed is lost, and a casting is checked in. */
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser } from '@playwright/test';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serveWorkspace } from '#electron/lan/serve.ts';
import { openApp } from '#electron/wiring/open-app.ts';
import { launchBrowser } from '#tests/kit/browser.ts';
import { temporaryFolder } from '#tests/kit/temporary-folder.ts';

describe('the first run', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await launchBrowser();
  });
  afterAll(() => browser.close());

  it('needs name, person and PIN; says a weak PIN beside its field; keeps the rest over a reload; opens on check-in', async () => {
    const app = openApp({ folder: temporaryFolder(), home: temporaryFolder() });
    const serving = await serveWorkspace(app, { port: 0 });
    const page = await (await browser.newContext({ viewport: { width: 1366, height: 768 } })).newPage();
    const errors: string[] = [];
    page.on('console', (message) => message.type() === 'error' && errors.push(message.text()));
    await page.goto(serving.pairingAddress);

    await page.getByText('Write the shop name.').waitFor();
    await page.keyboard.type('Żółw & Søn 車 😀');
    await page.getByLabel('Address').fill('14 Ferris Street, Alder Falls');
    await page.getByRole('radio', { name: 'mm' }).check();
    await page.getByLabel('Your name').fill('Zdzisława Żółwińska');
    await page.reload();
    await page.getByLabel('PIN').waitFor();
    expect(await page.getByLabel('Shop name').inputValue()).toBe('Żółw & Søn 車 😀');
    expect(await page.getByRole('radio', { name: 'mm' }).isChecked()).toBe(true);
    await page.getByLabel('PIN').fill('123456');
    await page.keyboard.press('Control+Enter');
    await page.getByRole('alert').first().waitFor();
    expect(await page.getByLabel('PIN').getAttribute('aria-invalid')).toBe('true');
    expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);

    await page.getByLabel('PIN').fill('740281');
    await page.keyboard.press('Control+Enter');
    await page.getByRole('combobox', { name: /Customer/ }).waitFor();

    expect(page.url()).toMatch(/#\/counter\/check-in$/);
    expect(await page.getByRole('banner').getByText('Zdzisława Żółwińska').isVisible()).toBe(true);
    await page.close();
    await serving.stop();
    await app.close();
    expect(errors).toEqual([]);
  }, 60_000);
});
