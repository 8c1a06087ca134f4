/** Finds and starts the browser of the end-to-end tests. */
import { existsSync } from 'node:fs';
import { type Browser, chromium } from '@playwright/test';

/** The browser to drive: the one named by BENCHTAG_BROWSER, Playwright's own, or the system's; undefined without any. */
export function findBrowser(): string | undefined {
  const places = [
    process.env.BENCHTAG_BROWSER,
    chromium.executablePath(),
    '/usr/bin/chromium',
    '/usr/bin/chromium-browser',
    '/usr/bin/google-chrome',
  ];
  return places.find((place) => place !== undefined && existsSync(place));
}

/**
 * Launches Chromium without a window. The caller closes it.
 *
 * @throws Error with one sentence when there is no browser; use `describe.skipIf(lacks('chromium'))`
 */
export function launchBrowser(): Promise<Browser> {
  const executablePath = findBrowser();
  if (executablePath === undefined) {
    throw new Error('No browser for the tests: install chromium, or name one in BENCHTAG_BROWSER.');
  }
  return chromium.launch({
    executablePath,
    // As root Chromium refuses its own sandbox; any other user keeps it.
    chromiumSandbox: process.getuid?.() !== 0,
    // Hinting moves letters by a fraction of a pixel from machine to machine; /dev/shm is tiny in containers.
    args: ['--disable-dev-shm-usage', '--font-render-hinting=none'],
  });
}
