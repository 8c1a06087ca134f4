import { describe, expect, it } from 'vitest';
import { type Case, judgeSize, type SizeAsked } from '#core/readings/compute/oversize-verdict.ts';
import { inch } from '#tests/kit/worn-block.ts';

const show = (value: number) => ({ value, text: (value / 25_400_000).toFixed(4), other: null });
const bore = { label: 'cylinder 3', reach: inch('3.9572'), wall: null, shift: null };
const facts = {
  start: inch('3.9500'),
  clearance: inch('0.0025'),
  hone: inch('0.004'),
  cleanUp: inch('0.0005'),
  greatest: null,
  leastWall: null,
};
const size: SizeAsked = { finished: inch('3.9700'), boring: inch('3.9660'), made: true, unknown: '' };
const judge = (asked: Partial<SizeAsked> = {}, words: Partial<Case> = {}) =>
  judgeSize(
    { ...size, ...asked },
    {
      rule: 'centred',
      facts,
      bores: [bore],
      reach: { value: inch('3.9572'), uncertainty: null },
      unread: [],
      guard: false,
      show,
      ...words,
    },
  );

describe('judgeSize', () => {
  it('a size exactly as large as needed cleans up (limits inclusive, common practice, no source)', () => {
    expect(judge({ boring: inch('3.9577') })).toMatchObject({ name: 'pass', words: 'cleans up' });
    expect(judge({ boring: inch('3.9577') - 254 })).toMatchObject({ name: 'fail', words: 'not enough' });
    expect(judge({ boring: inch('3.9577') }).spare?.value).toBe(0);
    expect(judge().spare?.value).toBe(inch('0.0083'));
    expect(judge({ boring: inch('3.9570') }).spare?.value).toBe(inch('-0.0007'));
  });

  it('a finished size at the greatest bore passes, past it does not', () => {
    const greatest = inch('3.9700');

    expect(judge({}, { facts: { ...facts, greatest } }).name).toBe('pass');
    expect(judge({}, { facts: { ...facts, greatest: greatest - 254 } })).toMatchObject({ words: 'bore too big' });
  });

  it('a wall of 0.120 left of at least 0.125 fails (trade article on ultrasonic inspection)', () => {
    const thin = (wall: string) =>
      judge(
        {},
        { rule: 'original', facts: { ...facts, leastWall: inch('0.125') }, bores: [{ ...bore, wall: inch(wall) }] },
      );

    // Half of 0.020 goes.
    expect(thin('0.130')).toMatchObject({ name: 'fail', direction: 'under', wallLeft: { value: inch('0.120') } });
    expect(thin('0.135').name).toBe('pass');
  });

  it('what is not known is never a pass', () => {
    expect(judge({ finished: null, boring: null, unknown: 'No clearance.' })).toMatchObject({
      name: 'not measured',
      reason: 'No clearance.',
    });
    expect(judge({}, { reach: null })).toMatchObject({ name: 'not measured', words: 'not read' });
    expect(judge({}, { unread: ['cylinder 5: thrust, top'] })).toMatchObject({ name: 'not measured' });
  });

  it('nothing is left to clean up where every bore is sleeved', () => {
    expect(judge({}, { bores: [], reach: null })).toMatchObject({ name: 'pass', spare: null });
  });

  it('the reason carries the figures that decide', () => {
    expect(judge().reason).toBe('Bored to 3.9660; 3.9577 is needed: 0.0083 to spare.');
    expect(judge({ made: false }).words).toBe('not made');
  });
});
