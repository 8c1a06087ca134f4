/**
 * The vacuum test of a port: how much is lost in ten seconds, and how much free air that is. Exact fractions.
 *
 * Ten seconds and the readings are common practice, no source. Leak of a rigid volume: `V dP / P / t`, P the air pressure
 * of the day; standard pressure (101.325 kPa by definition) where nobody read it.
 */
import { measureOf } from '../../../kernel/measure-units.ts';
import { divideRounded } from '../../../kernel/units.ts';
import { fromSheet, type Known, type Look, madeBy, unknown } from '../look.ts';
import { difference, type Formula } from './formula.ts';

/** Seconds of the usual test; what the fall is reckoned over. */
const USUAL = 10;
const STANDARD = measureOf('101.325', 'kPa');
/** A test that starts below this says little; from memory. */
const LOW_START = measureOf('20', 'inHg');

/** Seconds between start and end; null when they cannot be. */
function secondsOf(look: Look): number | null {
  const seconds = look.value('port-vacuum-seconds')?.value ?? USUAL;
  return seconds > 0 ? seconds : null;
}

/** Fall between two readings, reckoned over ten seconds. */
function fallOf(look: Look, start: Known | null, end: Known | null): Known | null {
  const fall = difference(start, end);
  if (fall?.value == null) return null;
  const seconds = secondsOf(look);
  if (seconds === null) return unknown('more than no second between start and end is wanted');
  if (seconds === USUAL) return fall;
  const value = divideRounded(BigInt(fall.value) * BigInt(USUAL), BigInt(seconds));
  return madeBy([[fall, USUAL / seconds]], value, [`read over ${seconds} s, reckoned over ${USUAL}`]);
}

function fall(look: Look): Known | null {
  const start = look.value('port-vacuum-start');
  const found = fallOf(look, start, look.value('port-vacuum-end'));
  return found?.value == null ? found : { ...found, marks: [...found.marks, ...saidOf(look, start, found.value)] };
}

/** What must be said beside a fall. */
function saidOf(look: Look, start: Known | null, value: number): string[] {
  const { stage } = look.place;
  const said: string[] = [];
  if (look.words('port-vacuum-how', stage) === 'oiled') said.push('seats oiled: proves nothing, repeat dry');
  if (start?.value != null && start.value < LOW_START) said.push('started low: pull to about 25 inHg');
  const most = look.high('port-vacuum-fall');
  const blocked = look.value('port-blocked-fall')?.value ?? null;
  if (most !== null && blocked !== null && value > most)
    said.push(
      blocked <= most ? 'holds with the guide blocked: guide or seal leaks' : 'leaks with the guide blocked: the seat',
    );
  return said;
}

/** Free air a minute. */
function leak(look: Look): Known | null {
  const lost = difference(look.value('port-vacuum-start'), look.value('port-vacuum-end'));
  const volume = look.figure('port-volume');
  const seconds = secondsOf(look);
  if (lost?.value == null || volume?.value == null || seconds === null) return null;
  const air = look.figure('local-pressure') ?? fromSheet(STANDARD, 'at standard air pressure');
  if (air.value === null || air.value <= 0) return unknown('the air pressure of the day cannot be nothing');
  const value = divideRounded(BigInt(volume.value) * BigInt(lost.value) * 60n, BigInt(air.value) * BigInt(seconds));
  const aMinute = 60 / seconds / air.value;
  return madeBy(
    [
      [lost, volume.value * aMinute],
      [volume, lost.value * aMinute],
      [air, value / air.value],
    ],
    value,
  );
}

export const PORT_FORMULAS: Readonly<Record<string, Formula>> = {
  'port-vacuum-fall': fall,
  'port-blocked-fall': (look) => fallOf(look, look.value('port-blocked-start'), look.value('port-blocked-end')),
  'port-leak': leak,
  // Read at valves in older workspaces.
  'vacuum-fall': (look) => difference(look.value('vacuum-start'), look.value('vacuum-end')),
};
