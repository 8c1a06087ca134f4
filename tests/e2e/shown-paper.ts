/** The paper that is on the screen now, as its bytes. */
import type { Page } from '@playwright/test';

/** @param words how its preview is headed */
export async function shownPaper(page: Page, words: string | RegExp): Promise<Uint8Array> {
  const frame = page.getByTitle(words);
  await frame.waitFor();
  const address = await frame.getAttribute('src');
  if (address === null) throw new Error('the preview shows no file');
  const answer = await page.context().request.get(new URL(address, page.url()).href);
  return answer.body();
}
