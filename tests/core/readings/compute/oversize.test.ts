import { describe, expect, it } from 'vitest';
import {
  boringSize,
  deepest,
  finishedSize,
  neededSize,
  shiftOf,
  thinnestWall,
  type WornBore,
} from '#core/readings/compute/oversize.ts';
import { inch, mm } from '#tests/kit/worn-block.ts';

const start = inch('3.9500');
const cleanUp = inch('0.0005');
const bore = (label: string, words: Partial<WornBore> = {}): WornBore => ({
  label,
  reach: null,
  wall: null,
  shift: null,
  ...words,
});

describe('neededSize', () => {
  it.each([
    ['3.9572', 'centred', '3.9577'],
    ['3.9572', 'original', '3.9649'],
    ['3.9605', 'centred', '3.9610'],
    ['3.9605', 'original', '3.9715'],
  ] as const)('largest reading %s, %s: %s is needed (exact mathematics)', (reach, rule, expected) => {
    expect(neededSize(rule, inch(reach), { start, cleanUp })).toBe(inch(expected));
  });

  it('takes an unknown clean-up as nothing; the answer warns of it (common practice, no source)', () => {
    expect(neededSize('centred', inch('3.9572'), { start, cleanUp: null })).toBe(inch('3.9572'));
  });
});

describe('finishedSize and boringSize', () => {
  it('piston 3.9675 with 0.0025 is finished at 3.9700 and bored to 3.9660 (exact mathematics)', () => {
    const finished = finishedSize(inch('3.9675'), inch('0.0025'));

    expect(finished).toBe(inch('3.9700'));
    expect(boringSize(finished, inch('0.004'))).toBe(inch('3.9660'));
  });

  it('P 95.471, C 0.036, H 0.02 is bored to 95.487 mm (engine-maker data, name withheld)', () => {
    expect(boringSize(finishedSize(mm('95.471'), mm('0.036')), mm('0.02'))).toBe(mm('95.487'));
  });
});

describe('thinnestWall', () => {
  it('0.205 less half of 0.030 leaves 0.190 when the bar keeps its centre (exact mathematics)', () => {
    const bores = [bore('1', { wall: inch('0.205') })];

    expect(thinnestWall('original', start + inch('0.030'), bores, start)?.left).toBe(inch('0.190'));
  });

  it('a bar that follows one-sided wear takes half of the wear more from one side (exact mathematics)', () => {
    const bores = [bore('1', { wall: inch('0.205'), reach: inch('3.9572') })];

    expect(thinnestWall('centred', start + inch('0.030'), bores, start)?.left).toBe(inch('0.1864'));
  });

  it('a shift that was typed goes before what wear would allow', () => {
    const worn = bore('1', { reach: inch('3.9572'), shift: inch('0.0010') });

    expect(shiftOf('centred', worn, start)).toBe(inch('0.0010'));
    expect(shiftOf('original', worn, start)).toBe(inch('0.0010'));
    expect(shiftOf('centred', bore('2', { reach: start - 254 }), start)).toBe(0);
  });

  it('names the cylinder with the least, and nothing where no wall was measured', () => {
    const walls = [bore('1', { wall: inch('0.210') }), bore('2', { wall: inch('0.180') }), bore('3')];

    expect(thinnestWall('original', start, walls, start)).toEqual({ label: '2', left: inch('0.180') });
    expect(thinnestWall('original', start, [bore('3')], start)).toBeNull();
  });
});

describe('deepest', () => {
  it('is the bore with the greatest reach; none where nothing was read', () => {
    const bores = [bore('1'), bore('2', { reach: 5 }), bore('3', { reach: 9 }), bore('4', { reach: 7 })];

    expect(deepest(bores)?.label).toBe('3');
    expect(deepest([bore('1')])).toBeUndefined();
  });
});
