/**
 * The whole app as a person has it: a host on 127.0.0.1 with the practice shop's people, catalogue and customers (no ticket
 * yet), a real browser paired with it, and a clock that the test sets.
 *
 * `end` fails when the page wrote an error to its console.
 */
import { cpSync } from 'node:fs';
import { join } from 'node:path';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, BrowserContext, Page } from '@playwright/test';
import { expect } from 'vitest';
import { loadShop } from '#demo-data/load-shop.ts';
import { momentOf } from '#demo-data/stories/kit.ts';
import { serveWorkspace } from '#electron/lan/serve.ts';
import { openApp, type RunningApp } from '#electron/wiring/open-app.ts';
import { openWorkspace } from '#electron/wiring/open-workspace.ts';
import { commandLineSession } from '#electron/wiring/sessions.ts';
import { launchBrowser } from './browser.ts';
import { folderOfFile, temporaryFolder } from './temporary-folder.ts';

const PIN_COST = 2 ** 4;

export type BrowserApp = Readonly<{
  app: RunningApp;
  page: Page;
  /** Set the clock to a time on the shop's wall, `2027-03-02 07:40`. */
  at(wall: string): void;
  /** Ask the host directly, as the person with these initials. */
  ask(name: string, input: unknown, initials?: string): Promise<unknown>;
  /** Tap the name, type the PIN. */
  signIn(name: string, pin: string): Promise<void>;
  /** Another screen of the same shop, paired, with its own size. */
  anotherScreen(size: Size): Promise<Page>;
  /** No violation of WCAG 2.2 A and AA on what is shown now. */
  checkAccess(page?: Page): Promise<void>;
  /** Close all; fails when a page wrote an error to its console. */
  end(): Promise<void>;
}>;

export type Size = Readonly<{ width: number; height: number; touch?: boolean }>;
const COUNTER: Size = { width: 1366, height: 768 };
export const TABLET: Size = { width: 1280, height: 800, touch: true };

let base: Promise<string> | undefined;
let browser: Promise<Browser> | undefined;

/** The shop without tickets, made once for all tests of a file. */
async function makeBase(): Promise<string> {
  const folder = join(folderOfFile(), 'shop');
  let now = new Date('2026-01-05T14:00:00.000Z');
  const workspace = openWorkspace(folder, { clock: () => now, pinCost: PIN_COST });
  await loadShop({
    ask: (name, input, initials = 'OB') =>
      workspace.answer({ name, input }, commandLineSession(workspace.host(), initials)),
    setClock: (moment) => {
      now = new Date(moment);
    },
  });
  await workspace.close();
  return folder;
}

/** @param wall the time to begin at */
export async function startBrowserApp(wall: string, size: Size = COUNTER): Promise<BrowserApp> {
  base ??= makeBase();
  browser ??= launchBrowser();
  const folder = join(temporaryFolder(), 'shop');
  cpSync(await base, folder, { recursive: true });
  let now = momentOf(wall);
  const app = openApp({ folder, home: temporaryFolder(), clock: () => new Date(now), pinCost: PIN_COST });
  const serving = await serveWorkspace(app, { port: 0 });
  const errors: string[] = [];
  const contexts: BrowserContext[] = [];
  const open = async ({ width, height, touch = false }: Size): Promise<Page> => {
    const context = await (await (browser as Promise<Browser>)).newContext({
      viewport: { width, height },
      hasTouch: touch,
      reducedMotion: 'reduce',
    });
    contexts.push(context);
    const page = await context.newPage();
    page.on('console', (message) => {
      if (message.type() === 'error') errors.push(message.text());
    });
    page.on('pageerror', (error) => errors.push(error.message));
    await page.goto(serving.pairingAddress);
    return page;
  };
  const page = await open(size);
  const signInOn = async (on: Page, name: string, pin: string): Promise<void> => {
    await on
      .getByRole('button', { name: new RegExp(name) })
      .first()
      .click();
    await on.keyboard.type(pin);
    await on.keyboard.press('Enter');
  };
  return {
    app,
    page,
    at: (time) => {
      now = momentOf(time);
    },
    async ask(name, input, initials = 'OB') {
      const reply = await app.answer({ name, input }, commandLineSession(app.host(), initials));
      if (!reply.ok) throw new Error(`${name}: ${reply.error.code} ${reply.error.message}`);
      return reply.output;
    },
    signIn: (name, pin) => signInOn(page, name, pin),
    anotherScreen: open,
    async checkAccess(on = page) {
      const { violations } = await new AxeBuilder({ page: on })
        .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
        .analyze();
      expect(violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(' ')).join(', ')}`)).toEqual([]);
    },
    async end() {
      for (const context of contexts) await context.close();
      await serving.stop();
      await app.close();
      expect(errors).toEqual([]);
    },
  };
}

/** Close the browser after the last test of a file. */
export async function closeBrowser(): Promise<void> {
  await (await browser)?.close();
  browser = undefined;
}
