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
 * Bring it in. A second time adds nothing.
 *
 * @param ask sends one command as somebody who may edit the catalogue
 * @throws Error with the sentence of the first command that is refused: the program's own data must fit
 */
export async function bringInCatalogue(ask: Ask): Promise<void> {
  const { newQuantities } = (await sent(ask, 'operations/bring-in', readEntries())) as { newQuantities: string[] };
  const limits = SHOP_LIMITS.filter((limit) => newQuantities.includes(limit.quantity));
  for (const limit of limits) {
    await sent(ask, 'limits/add-limit', { ...limit, for: 'shop', secondUnitText: null });
  }
}

/**
 * Bring an older workspace up to what this program knows; what the shop has under the same code stays. Nothing happens before
 * the first run, nor where nothing is new.
 */
export async function bringUpToDate(ask: Ask): Promise<void> {
  const { whole } = (await sent(ask, 'operations/is-brought-in', readEntries())) as { whole: boolean };
  if (!whole) await bringInCatalogue(ask);
}

async function sent(ask: Ask, name: string, input: unknown): Promise<unknown> {
  const reply = await ask(name, input);
  if (!reply.ok) throw new Error(`${name}: ${reply.error.message} ${JSON.stringify(reply.error.fields ?? {})}`);
  return reply.output;
}
