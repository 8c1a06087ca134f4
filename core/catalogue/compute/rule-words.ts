/** What order rules say to a person. */

/** What each gate is called before "first" and after "comes after". */
export const GATE_WORDS: Readonly<Record<string, string>> = {
  strip: 'taking apart',
  clean: 'the wash',
  crack: 'the crack check',
  machine: 'all machining',
  assemble: 'assembly',
  final_clean: 'the final wash',
  none: 'the other work',
};

/** Groups whose code does not read as words. */
export const GROUP_WORDS: Readonly<Record<string, string>> = {
  clean: 'a wash',
  'crack-check': 'a crack check',
  'valve-work': 'the valves',
  'height-before': 'seats and valves',
  'cut-before-height': 'boss and pocket cuts',
  'block-wash-before': 'honing and deburring',
};

/** What each fact says while it does not hold. Those not listed are the shop's own and say their rule's reason. */
export const FACT_WORDS: Readonly<Record<string, Readonly<{ words: string; short: string; todo: string }>>> = {
  'tag-and-photos': {
    words: 'Put the tag on and take the arrival photos first.',
    short: 'waits for tag and photos',
    todo: 'Tag it and take the photos',
  },
  'metal-confirmed': {
    words: 'Confirm the metal first: does a magnet stick?',
    short: 'metal not confirmed',
    todo: 'Confirm the metal',
  },
  'thickness-before': {
    words: 'Measure the thickness first.',
    short: 'waits for thickness',
    todo: 'Measure the thickness',
  },
  'piston-size': {
    words: 'No piston size. Measure a piston or write the size asked for.',
    short: 'no piston size',
    todo: 'Measure a piston or write the size',
  },
  'fasteners-known': {
    words: 'Have the studs and fasteners here that will be used: they pull the casting out of shape.',
    short: 'waits for fasteners',
    todo: 'Tick that the fasteners are here',
  },
  'caps-torqued': {
    words: 'Put the caps on and torque them with the final fasteners first.',
    short: 'caps not torqued',
    todo: 'Tick that the caps are on and torqued',
  },
  'plugs-out': {
    words: 'Take the gallery plugs out first.',
    short: 'gallery plugs still in',
    todo: 'Tick that the plugs are out',
  },
  'pre-chamber-out': {
    words: 'Take the pre-chambers out, or reset them, before the deck is surfaced.',
    short: 'pre-chambers still in',
    todo: 'Tick that the pre-chambers are out',
  },
  'cam-fitted': { words: 'Fit the camshaft first.', short: 'cam not fitted', todo: 'Tick that the cam is fitted' },
  'plug-map-complete': {
    words: 'The plug map is not complete. Find every plug before signing.',
    short: 'plug map not complete',
    todo: 'Tick the plug map when every plug is back',
  },
  'required-readings': {
    words: 'Readings are missing. Measure them or mark them not applicable.',
    short: 'readings missing',
    todo: 'Take the readings',
  },
  'added-work-answered': {
    words: 'A question to the customer has no answer yet.',
    short: 'unanswered question',
    todo: 'Record the answer',
  },
  'money-settled': {
    words: 'The invoice is not settled and there is no account that carries it.',
    short: 'not settled',
    todo: 'Take the payment, or a lead lets it go with a reason',
  },
};
