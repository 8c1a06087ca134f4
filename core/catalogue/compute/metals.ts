/**
 * How much metals grow when they are warmed, as data.
 *
 * `alpha` is 1e-9 per kelvin (21 500 is 21.5e-6). Where a metal has a range, both ends are given and a formula takes the end
 * that promises less. The figures are for ordinary temperatures; a maker's own figure is better.
 */
import { divideRounded } from '../../kernel/units.ts';

export type Metal = Readonly<{ words: string; alpha: Readonly<{ low: number; high: number }>; source: string }>;

const metal = (words: string, source: string, low: number, high = low): Metal => ({
  words,
  alpha: { low, high },
  source,
});

const TEXTBOOK = 'Fundamentals of Materials Science and Engineering, 3rd ed., Table B.6';

/** Metals of castings, by the casting's material. */
export const CASTING_METALS: Readonly<Record<string, Metal>> = {
  aluminium: metal('aluminium (casting alloy 356)', TEXTBOOK, 21_500),
  iron_grey: metal('grey iron', 'a public materials table of grades G1800 to G4000; others print 10.8', 11_400),
  iron_ductile: metal('ductile iron (60-40-18)', TEXTBOOK, 11_200),
  steel: metal('carbon steel', 'from memory', 11_700),
};

/** Metals of parts that are fitted, by the word a person chooses. */
export const PART_METALS: Readonly<Record<string, Metal>> = {
  'grey iron': metal('grey iron', 'a public materials table of grades G1800 to G4000; others print 10.8', 11_400),
  'ductile iron': metal('ductile iron', TEXTBOOK, 11_200),
  steel: metal('carbon steel', 'from memory', 11_700),
  'powder metal': metal('powder metal', 'from memory, 10 to 13', 10_000, 13_000),
  bronze: metal('bearing bronze (C93200)', TEXTBOOK, 18_000),
};

/** `aluminium (casting alloy 356) 21.5`: the figure a formula used, in µm/m for each °C. */
export function growthWords({ words }: Metal, alpha: number): string {
  const tenths = divideRounded(BigInt(alpha), 100n).toString();
  return `${words} ${tenths.slice(0, -1)}.${tenths.slice(-1)}`;
}
