/**
 * A hand at the desk that only has a keyboard: it walks with Tab, chooses with arrows, writes, and counts its keys.
 *
 * Fields are found by what a person reads beside them; a field that Tab does not reach fails the test.
 */
import type { Page } from '@playwright/test';

export type DeskHand = Readonly<{
  /** Keys pressed since the last `count`; a letter written is a key. */
  count(): number;
  press(key: string): Promise<void>;
  type(text: string): Promise<void>;
  /** Tab to the field, choice or button that is called so. */
  to(name: string | RegExp): Promise<void>;
  /** Write into a field in place of what stands there. */
  write(label: string | RegExp, text: string): Promise<void>;
  /** Write, wait for the offer that begins so, and take it with Enter. */
  pick(label: string | RegExp, text: string, offer: string): Promise<void>;
  /** Choose one of joined buttons with the arrows. */
  choose(group: string, option: string): Promise<void>;
  tick(label: string | RegExp): Promise<void>;
  /** Tab to a button or link and press Enter. */
  push(name: string | RegExp): Promise<void>;
}>;

/** More stops than any page of the desk has. */
const STOPS = 260;

type Here = Readonly<{ names: readonly string[]; group: string; option: string; checked: boolean }>;

const here = (page: Page): Promise<Here> =>
  page.evaluate(() => {
    const at = document.activeElement;
    const clean = (text: string | null | undefined) => (text ?? '').replace(/\s+/g, ' ').trim();
    if (!(at instanceof HTMLElement) || at === document.body)
      return { names: [], group: '', option: '', checked: false };
    const isField = at instanceof HTMLInputElement || at instanceof HTMLTextAreaElement;
    const labels = isField ? [...(at.labels ?? [])].map((label) => clean(label.textContent)) : [];
    const checked = at.matches(':checked');
    if (at.matches('[type=radio]')) {
      const group = clean(at.closest('fieldset')?.querySelector('legend')?.textContent);
      return { names: [], group, option: labels.join(' '), checked };
    }
    const names = [clean(at.getAttribute('aria-label')), ...labels, clean(at.textContent)].filter(Boolean);
    return { names, group: '', option: '', checked };
  });

const meets = (name: string | RegExp, text: string): boolean =>
  typeof name === 'string' ? text === name : name.test(text);

export function deskHand(page: Page): DeskHand {
  let keys = 0;
  const press = async (key: string): Promise<void> => {
    keys += 1;
    await page.keyboard.press(key);
  };
  const type = async (text: string): Promise<void> => {
    keys += text.length;
    await page.keyboard.type(text);
  };
  const walk = async (what: string, there: (at: Here) => boolean): Promise<Here> => {
    const seen: string[] = [];
    for (let stop = 0; stop < STOPS; stop += 1) {
      const at = await here(page);
      if (there(at)) return at;
      seen.push(at.group || (at.names[0] ?? '-'));
      await press('Tab');
    }
    throw new Error(`Tab does not reach ${what}; it stops at ${[...new Set(seen)].join(' | ')}`);
  };
  const to = async (name: string | RegExp): Promise<void> => {
    await walk(String(name), (at) => at.names.some((one) => meets(name, one)));
  };
  const write = async (label: string | RegExp, text: string): Promise<void> => {
    await to(label);
    await press('Control+a');
    await type(text);
  };
  return {
    count: () => {
      const pressed = keys;
      keys = 0;
      return pressed;
    },
    press,
    type,
    to,
    write,
    async pick(label, text, offer) {
      await write(label, text);
      await page.getByRole('option', { name: offer }).first().waitFor();
      await page.getByText(new RegExp(`(takes|adds) ${offer.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}`)).waitFor();
      await press('Enter');
    },
    async choose(group, option) {
      let at = await walk(group, (one) => one.group === group);
      for (let times = 0; times < 12; times += 1) {
        if (at.option === option) {
          if (!at.checked) await press('Space');
          return;
        }
        await press('ArrowRight');
        at = await here(page);
      }
      throw new Error(`${group} does not offer ${option}`);
    },
    async tick(label) {
      await to(label);
      await press('Space');
    },
    async push(name) {
      await to(name);
      await press('Enter');
    },
  };
}
