import { describe, expect, it } from 'vitest';
import {
  documentWords,
  fileNameOf,
  nextRevision,
  PAPERS,
  revisionWords,
  travellerFacts,
} from '#core/sheets/compute/papers.ts';
import { traveller } from '#tests/kit/papers-bench.ts';

describe('PAPERS', () => {
  it('shows no paper with money to a role that sees no prices', () => {
    for (const paper of ['claim-ticket', 'estimate', 'added-work', 'invoice', 'receipt'] as const)
      expect(['tickets:see', 'pricing:see', 'money:see']).toContain(PAPERS[paper].may);
  });
});

describe('nextRevision', () => {
  it('is 1 first, stays while the digest stays, and steps with it', () => {
    expect(nextRevision(null, 'a')).toBe(1);
    expect(nextRevision({ revision: 3, digest: 'a' }, 'a')).toBe(3);
    expect(nextRevision({ revision: 3, digest: 'a' }, 'b')).toBe(4);
  });
});

describe('fileNameOf', () => {
  it('names paper, number and revision; what is issued once has none', () => {
    expect(fileNameOf('claim-ticket', '20455', 2)).toBe('claim-ticket-20455-r2.pdf');
    expect(fileNameOf('invoice', '7004', 1)).toBe('invoice-7004.pdf');
  });
});

describe('documentWords', () => {
  it('says what a person looks for', () => {
    expect(documentWords('traveller', '41235', 2)).toBe('Traveller 41235, revision 2');
    expect(revisionWords('receipt', 1)).toBe('issued once');
  });
});

describe('travellerFacts', () => {
  it('holds each operation by its name and what is done again apart', () => {
    const [first] = traveller.operations;
    const twice = { ...traveller, operations: first ? [first, { ...first, no: '2?' }] : [] };

    expect(travellerFacts(twice)).toMatchObject({
      Metal: 'aluminium',
      'Disassemble head': '1, count 24 lock halves, 8 caps',
      'Disassemble head (2)': 'not approved, 1, count 24 lock halves, 8 caps',
    });
  });

  it('does not change with the number of a row, so that one more operation changes one line', () => {
    const moved = {
      ...traveller,
      operations: traveller.operations.map((row, index) => ({ ...row, no: String(index + 5) })),
    };

    expect(travellerFacts(moved)['Seat cut']).toBe(travellerFacts(traveller)['Seat cut']);
  });
});
