import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { missingPorts, spotsFromCounts } from '#core/catalogue/compute/spots.ts';

const valves = (counts: Record<string, number>) => spotsFromCounts('head', counts).filter((s) => s.kind === 'valve');

describe('spotsFromCounts', () => {
  it.each([
    [
      'a four with two valves a cylinder',
      { cylinders: 4, intake_valves: 4, exhaust_valves: 4 },
      '1E 1I 2I 2E 3E 3I 4I 4E',
    ],
    ['one cylinder', { cylinders: 1, intake_valves: 1, exhaust_valves: 1 }, '1E 1I'],
    [
      'two rows of four valves',
      { cylinders: 2, intake_valves: 4, exhaust_valves: 4 },
      '1I1 1I2 2I1 2I2 1E1 1E2 2E1 2E2',
    ],
    ['three valves a cylinder', { cylinders: 2, intake_valves: 4, exhaust_valves: 2 }, '1I1 1I2 2I1 2I2 1E 2E'],
  ])('names the valves of %s front to back', (_, counts, labels) => {
    expect(
      valves(counts)
        .map((s) => s.label)
        .join(' '),
    ).toBe(labels);
  });

  it('gives a block its bores, mains and deck corners', () => {
    const labels = spotsFromCounts('block', { cylinders: 2, mains: 3 }).map((s) => s.label);

    expect(labels).toEqual(['1', '2', 'M1', 'M2', 'M3', 'FI', 'FE', 'RI', 'RE']);
  });

  it('gives a block the bores of its cam tunnel, a crankshaft its mains and pins, a set of rods its rods', () => {
    const spots = (kind: string, counts: Record<string, number>) =>
      spotsFromCounts(kind, counts)
        .filter((s) => s.kind !== 'deck_corner')
        .map((s) => `${s.kind} ${s.row} ${s.label}`);

    expect(spots('block', { cam_journals: 2 })).toEqual(['cam_journal 1 J1', 'cam_journal 1 J2']);
    expect(spots('crank', { mains: 2, pins: 1 })).toEqual(['journal 1 M1', 'journal 1 M2', 'journal 2 P1']);
    expect(spots('rod_set', { rods: 2 })).toEqual(['rod 1 1', 'rod 1 2']);
  });

  it('gives a block with two decks four corners a bank: front and rear, valley and outer side (common practice)', () => {
    const corners = spotsFromCounts('block', { cylinders: 8, mains: 5, decks: 2 }).filter(
      (s) => s.kind === 'deck_corner',
    );

    expect(corners.map((s) => `${s.bank} ${s.row} ${s.label}`)).toEqual([
      ...['LFV', 'LFO', 'LRV', 'LRO'].map((label) => `left 1 ${label}`),
      ...['RFV', 'RFO', 'RRV', 'RRO'].map((label) => `right 2 ${label}`),
    ]);
    expect(new Set(corners.map((s) => `${s.row}/${s.benchOrder}`)).size).toBe(8);
  });

  it('gives a head the bores of its camshafts, a row for each side where there are two (common practice, no source)', () => {
    const journals = (counts: Record<string, number>) =>
      spotsFromCounts('head', counts)
        .filter((s) => s.kind === 'cam_journal')
        .map((s) => `${s.row} ${s.label} ${s.side ?? '-'}`);

    expect(journals({ cylinders: 2, camshafts: 1, cam_journals: 3 })).toEqual(['1 J1 -', '1 J2 -', '1 J3 -']);
    expect(journals({ cylinders: 2, camshafts: 2, cam_journals: 4 })).toEqual([
      '1 JI1 I',
      '1 JI2 I',
      '2 JE1 E',
      '2 JE2 E',
    ]);
    expect(journals({ cylinders: 2, camshafts: 0 })).toEqual([]);
  });

  it('gives nothing to a casting without places', () => {
    expect(spotsFromCounts('flywheel', {})).toEqual([]);
  });

  it('makes as many valves as were counted, each label and each place once', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 8 }),
        fc.integer({ min: 1, max: 3 }),
        fc.integer({ min: 1, max: 2 }),
        (cylinders, intake, exhaust) => {
          const made = valves({ cylinders, intake_valves: cylinders * intake, exhaust_valves: cylinders * exhaust });

          expect(made).toHaveLength(cylinders * (intake + exhaust));
          expect(new Set(made.map((s) => s.label)).size).toBe(made.length);
          expect(new Set(made.map((s) => `${s.row}/${s.benchOrder}`)).size).toBe(made.length);
        },
      ),
    );
  });
});

describe('missingPorts', () => {
  it.each([
    [{ cylinders: 4, intake_valves: 4, exhaust_valves: 4 }, '1E 1I 2I 2E 3E 3I 4I 4E'],
    [{ cylinders: 2, intake_valves: 4, exhaust_valves: 2 }, '1I 2I 1E 2E'],
  ])(
    'is one port a cylinder and side, in the order of its first valve (common practice, no source)',
    (counts, labels) => {
      const made = missingPorts(spotsFromCounts('head', counts).filter((s) => s.kind === 'valve'));

      expect(made.map((s) => s.label).join(' ')).toBe(labels);
      expect(new Set(made.map((s) => `${s.row}/${s.benchOrder}`)).size).toBe(made.length);
    },
  );

  it('adds nothing where the type names ports of its own, as where one serves two cylinders', () => {
    const spots = spotsFromCounts('head', { cylinders: 2, intake_valves: 2, exhaust_valves: 2 });
    const shared = spots.filter((s) => s.kind !== 'port').map((s, i) => (i === 0 ? { ...s, kind: 'port' } : s));

    expect(missingPorts(spots)).toEqual([]);
    expect(missingPorts(shared)).toEqual([]);
    expect(missingPorts([])).toEqual([]);
  });
});
