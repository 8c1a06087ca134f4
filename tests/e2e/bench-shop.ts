/** A shop of its own with the practice shop's catalogue and people, two heads checked in, and a tablet that is paired with it. */
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from '@playwright/test';
import type { RequestName } from '#core/app-contract.ts';
import { loadShop } from '#demo-data/load-shop.ts';
import staff from '#demo-data/staff.json' with { type: 'json' };
import { serveWorkspace } from '#electron/lan/serve.ts';
import { openApp } from '#electron/wiring/open-app.ts';
import { openWorkspace } from '#electron/wiring/open-workspace.ts';
import { commandLineSession } from '#electron/wiring/sessions.ts';
import { temporaryFolder } from '#tests/kit/temporary-folder.ts';

export type Shop = Readonly<{
  pairingAddress: string;
  address: string;
  /** Send a request as somebody, outside the browser. */
  ask: <T>(name: RequestName, input: unknown, initials: string) => Promise<T>;
  close: () => Promise<void>;
}>;

/** Opens the shop and serves it to this computer on a free port. */
export async function openBenchShop(): Promise<Shop> {
  const folder = temporaryFolder();
  let now = new Date('2027-03-02T12:00:00.000Z');
  const made = openWorkspace(folder, { clock: () => now, pinCost: 2 ** 6 });
  await loadShop(
    {
      ask: (name, input, initials = 'OB') =>
        made.answer({ name, input }, { ...commandLineSession(made.host(), initials), from: 'test' }),
      setClock: (moment) => {
        now = new Date(moment);
      },
    },
    { stopNow: false },
  );
  await made.close();
  const app = openApp({ folder, home: temporaryFolder() });
  const serving = await serveWorkspace(app, { port: 0 });
  return {
    pairingAddress: serving.pairingAddress,
    address: serving.address,
    async ask<T>(name: RequestName, input: unknown, initials: string) {
      const session = { ...commandLineSession(app.host(), initials), from: 'test' };
      const reply = await app.answer({ name, input }, session);
      if (!reply.ok) throw new Error(`${name}: ${reply.error.message}`);
      return reply.output as T;
    },
    async close() {
      await serving.stop();
      await app.close();
    },
  };
}

export type Tablet = Readonly<{
  page: Page;
  /** What the browser complained about. */
  errors: string[];
  go: (place: string) => Promise<void>;
  tap: (name: string | RegExp) => Promise<void>;
  close: () => Promise<void>;
}>;

/** A paired tablet on which this person has signed in by tapping the name and the PIN. */
export async function openTablet(
  browser: Browser,
  shop: Shop,
  initials: string,
  [width, height]: readonly [number, number],
): Promise<Tablet> {
  const context = await browser.newContext({ viewport: { width, height }, hasTouch: true });
  const page = await context.newPage();
  const errors: string[] = [];
  page.on('console', (message) => message.type() === 'error' && errors.push(message.text()));
  page.on('pageerror', (error) => errors.push(error.message));
  await page.goto(shop.pairingAddress);
  const person = staff.staff.find((one) => one.initials === initials);
  if (!person?.demoPin) throw new Error(`nobody is ${initials}`);
  await page.getByRole('button', { name: new RegExp(person.name) }).tap();
  for (const digit of person.demoPin) await page.getByRole('button', { name: digit, exact: true }).tap();
  await page.getByRole('button', { name: 'Sign in' }).tap();
  await page.getByRole('banner').getByText(person.name).waitFor();
  return {
    page,
    errors,
    async go(place) {
      await page.goto(`${shop.address}#${place}`);
    },
    async tap(name) {
      await page
        .getByRole('button', typeof name === 'string' ? { name, exact: true } : { name })
        .first()
        .tap();
    },
    close: () => context.close(),
  };
}

/** Names of the accessibility rules that this page breaks. */
export async function brokenRules(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  return violations.map((rule) => `${rule.id}: ${rule.nodes.map((node) => node.target.join(' ')).join(', ')}`);
}
