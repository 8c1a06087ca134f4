import { describe, expect, it } from 'vitest';
import { askedOf, oversizeMark, sizeToBegin, wayThere, whyShut } from '#renderer/screens/bench/oversize-view.ts';
import { boresOf } from './bores-sheet.ts';
import { CLEANS, candidate, choiceOf, NOT_ENOUGH, size } from './oversizes.ts';

const choice = choiceOf();
const [, best] = choice.candidates;
const differ = choiceOf({
  rules: choice.rules.map((one, n) => ({ ...one, best: n === 0 ? '+.020in' : '+.030in' })),
});

describe('askedOf', () => {
  it('asks for all cylinders unless some are left, and names the sleeved ones', () => {
    const sheet = boresOf();
    expect(askedOf(sheet, new Map())).toEqual({ only: null, sleeves: [] });
    expect(askedOf(sheet, new Map([[2, 'sleeve']]))).toEqual({ only: null, sleeves: [2] });
    expect(askedOf(sheet, new Map([[1, 'leave']]))).toEqual({ only: [2], sleeves: [] });
  });
});

describe('sizeToBegin', () => {
  it('begins with the best size where both rules agree, and with none where they do not', () => {
    expect(sizeToBegin(choice, null)).toEqual({ rule: 'centred', code: '+.020in' });
    expect(sizeToBegin(differ, null)).toEqual({ rule: null, code: null });
  });

  it('goes by the rule a person chose', () => {
    expect(sizeToBegin(differ, 'original')).toEqual({ rule: 'original', code: '+.030in' });
  });
});

describe('whyShut', () => {
  it('is open for a size that passes by the rule chosen', () => {
    expect(whyShut(choice, best ?? null, 'centred')).toBe('');
  });

  it('is shut with the reason: nothing known, no rule, no size, a size that does not pass, a size that stands', () => {
    expect(whyShut(choiceOf({ missing: ['Read the bores.'] }), best ?? null, 'centred')).toBe('Read the bores.');
    expect(whyShut(differ, null, null)).toMatch(/do not agree/);
    expect(whyShut(choice, null, 'centred')).toBe('Choose a size.');
    expect(whyShut(choice, candidate('.010', '3.9575', { original: NOT_ENOUGH }), 'original')).toBe(NOT_ENOUGH.reason);
    const stands = { code: '+.020in', finished: size('3.9700'), words: '.020 in over', where: 'all 2', note: '' };
    expect(whyShut(choiceOf({ chosen: [stands] }), best ?? null, 'centred')).toMatch(/stands already/);
    expect(whyShut(choiceOf({ chosen: [{ ...stands, where: 'cylinder 1' }] }), best ?? null, 'centred')).toBe('');
  });
});

describe('wayThere', () => {
  it('says what to bore to, what the hone takes, and which reading decides', () => {
    expect(best && wayThere(choice, best)).toBe(
      'Bore to 3.9660, hone the last 0.0040. Largest reading 3.9572: cylinder 1, thrust, top.',
    );
  });

  it('leaves out what is not known, and says that a score counts twice', () => {
    const scored = choiceOf({
      largest: choice.largest && { ...choice.largest, score: size('0.0020'), reach: size('3.9612') },
    });
    expect(wayThere(scored, candidate('.020', '3.9675', { boring: null }))).toBe(
      'Largest reading 3.9572: cylinder 1, thrust, top. A score of 0.0020 there counts twice: 3.9612.',
    );
  });
});

describe('oversizeMark', () => {
  it('never gives a pass mark to what does not pass', () => {
    expect(oversizeMark(CLEANS)).toBe('pass');
    expect(oversizeMark(NOT_ENOUGH)).toBe('under');
    expect(oversizeMark({ ...NOT_ENOUGH, direction: 'over' })).toBe('over');
    expect(oversizeMark({ ...NOT_ENOUGH, name: 'not measured' })).toBe('not-measured');
  });
});
