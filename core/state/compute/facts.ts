/**
 * Everything of one ticket that a state depends on, as plain facts: moments, flags and amounts, no words of a state.
 *
 * Loaded by core/state/store, read by every rule beside this file and by the guards of commands. Moments are UTC text.
 */
import type { Material } from '../../catalogue/compute/fit.ts';
import type { Groups, OrderRule, RuleKind, Waiver } from '../../catalogue/compute/order-rules.ts';
import type { Day, Moment } from '../../kernel/days.ts';
import type {
  ArrivalItemId,
  CastingId,
  ContainerId,
  CustomerId,
  HoldId,
  OperationId,
  PartLineId,
  StaffId,
  TicketId,
  WorkCentreId,
  WorkLineId,
} from '../../kernel/ids.ts';
import type { Cents, Seconds } from '../../kernel/units.ts';
import type { AnswerFact } from '../../lines/compute/authorised.ts';
import type { HoldReason } from './words.ts';

export type TicketHead = Readonly<{
  id: TicketId;
  number: number;
  customerId: CustomerId;
  /** Work or a part over the counter: it may have no casting at all. */
  quick: boolean;
  arrivedAt: Moment | null;
  declinedAt: Moment | null;
  abandonedAt: Moment | null;
  /** Agreed and not lost. */
  rush: boolean;
  comeback: boolean;
  oldPartsBack: boolean;
  crackCheckDeclined: boolean;
  certified: boolean;
  priceDay: Day;
}>;

export type CastingFact = Readonly<{
  id: CastingId;
  tag: number;
  version: number;
  positionInTicket: number;
  kind: string;
  typeName: string;
  camLayout: string;
  fuel: string;
  material: Material;
  metalConfirmedAt: Moment | null;
  position: string;
  pair: number | null;
  bare: boolean;
  scrapAt: Moment | null;
  scrapAgreed: boolean;
  outAt: Moment | null;
  /** Reason when a lead sends it home unworked. */
  unworkedWhy: string | null;
  metalTagOnAt: Moment | null;
  /** Purpose of the place it stands at; null when it was never put away. */
  standsAt: string | null;
  arrivalPhotos: number;
  /** Facts a person ticked that hold now. */
  ticked: ReadonlySet<string>;
  /** Choice of the last crack result by operation. */
  crackResults: ReadonlyMap<number, string>;
  thicknessAt: Moment | null;
  pistonSizeAt: Moment | null;
}>;

export type OperationFact = Readonly<{
  id: OperationId;
  castingId: CastingId;
  version: number;
  kind: RuleKind & Readonly<{ id: number; twoSignatures: boolean; groups: readonly string[] }>;
  lineId: WorkLineId | null;
  optionId: number | null;
  position: number;
  centreId: WorkCentreId;
  centreName: string;
  instruction: string | null;
  /** Sizes wanted, as the machine is set up: "stem 6.0 mm"; empty when none is written. */
  setUp: string;
  plannedSeconds: Seconds;
  unattendedSeconds: Seconds;
  units: number;
  rank: number | null;
  redoOf: OperationId | null;
  finishedAt: Moment | null;
  finishedBy: StaffId | null;
  notNeededAt: Moment | null;
}>;

export type RunFact = Readonly<{
  operationId: OperationId;
  staffId: StaffId;
  startedAt: Moment;
  endedAt: Moment | null;
}>;

export type SignOffFact = Readonly<{
  id: number;
  castingId: CastingId;
  place: 'first' | 'second';
  staffId: StaffId;
  at: Moment;
  /** The owner's setting let the same person sign. */
  samePersonOkBy: StaffId | null;
  reopened: boolean;
}>;

export type HoldFact = Readonly<{
  id: HoldId;
  castingId: CastingId | null;
  operationId: OperationId | null;
  reason: HoldReason;
  words: string | null;
  followUpOn: Day;
  ownerId: StaffId | null;
  at: Moment;
}>;

