/** The arrival list of a casting type as typed. Pure. */
import type { App } from '#core/app-contract.ts';
import type { InputOf, OutputOf } from '#core/kernel/contract.ts';
import { readCount } from '../../../kit/count.tsx';

export type CastingType = OutputOf<App['operations/get-casting-type']>;
type Entry = InputOf<App['operations/set-arrival-template']>['items'][number];

export type ArrivalTyped = Readonly<{
  key: string;
  words: string;
  expected: string;
  mixRule: Entry['mixRule'];
  removeBeforeWash: boolean;
  inside: boolean;
  containerHint: string;
}>;

export const emptyArrival = (key: string): ArrivalTyped => ({
  key,
  words: '',
  expected: '',
  mixRule: 'none',
  removeBeforeWash: false,
  inside: false,
  containerHint: '',
});

/** The kept list, ready to type into. */
export const startArrival = (type: CastingType): readonly ArrivalTyped[] =>
  type.arrival.map((one) => ({
    key: String(one.id),
    words: one.words,
    expected: one.expected === null ? '' : String(one.expected),
    mixRule: one.mixRule,
    removeBeforeWash: one.removeBeforeWash,
    inside: one.inside,
    containerHint: one.containerHint ?? '',
  }));

export const isArrivals = (value: unknown): value is readonly ArrivalTyped[] =>
  Array.isArray(value) && value.every((one) => typeof one === 'object' && one !== null && 'mixRule' in one);

/** The whole list as the request takes it; a line without words is left out. */
export const arrivalInput = (lines: readonly ArrivalTyped[]): Entry[] =>
  lines
    .filter((one) => one.words.trim() !== '')
    .map((one) => ({
      words: one.words,
      expected: readCount(one.expected, 999),
      mixRule: one.mixRule,
      removeBeforeWash: one.removeBeforeWash,
      inside: one.inside,
      containerHint: one.containerHint.trim() || null,
    }));
