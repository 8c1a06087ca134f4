/** Facts of a ticket with everything plain; a test names what differs. */
import type { Gate } from '#core/catalogue/compute/order-rules.ts';
import type { Day, Moment } from '#core/kernel/days.ts';
import type { Cents, Seconds } from '#core/kernel/units.ts';
import type { AnswerFact } from '#core/lines/compute/authorised.ts';
import type {
  CastingFact,
  ContainerFact,
  HoldFact,
  ItemFact,
  LineFact,
  OperationFact,
  PartFact,
  QuestionFact,
  RunFact,
  SignOffFact,
  TicketFacts,
} from '#core/state/compute/facts.ts';

/** Moments by the minute of 9 March 2026. */
export const at = (minute: number): Moment =>
  `2026-03-09T${String(8 + Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}:00.000Z` as Moment;
export const onDay = (text: string): Day => text as Day;

export const casting = (id: number, more: Partial<CastingFact> = {}): CastingFact => ({
  id: id as CastingFact['id'],
  tag: 30_900 + id,
  version: 1,
  positionInTicket: id,
  kind: 'head',
  typeName: 'V6 head',
  camLayout: 'ohv',
  fuel: 'petrol',
  material: 'iron_grey',
  metalConfirmedAt: at(0),
  position: 'left',
  pair: null,
  bare: false,
  scrapAt: null,
  scrapAgreed: false,
  outAt: null,
  unworkedWhy: null,
  metalTagOnAt: null,
  standsAt: null,
  arrivalPhotos: 1,
  ticked: new Set(),
  crackResults: new Map(),
  thicknessAt: null,
  pistonSizeAt: null,
  ...more,
});

type Operation = Partial<Omit<OperationFact, 'kind'>> &
  Readonly<{ code?: string; gate?: Gate; groups?: readonly string[]; twoSignatures?: boolean }>;

/** An operation of casting 1 on line 1. */
export function operation(
  id: number,
  { code = `op-${id}`, gate = 'none', groups = [], twoSignatures = false, ...more }: Operation = {},
): OperationFact {
  return {
    id: id as OperationFact['id'],
    castingId: 1 as OperationFact['castingId'],
    version: 1,
    kind: { id, code, gate, section: 'check', words: code.replaceAll('-', ' '), position: id, twoSignatures, groups },
    lineId: 1 as OperationFact['lineId'],
    optionId: null,
    position: id,
    centreId: 1 as OperationFact['centreId'],
    centreName: 'Head bench',
    instruction: null,
    setUp: '',
    plannedSeconds: 600 as Seconds,
    unattendedSeconds: 0 as Seconds,
    units: 1,
    rank: null,
    redoOf: null,
    finishedAt: null,
    finishedBy: null,
    notNeededAt: null,
    ...more,
  };
}

export const line = (id: number, more: Partial<LineFact> = {}): LineFact => ({
  id: id as LineFact['id'],
  castingIds: [1],
  kind: 'operation',
  amount: 10_000 as Cents,
  optionId: null,
  withdrawn: false,
  billed: false,
  asked: true,
  answer: 'yes',
  covered: true,
  coverWords: '',
  ...more,
});

export const hold = (more: Partial<HoldFact> = {}): HoldFact => ({
  id: 1 as HoldFact['id'],
  castingId: null,
  operationId: null,
  reason: 'parts',
  words: null,
  followUpOn: onDay('2026-03-10'),
  ownerId: null,
  at: at(30),
  ...more,
});

export const run = (operationId: number, more: Partial<RunFact> = {}): RunFact => ({
  operationId: operationId as RunFact['operationId'],
  staffId: 4 as RunFact['staffId'],
  startedAt: at(10),
  endedAt: null,
  ...more,
});

export const signature = (more: Partial<SignOffFact> = {}): SignOffFact => ({
  id: 1,
  castingId: 1 as SignOffFact['castingId'],
  place: 'first',
  staffId: 5 as SignOffFact['staffId'],
  at: at(90),
  samePersonOkBy: null,
  reopened: false,
  ...more,
});

export const part = (more: Partial<PartFact> = {}): PartFact => ({
  id: 1 as PartFact['id'],
  castingId: null,
  words: 'pistons',
  source: 'shop',
  quotedAt: null,
  orderedAt: null,
  expectedOn: null,
  backOrderedAt: null,
  hereAt: null,
  fittedAt: null,
  returnedAt: null,
  blocks: null,
  ...more,
});

export const container = (more: Partial<ContainerFact> = {}): ContainerFact => ({
  id: 1 as ContainerFact['id'],
  castingId: null,
  oldReturn: false,
  outAt: null,
  standsAt: null,
  ...more,
});

export const item = (more: Partial<ItemFact> = {}): ItemFact => ({
  id: 1 as ItemFact['id'],
  castingId: 1 as ItemFact['castingId'],
  words: 'rockers',
  containerId: null,
  customersOwn: false,
  removeBeforeWash: false,
  inside: false,
  removedAt: null,
  missing: false,
  counted: 8,
  fate: null,
  ...more,
});

export const question = (more: Partial<QuestionFact> = {}): QuestionFact => ({
  id: 1,
  number: 1,
  castingId: 1 as QuestionFact['castingId'],
  askedAt: at(40),
  closedAt: null,
  expiresAt: at(400),
  words: 'Crack at seat 6',
  options: [11, 12],
  ...more,
});

export const answer = (more: Partial<AnswerFact> = {}): AnswerFact => ({
  id: 1,
  order: 1,
  at: at(50),
  askedAt: null,
  about: 'added_work',
  answer: 'yes',
  question: 11,
  amount: 26_500 as Cents,
  taxIn: false,
  lines: [],
  withdraws: null,
  ...more,
});

type Wanted = Partial<Omit<TicketFacts, 'ticket' | 'money'>> &
  Readonly<{ ticket?: Partial<TicketFacts['ticket']>; money?: Partial<TicketFacts['money']> }>;

/** One iron head, checked in, with nothing on it. */
export function factsOf({ ticket, money, ...more }: Wanted = {}): TicketFacts {
  return {
    castings: [casting(1)],
    operations: [],
    runs: [],
    waivers: [],
    shown: new Set(),
    signOffs: [],
    holds: [],
    lines: [line(1)],
    answers: [],
    authorised: 0 as Cents,
    estimates: [],
    questions: [],
    parts: [],
    containers: [],
    items: [],
    promises: [],
    contacts: [],
    disposed: false,
    rules: [],
    groups: new Map(),
    kindWords: new Map(),
    ...more,
    ticket: {
      id: 1 as TicketFacts['ticket']['id'],
      number: 10_482,
      customerId: 1 as TicketFacts['ticket']['customerId'],
      quick: false,
      arrivedAt: at(0),
      declinedAt: null,
      abandonedAt: null,
      rush: false,
      comeback: false,
      oldPartsBack: false,
      crackCheckDeclined: false,
      certified: false,
      priceDay: onDay('2026-03-09'),
      ...ticket,
    },
    money: {
      balance: 0 as Cents,
      invoiced: 0 as Cents,
      held: 0 as Cents,
      dueOn: null,
      openCores: 0,
      invoices: 0,
      unbilledLines: 1,
      unbilled: 10_700 as Cents,
      ...money,
    },
  };
}
