import { describe, expect, it } from 'vitest';
import { type ReadFigure, readTyped } from '#core/kernel/measure.ts';
import { doubtOf, type Expected } from '#core/kernel/measure-doubt.ts';
import { measureOf } from '#core/kernel/measure-units.ts';

const nothing: Expected = { target: null, low: null, high: null, before: null };

function figure(text: string, unit: 'in' | 'mm' = 'in'): ReadFigure {
  const read = readTyped(text, { family: 'length', unit });
  if (read.kind !== 'figure') throw new Error(`no figure: ${text}`);
  return read;
}
const inch = (text: string) => measureOf(text, 'in');

describe('doubtOf', () => {
  it('asks about a figure ten times the reading before, and says what was probably meant', () => {
    const doubt = doubtOf(figure('39.534'), { ...nothing, before: inch('3.9600') });

    expect(doubt?.question).toBe('39.534 in is ten times the reading before, 3.960 in. Did you mean 3.9534 in?');
    expect(doubt?.meant).toMatchObject({ typed: '3.9534', unit: 'in' });
  });

  it.each([
    ['a tenth', '0.3953', { before: inch('3.9600') }, { typed: '3.953', unit: 'in' }],
    ['the other unit', '35.12', { target: measureOf('35.00', 'mm') }, { typed: '35.12', unit: 'mm' }],
    ['a hundred times', '170.1', { target: inch('1.700') }, { typed: '1.701', unit: 'in' }],
  ])('asks about %s', (_, text, expected, meant) => {
    expect(doubtOf(figure(text), { ...nothing, ...expected })?.meant).toMatchObject(meant);
  });

  it('asks about a size far from everything without a likely cause', () => {
    expect(doubtOf(figure('6.5'), { ...nothing, target: inch('1.700') })).toMatchObject({ meant: null });
  });

  it('lets figures pass that are merely out of limits', () => {
    expect(doubtOf(figure('1.775'), { ...nothing, target: inch('1.700') })).toBeNull();
    expect(doubtOf(figure('2.2'), { ...nothing, target: inch('1.700') })).toBeNull();
    expect(doubtOf(figure('0.0065'), { ...nothing, high: inch('0.006') })).toBeNull();
  });

  it('asks about a one-sided quantity only past ten times its limit', () => {
    expect(doubtOf(figure('0.020'), { ...nothing, high: inch('0.002') })).toBeNull();
    expect(doubtOf(figure('0.021'), { ...nothing, high: inch('0.002') })?.question).toContain('ten times the limit');
  });

  it('knows nothing to ask where nothing is expected', () => {
    expect(doubtOf(figure('123.4'), nothing)).toBeNull();
  });
});
