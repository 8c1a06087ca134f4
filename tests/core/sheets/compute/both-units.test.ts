import { describe, expect, it } from 'vitest';
import { showLimit } from '#core/readings/compute/limit-words.ts';
import type { Limit } from '#core/readings/compute/model.ts';
import { bothOf, bothUnits } from '#core/sheets/compute/both-units.ts';
import { limitOf } from '#tests/kit/bench-facts.ts';

const shown = (limit: Limit, side: 'I' | 'E' | 'any' = 'any') =>
  showLimit({ limit, setAside: null, chosen: null }, side);

describe('bothUnits', () => {
  it.each([
    [limitOf('stem', 'in', { low: '1.690', high: '1.710' }), '1.690 – 1.710 in', '42.93 – 43.43 mm'],
    [limitOf('stem', 'mm', { high: '0.06' }), 'at most 0.06 mm', '0.002 in'],
    [limitOf('stem', 'in', { target: '1.700' }), 'target 1.700 in', '43.18 mm'],
    [limitOf('seat-angle', 'deg', { target: '45' }), 'target 45°', ''],
    [limitOf('seat-load', 'lbf', { low: '100', high: '120' }), '100 – 120 lbf', '445 – 534 N'],
  ] as const)(
    'gives a limit in its own unit and the other, from 1 in = 25.4 mm, 1 lbf = 4.448 22 N (NIST SP 811)',
    (limit, first, second) => {
      expect(bothUnits(shown(limit))).toEqual({ first, second });
    },
  );
});

describe('bothOf', () => {
  it('gives each side a line of its own', () => {
    const [intake, exhaust] = [limitOf('margin', 'mm', { low: '0.8' }), limitOf('margin', 'mm', { low: '1.2' })];

    expect(bothOf([shown(intake, 'I'), shown(exhaust, 'E')])).toEqual({
      limit: 'I at least 0.8 mm\nE at least 1.2 mm',
      other: 'I 0.03 in\nE 0.05 in',
    });
    expect(bothOf([])).toEqual({ limit: '', other: '' });
  });
});
