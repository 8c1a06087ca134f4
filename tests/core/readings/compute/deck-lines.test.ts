import { describe, expect, it } from 'vitest';
import { FACES } from '#core/catalogue/compute/faces.ts';
import { id } from '#core/kernel/ids.ts';
import { openBench } from '#core/readings/compute/bench.ts';
import { gapAt, hasBanks, isNeeded, linesMissing, linesOf, readLines } from '#core/readings/compute/deck-lines.ts';
import type { Spot } from '#core/readings/compute/model.ts';
import { readingOf, toolOf, valves } from '#tests/kit/bench-facts.ts';
import { DECK, HEAD_LIMITS, headFacts, lineReadings } from '#tests/kit/face-facts.ts';

const [deck, left] = FACES;
const look = (words: Parameters<typeof headFacts>[0] = {}) =>
  openBench(headFacts(words)).look({ spot: null, stage: 'before' });
const place = (kind: Spot['kind'], n: number, bank: Spot['bank'] = 'none'): Spot => ({
  id: id<'spot'>(n),
  kind,
  label: String(n),
  benchOrder: n,
  row: 1,
  bank,
  cylinder: n,
  side: null,
});
const chambers = [1, 2, 3, 4].map((n) => place('chamber', n));

describe('linesOf', () => {
  it('lays five lines and one across before, between and behind the chambers (common practice, no source)', () => {
    const lines = deck ? linesOf(look({ spots: chambers }), deck) : [];

    expect(lines.map((it) => it.words)).toEqual([
      'Along, intake side',
      'Along, middle',
      'Along, exhaust side',
      'Corner to corner',
      'The other corners',
      'Across, front end',
      'Across, between 1 and 2',
      'Across, between 2 and 3',
      'Across, between 3 and 4',
      'Across, rear end',
    ]);
    expect(lines.at(-4)).toMatchObject({ from: { along: 0.25, across: 0 }, to: { along: 0.25, across: 1 } });
  });

  it('goes by the cylinders of the valves where no chambers are known, and by the middle where nothing is', () => {
    const across = (spots: readonly Spot[]) =>
      (deck ? linesOf(look({ spots }), deck) : []).filter((it) => it.kind === 'across').map((it) => it.words);

    expect(across(valves('1E', '1I', '2I', '2E'))).toEqual([
      'Across, front end',
      'Across, between 1 and 2',
      'Across, rear end',
    ]);
    expect(across([])).toEqual(['Across, front end', 'Across, in the middle', 'Across, rear end']);
  });

  it('counts only the cylinders of its own bank', () => {
    const spots = [place('cylinder', 1, 'left'), place('cylinder', 3, 'left'), place('cylinder', 2, 'right')];
    const lines = left ? linesOf(look({ spots, kind: 'block' }), left) : [];

    expect(lines.filter((it) => it.kind === 'across').map((it) => it.words)[1]).toBe('Across, between 1 and 3');
    expect(hasBanks(look({ spots, kind: 'block' }))).toBe(true);
    expect(hasBanks(look({ spots }))).toBe(false);
  });
});

describe('gapAt', () => {
  it('is known to a step of the feelers, or to the gauge where that is worse (common practice, no source)', () => {
    const tool = toolOf({ uncertainty: 25_400 });
    const gap = (more: Parameters<typeof lineReadings>[2]) =>
      deck &&
      gapAt(look({ tools: [tool], readings: lineReadings(DECK, { 'along-1': '0.0030' }, more) }), deck, {
        code: 'along-1',
      });

    expect(gap({})).toMatchObject({ value: 76_200, uncertainty: 12_700 });
    expect(gap({ tool: tool.id })?.uncertainty).toBe(25_400);
    expect(deck && gapAt(look(), deck, { code: 'along-1' })).toBeNull();
  });
});

describe('readLines', () => {
  it('wants no line that a person marked as nothing to measure, and takes nothing for the worst where none was laid', () => {
    const dash = readingOf('deck-gap', 'not applicable', null, {
      stage: 'before',
      point: 'along-2',
      kind: 'not_applicable',
    });
    const at = look({
      limits: HEAD_LIMITS,
      readings: [...lineReadings(DECK, { 'along-1': '0.0010', 'along-3': '0.0025' }), dash],
    });
    const needed = deck ? linesOf(at, deck).filter(isNeeded) : [];
    const read = deck && readLines(at, deck, needed);

    expect(read).toMatchObject({ read: 2, wanted: 4, worst: { value: 63_500 } });
    expect(read && linesMissing(read).marks).toEqual(['2 of 4 straightedge lines']);
    expect(deck && readLines(look(), deck, needed).worst).toBeNull();
  });
});
