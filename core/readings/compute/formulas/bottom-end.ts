/** Bearings and what runs in them. Clearance is the housing less two shells less the journal; all common practice, no source. */
import { divideRounded } from '../../../kernel/units.ts';
import { type Known, type Look, made, madeBy } from '../look.ts';
import { difference, type Formula, largest, range } from './formula.ts';
import { asFarAsRead, least, type PointsRead, readPoints, unlessEmpty } from './points.ts';
import { sayAbout } from './say.ts';

/** Usual clearance for each unit of journal, in hundred-thousandths: three quarters of a thou to one thou an inch. */
const RULE = [75n, 100n] as const;

function ruleOfThumb(look: Look, journal: number): string {
  const [low, high] = RULE.map((part) => divideRounded(BigInt(journal) * part, 100_000n));
  return `usual for this journal: ${sayAbout(look, low ?? 0)} to ${sayAbout(look, high ?? 0)}`;
}

type Bearing = Readonly<{ housing: string; shell: string; journal: string }>;

/** Vertical size of the housing: as finished, else as found. */
const housingOf = (look: Look, quantity: string): Known | null =>
  look.value(quantity, { point: '0', stage: 'after' }) ?? look.value(quantity, { point: '0', stage: 'before' });

const clearance =
  ({ housing, shell, journal }: Bearing): Formula =>
  (look) => {
    const [bore, wall, shaft] = [housingOf(look, housing), look.figure(shell), look.figure(journal)];
    if (bore?.value == null || wall?.value == null || shaft?.value == null) return null;
    const parts: [Known, number][] = [
      [bore, 1],
      [wall, -2],
      [shaft, -1],
    ];
    return madeBy(parts, bore.value - 2 * wall.value - shaft.value, [ruleOfThumb(look, shaft.value)]);
  };

const readJournal = (look: Look): PointsRead => readPoints(look, 'journal-place');

/** Differences between the places that agree in one part of their code. */
const journalRange =
  (quantity: string, part: 0 | 1): Formula =>
  (look) => {
    const journal = readJournal(look);
    const groups = [...Map.groupBy(journal.read, ({ code }) => code.split('-')[part]).values()];
    const worst = largest(groups.map((group) => range(group.map(({ known }) => known))));
    return unlessEmpty(journal, () => asFarAsRead(look, quantity, worst, journal.missing));
  };

function smallest(look: Look): Known | null {
  const journal = readJournal(look);
  const place = least(journal.read);
  const known = place ? made([place.known], place.value, [place.words]) : null;
  return unlessEmpty(journal, () => asFarAsRead(look, 'journal-size', known, journal.missing));
}

export const BOTTOM_END_FORMULAS: Readonly<Record<string, Formula>> = {
  'bearing-clearance': clearance({ housing: 'main-size', shell: 'main-shell', journal: 'main-journal' }),
  'rod-clearance': clearance({ housing: 'big-end-place', shell: 'rod-shell', journal: 'pin-journal' }),
  'cam-clearance': (look) => difference(look.either('cam-bearing-sizes'), look.figure('cam-journal-size')),
  'journal-size': smallest,
  'journal-taper': journalRange('journal-taper', 1),
  'journal-out-of-round': journalRange('journal-out-of-round', 0),
};
