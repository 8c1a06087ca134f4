/**
 * Limits that depend on a word: on the gasket, the method of a test, or the metal of the casting.
 *
 * A limit row has no place for such a word. So each word has a quantity of its own that only carries limits ("finish Ra, MLS
 * gasket"), which a shop changes like any other; the figure itself stays one quantity. A limit that a sheet gives for the
 * figure without a word goes before a shop default with one, by the usual order.
 */

/** A band in which a figure is neither right nor wrong before somebody else has spoken. */
export type Doubtful = Readonly<{
  /** Carries the narrower limits: within these nobody need be asked. */
  quantity: string;
  /** Said instead of "too close". */
  word: string;
  steps: readonly string[];
}>;

export type WordLimits = Readonly<{
  /** The choice whose word decides; or of the casting: `metal` (`iron`, `aluminium`), `kind` (`head`, `block`). */
  by: string;
  carriers: Readonly<Record<string, string>>;
  doubtful?: Readonly<Record<string, Doubtful>>;
}>;

const metals = (code: string): WordLimits => ({
  by: 'metal',
  carriers: { iron: `${code}-iron`, aluminium: `${code}-aluminium` },
});

/** Aluminium softens and moves; iron has no such limit here. */
const HEAT: WordLimits = { by: 'metal', carriers: { aluminium: 'heat-aluminium' } };

/** Kinds of head gasket, as the bench is told. */
export const GASKETS = {
  composition: 'composition',
  soft: 'soft-faced or graphite',
  mls: 'MLS',
  diesel: 'diesel ground face',
} as const;

/** Ways to find a leak. */
export const LEAK_METHODS = {
  bath: 'air under warm water',
  decay: 'air decay',
  dye: 'dyed water under pressure',
  vacuum: 'vacuum and UV dye',
} as const;

const FINISH: WordLimits = {
  by: 'gasket-kind',
  carriers: {
    [GASKETS.composition]: 'finish-ra-composition',
    [GASKETS.soft]: 'finish-ra-soft',
    [GASKETS.mls]: 'finish-ra-mls',
    [GASKETS.diesel]: 'finish-ra-diesel',
  },
  doubtful: {
    [GASKETS.mls]: {
      quantity: 'finish-ra-mls-sure',
      word: 'ask gasket maker',
      steps: [
        'Only if the gasket maker says so: ask, and write the answer beside it.',
        'A lead accepts it by name.',
        'Or surface it again with a finer feed.',
      ],
    },
  },
};

/** What an engine is built for: closer work where performance is asked for. Common practice, no source. */
export const ENGINE_USES = ['stock', 'performance'] as const;

const forPerformance = (code: string): WordLimits => ({
  by: 'engine-use',
  carriers: { performance: `${code}-performance` },
});

/** By the quantity that is judged. */
export const LIMITS_BY_WORD: Readonly<Record<string, WordLimits>> = {
  'finish-ra': FINISH,
  'insert-interference': metals('insert-interference'),
  'guide-interference': metals('guide-interference'),
  'insert-heat': HEAT,
  'insert-heat-most': HEAT,
  'guide-heat': HEAT,
  'guide-heat-most': HEAT,
  'sleeve-heat': HEAT,
  'sleeve-heat-most': HEAT,
  'chamber-spread': forPerformance('chamber-spread'),
  'deck-spread': forPerformance('deck-spread'),
  'bank-difference': forPerformance('bank-difference'),
  'pressure-held': { by: 'kind', carriers: { head: 'pressure-held-head', block: 'pressure-held-block' } },
  'water-temperature': { by: 'kind', carriers: { block: 'water-temperature-block' } },
  'leak-soak': { by: 'leak-method', carriers: { [LEAK_METHODS.bath]: 'leak-soak-bath' } },
  'leak-minutes': {
    by: 'leak-method',
    carriers: { [LEAK_METHODS.decay]: 'leak-minutes-decay', [LEAK_METHODS.dye]: 'leak-minutes-dye' },
  },
  'pressure-fall': { by: 'leak-method', carriers: { [LEAK_METHODS.decay]: 'pressure-fall-decay' } },
};

/** What to do about a figure that somebody else must speak on first; none for any other word. */
export const stepsForWord = (word: string): readonly string[] =>
  Object.values(LIMITS_BY_WORD)
    .flatMap((it) => Object.values(it.doubtful ?? {}))
    .find((it) => it.word === word)?.steps ?? [];
