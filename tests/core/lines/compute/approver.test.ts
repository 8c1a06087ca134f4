import { describe, expect, it } from 'vitest';
import { cents } from '#core/kernel/units.ts';
import { mayNotApprove } from '#core/lines/compute/approver.ts';

const ysolde = { name: 'Ysolde', mayApprove: true, limit: cents(60_000) };

describe('mayNotApprove', () => {
  it('lets a named person say yes up to the limit, exactly', () => {
    expect(mayNotApprove('named', ysolde, 'Ysolde', cents(60_000))).toBeNull();
    expect(mayNotApprove('named', ysolde, 'Ysolde', cents(60_001))).toContain('up to 600.00, this is 600.01');
    expect(mayNotApprove('named', { ...ysolde, limit: null }, 'Ysolde', cents(9_999_999))).toBeNull();
  });

  it('stops whoever is not named, by name', () => {
    expect(mayNotApprove('named', null, 'Sam', cents(1))).toContain('Sam may not approve');
    expect(mayNotApprove('named', { ...ysolde, mayApprove: false }, 'x', cents(1))).toContain('Ysolde may not approve');
  });

  it('lets anybody say yes where the customer wants that', () => {
    expect(mayNotApprove('anyone', null, 'Sam', cents(1))).toBeNull();
  });
});
