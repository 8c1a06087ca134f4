import { describe, expect, it } from 'vitest';
import { GATES } from '#core/catalogue/compute/order-rules.ts';
import { FACT_WORDS, GATE_WORDS, GROUP_WORDS } from '#core/catalogue/compute/rule-words.ts';
import { GROUPS, RULES } from './first-catalogue.ts';

describe('FACT_WORDS', () => {
  it('has a sentence, a short form and a way on for every fact a rule of the catalogue asks', () => {
    const asked = [...new Set(RULES.filter((r) => r.first.startsWith('fact:')).map((r) => r.first.slice(5)))];
    expect(asked.filter((fact) => !(fact in FACT_WORDS))).toEqual([]);
    expect(Object.values(FACT_WORDS).every((said) => said.words.endsWith('.') || said.words.endsWith('?'))).toBe(true);
  });
});

describe('GATE_WORDS', () => {
  it('names every gate', () => {
    expect(GATES.filter((gate) => !(gate in GATE_WORDS))).toEqual([]);
  });
});

describe('GROUP_WORDS', () => {
  it('names groups that exist', () => {
    expect(Object.keys(GROUP_WORDS).filter((group) => !GROUPS.has(group))).toEqual([]);
  });
});
