/** Holds a bench opens itself, the usual ones first. */
export const HOLDS = [
  { reason: 'customer_answer', words: "waiting customer's answer" },
  { reason: 'crack_or_scrap', words: 'crack or scrap decision' },
  { reason: 'spec_question', words: 'question about size' },
  { reason: 'out_of_limits', words: 'reading out of limits' },
  { reason: 'parts', words: 'waiting parts' },
  { reason: 'identity', words: 'identity in doubt' },
  { reason: 'machine_down', words: 'machine down' },
] as const;
