/** Short lines of the bench: place, count of pieces, promise, warnings. Pure. */
import { KIND_WORDS, type Kind, metalWarning, type Position, positionWords } from '../../castings/compute.ts';
import type { Material } from '../../catalogue/compute/fit.ts';
import type { Day } from '../../kernel/days.ts';
import { type FormatSettings, formatDayTime } from '../../kernel/format.ts';

export const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** "RIGHT, head 2 of 2"; "head" for a single one. */
export function placeWords(kind: Kind, position: Position, piece: number, of: number): string {
  const name = KIND_WORDS[kind].toLowerCase();
  const count = of > 1 ? `${name} ${piece} of ${of}` : name;
  if (position === 'single') return count;
  return position === 'not_known' ? `${count}, side not known` : `${positionWords(position).toUpperCase()}, ${count}`;
}

/** "12 seats", "1 surface"; "" for a single piece of nothing named. */
export function piecesWords(units: number, chargeUnit: string | null): string {
  const word = unitWords(units, chargeUnit);
  return word === '' ? '' : `${units} ${word}`;
}

/** "seats". Things sold as one (each, set) or by the hour have no word of their own. */
export function unitWords(units: number, chargeUnit: string | null): string {
  if (chargeUnit === null || chargeUnit === 'each' || chargeUnit === 'hour' || chargeUnit === 'set') {
    return units > 1 ? 'pieces' : '';
  }
  return units === 1 ? chargeUnit : `${chargeUnit}s`;
}

type Promised = Readonly<{ day: Day; minute: number; ownTime: boolean }>;

/** The promise in words; late when its time has come and it is not kept. */
export function promiseView(
  promise: Promised | null,
  rush: boolean,
  now: Readonly<{ day: Day; minute: number }>,
  settings: Pick<FormatSettings, 'hourClock'>,
) {
  if (!promise) return null;
  const { day, minute, ownTime } = promise;
  const late = day < now.day || (day === now.day && minute <= now.minute);
  return { day, minute, ownTime, words: formatDayTime({ day, minute }, settings), late, rush };
}

export type Warned = Readonly<{
  material: Material;
  stampAllowed: 'yes' | 'tag_only' | 'ask';
  gasket: string;
  crackCheckDeclined: boolean;
  weightClass: string;
  heldParts: readonly string[];
  removeFirst: readonly string[];
  valveLift: string | null;
  certified: boolean;
}>;

/** Capital lines, most dangerous first. */
export function warningsOf(facts: Warned): string[] {
  const warnings = [
    metalWarning(facts.material),
    facts.removeFirst.length > 0 ? `TAKE OFF BEFORE WASH - ${facts.removeFirst.join(', ').toUpperCase()}` : null,
    facts.weightClass === 'hoist' ? 'USE A HOIST' : facts.weightClass === 'two' ? 'TWO PEOPLE TO LIFT' : null,
    facts.stampAllowed === 'tag_only' ? 'DO NOT STAMP - TAG ONLY' : null,
    facts.stampAllowed === 'ask' ? 'ASK BEFORE STAMPING' : null,
    facts.crackCheckDeclined ? 'CRACK CHECK DECLINED BY THE CUSTOMER' : null,
    facts.gasket === 'mls' ? 'MLS GASKET - FINE FINISH' : null,
    facts.valveLift === null ? null : `VALVE LIFT ${facts.valveLift}`,
    facts.certified ? 'CERTIFIED - GUARD BAND ON' : null,
    ...facts.heldParts.map((words) => `CUSTOMER'S OWN - ${words.toUpperCase()}`),
  ];
  return warnings.filter((line) => line !== null);
}