/** One charge, with what lines/compute says about its answer. */
export type LineFact = Readonly<{
  id: WorkLineId;
  castingIds: readonly number[];
  kind: string;
  amount: Cents;
  optionId: number | null;
  withdrawn: boolean;
  /** Stands on an invoice and was not credited back. */
  billed: boolean;
  /** Given to the customer: on an estimate that was sent, or an option that was asked. */
  asked: boolean;
  answer: 'yes' | 'no' | null;
  covered: boolean;
  /** What to say while it is not covered. */
  coverWords: string;
}>;

/** A question to the customer about added work; its options are answered by one yes or no. */
export type QuestionFact = Readonly<{
  id: number;
  number: number;
  castingId: CastingId;
  askedAt: Moment | null;
  closedAt: Moment | null;
  expiresAt: Moment;
  words: string;
  options: readonly number[];
}>;

export type EstimateFact = Readonly<{ id: number; revision: number; sentAt: Moment; validUntil: Day; total: Cents }>;

export type PartFact = Readonly<{
  id: PartLineId;
  castingId: CastingId | null;
  words: string;
  source: 'shop' | 'stock' | 'customer';
  quotedAt: Moment | null;
  orderedAt: Moment | null;
  expectedOn: Day | null;
  backOrderedAt: Moment | null;
  hereAt: Moment | null;
  fittedAt: Moment | null;
  returnedAt: Moment | null;
  /** Operation kind that must not start before it is here. */
  blocks: number | null;
}>;

export type ContainerFact = Readonly<{
  id: ContainerId;
  castingId: CastingId | null;
  oldReturn: boolean;
  outAt: Moment | null;
  standsAt: string | null;
}>;

export type ItemFact = Readonly<{
  id: ArrivalItemId;
  castingId: CastingId;
  words: string;
  containerId: ContainerId | null;
  customersOwn: boolean;
  removeBeforeWash: boolean;
  /** Can only be seen when it is taken apart; a casting that came bare has none of it. */
  inside: boolean;
  removedAt: Moment | null;
  missing: boolean;
  counted: number | null;
  fate: string | null;
}>;

export type MoneyFact = Readonly<{
  /** Open balance of the ticket's invoices. */
  balance: Cents;
  invoiced: Cents;
  /** Payments kept for this ticket and not applied. */
  held: Cents;
  /** Earliest day an open invoice is due. */
  dueOn: Day | null;
  openCores: number;
  /** Invoices that brought about "invoiced": 0 while none was issued. */
  invoices: number;
  /** Charges that are to be paid and stand on no invoice. */
  unbilledLines: number;
  /** Unbilled work with tax, as the bill would come out; 0 when nothing is unbilled. */
  unbilled: Cents;
}>;

export type PromiseFact = Readonly<{
  day: Day;
  minute: number;
  ownTime: boolean;
  dependsOn: string | null;
  at: Moment;
}>;

export type ContactFact = Readonly<{ at: Moment; about: string; reached: boolean; words: string }>;

export type TicketFacts = Readonly<{
  ticket: TicketHead;
  castings: readonly CastingFact[];
  operations: readonly OperationFact[];
  runs: readonly RunFact[];
  waivers: readonly Waiver[];
  /** Soft rules shown already, as `<operation>:<rule>`: each warns once. */
  shown: ReadonlySet<string>;
  signOffs: readonly SignOffFact[];
  /** Open ones only. */
  holds: readonly HoldFact[];
  lines: readonly LineFact[];
  answers: readonly AnswerFact[];
  authorised: Cents;
  estimates: readonly EstimateFact[];
  questions: readonly QuestionFact[];
  parts: readonly PartFact[];
  containers: readonly ContainerFact[];
  items: readonly ItemFact[];
  money: MoneyFact;
  /** Oldest first. */
  promises: readonly PromiseFact[];
  contacts: readonly ContactFact[];
  /** What could not be handed back was disposed of. */
  disposed: boolean;
  rules: readonly OrderRule[];
  groups: Groups;
  /** Shop's words by operation code, for operations that are not on the ticket. */
  kindWords: ReadonlyMap<string, string>;
}>;
