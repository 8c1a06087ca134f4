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

/**
 * Bring it in. A second time adds nothing.
 *
 * @param ask sends one command as somebody who may edit the catalogue
 * @throws Error with the sentence of the first command that is refused: the program's own data must fit
 */
export async function bringInCatalogue(ask: (name: string, input: unknown) => Promise<Reply>): Promise<void> {
  const { added } = (await sent(ask, 'operations/bring-in', readEntries())) as { added: number };
  if (added === 0) return;
  for (const limit of SHOP_LIMITS) {
    await sent(ask, 'limits/add-limit', { ...limit, target: null, for: 'shop', secondUnitText: null });
  }
}

async function sent(
  ask: (name: string, input: unknown) => Promise<Reply>,
  name: string,
  input: unknown,
): Promise<unknown> {
  const reply = await ask(name, input);
  if (!reply.ok) throw new Error(`${name}: ${reply.error.message} ${JSON.stringify(reply.error.fields ?? {})}`);
  return reply.output;
}
