/**
 * The catalogue that the program brings to a new shop: operations, order rules, findings, conditions, packages without
 * prices, quantities, bench tables and the shop's first limits. Brought in by ordinary commands; what the shop has under
 * the same code stays as it is.
 */
import { readFileSync } from 'node:fs';
import { SHOP_LIMITS } from '#core/catalogue/compute/shop-limits.ts';
import type { EntriesTyped } from '#core/catalogue/contract/entries.ts';
import type { Reply } from '#core/host/reply.ts';

const read = (name: string): Partial<EntriesTyped> =>
  JSON.parse(
    readFileSync(new URL(`../../assets/catalogue/${name}.json`, import.meta.url), 'utf8'),
  ) as Partial<EntriesTyped>;

/** Every list of `assets/catalogue`. */
function readEntries(): EntriesTyped {
  const rules = read('order-rules');
  return {
    quantities: true,
    workCentres: read('work-centres').workCentres,
    operations: read('operations').operations,
    groups: rules.groups,
    rules: rules.rules,
    findings: read('findings').findings,
    conditions: read('conditions').conditions,
    packages: read('packages').packages,
  };
}

type Ask = (name: string, input: unknown) => Promise<Reply>;

/**
 * Bring a workspace up to what this program knows, a new one from nothing; what the shop has under the same code stays, and
 * nothing is written where nothing is new. Broken off half way, it goes on where it stopped.
 *
 * @param ask sends one command as somebody who may edit the catalogue
 * @throws Error with the sentence of the first command that is refused
 */
export async function bringUpToDate(ask: Ask): Promise<void> {
  const entries = readEntries();
  const { whole } = (await sent(ask, 'operations/is-brought-in', entries)) as { whole: boolean };
  if (!whole) await sent(ask, 'operations/bring-in', entries);
  const places = SHOP_LIMITS.map(({ quantity, stage, side }) => ({ quantity, stage, side }));
  const missing = (await sent(ask, 'limits/list-missing', { limits: places })) as typeof places;
  const isMissing = (limit: (typeof SHOP_LIMITS)[number]): boolean =>
    missing.some((it) => it.quantity === limit.quantity && it.stage === limit.stage && it.side === limit.side);
  for (const limit of SHOP_LIMITS.filter(isMissing)) {
    await sent(ask, 'limits/add-limit', { ...limit, for: 'shop', secondUnitText: null });
  }
}

async function sent(ask: Ask, name: string, input: unknown): Promise<unknown> {
  const reply = await ask(name, input);
  if (!reply.ok) throw new Error(`${name}: ${reply.error.message} ${JSON.stringify(reply.error.fields ?? {})}`);
  return reply.output;
}
