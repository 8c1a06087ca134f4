/** How fine a face is: measured, compared with a card, or estimated from the cutter; and for which gasket. */
import { GASKETS } from '../limits-by-word.ts';
import { fine, type Quantity, quantity, tally, word } from '../quantity.ts';

const rough = { family: 'roughness', over: 'too rough', under: 'too smooth' } as const;
const extra = { optional: true } as const;

export const FINISH: readonly Quantity[] = [
  quantity('gasket-kind', 'gasket', { ...word, choices: [...Object.values(GASKETS), 'other'] }),
  // Measured; where nobody has a profilometer it is what the card said.
  quantity('finish-ra', 'finish Ra', { ...rough, derived: 'finish-ra', orTyped: true }),
  quantity('finish-card', 'finish by the card, about', { ...rough, ...extra, compared: true }),
  quantity('finish-rz', 'finish Rz', { ...rough, ...extra }),
  quantity('finish-rz-low', 'Rz, estimated at least', { ...rough, ...extra, derived: 'finish-rz-low' }),
  quantity('finish-rz-high', 'Rz, estimated at most', { ...rough, ...extra, derived: 'finish-rz-high' }),
  quantity('finish-expected', 'Ra expected', { ...rough, ...extra }),
  quantity('finish-cut-off', 'cut-off to set', { ...extra, unit: 'mm', derived: 'finish-cut-off' }),
  quantity('finish-evaluation', 'length to measure over', { ...extra, unit: 'mm', derived: 'finish-evaluation' }),
  quantity('cutter-feed', 'feed for each turn', { ...fine, ...extra }),
  quantity('cutter-table-feed', 'table feed in a minute', { ...extra, over: 'too fast', under: 'too slow' }),
  quantity('cutter-turns', 'turns in a minute', { ...tally, ...extra }),
  quantity('cutter-nose', 'nose radius of the cutter', { ...fine, ...extra }),
  quantity('cutter-ra', 'Ra estimated from the cutter', { ...rough, ...extra, derived: 'cutter-ra' }),
  quantity('cutter-peak', 'peak to valley, estimated', { ...rough, ...extra, derived: 'cutter-peak' }),
  // These carry limits that depend on the gasket.
  quantity('finish-ra-composition', 'finish Ra, composition gasket', rough),
  quantity('finish-ra-soft', 'finish Ra, soft-faced gasket', rough),
  quantity('finish-ra-mls', 'finish Ra, MLS gasket', rough),
  quantity('finish-ra-mls-sure', 'finish Ra, any MLS gasket', rough),
  quantity('finish-ra-diesel', 'finish Ra, ground diesel face', rough),
];
