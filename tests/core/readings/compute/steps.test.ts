import { describe, expect, it } from 'vitest';
import { findQuantity } from '#core/catalogue/compute/quantities.ts';
import { STEPS } from '#core/readings/compute/steps.ts';

describe('STEPS', () => {
  it.each(Object.entries(STEPS))(
    '%s: each step is a sentence of a quantity that is there',
    (quantity, { over, under }) => {
      expect(findQuantity(quantity)?.code).toBe(quantity);
      for (const step of [...(over ?? []), ...(under ?? [])]) expect(step).toMatch(/[.?]$/);
    },
  );
});
