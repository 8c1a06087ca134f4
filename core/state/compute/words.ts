/**
 * Every state word of Benchtag, in the order the rules are tried: the first that holds is the word.
 *
 * No state is stored. The words are computed from moments and rows by the files beside this one.
 */

export const TICKET_WORDS = [
  'abandoned',
  'declined',
  'enquiry',
  'closed',
  'collected',
  'paid',
  'invoiced',
  'ready',
  'in work',
  'waiting approval',
  'approved',
  'checked in',
] as const;
export type TicketWord = (typeof TICKET_WORDS)[number];

export const CASTING_WORDS = [
  'released',
  'scrap',
  'on hold',
  'staged',
  'signed off',
  'assembled',
  'work done',
  'in machine work',
  'passed crack check',
  'clean',
  'stripped',
  'received',
] as const;
export type CastingWord = (typeof CASTING_WORDS)[number];

export const OPERATION_WORDS = [
  'not needed',
  'redone',
  'signed',
  'done',
  'started',
  'stopped',
  'declined',
  'ready to start',
  'approved',
  'quoted',
  'requested',
] as const;
export type OperationWord = (typeof OPERATION_WORDS)[number];

export const PART_WORDS = [
  'returned',
  'fitted',
  'here',
  'back-ordered',
  'ordered',
  'customer bringing',
  'quoted',
  'needed',
] as const;
export type PartWord = (typeof PART_WORDS)[number];

/** Money of a ticket that has no invoice yet, beside the words of an invoice (core/money). */
export const TICKET_MONEY_WORDS = ['deposit held', 'unbilled'] as const;
export type TicketMoneyWord = (typeof TICKET_MONEY_WORDS)[number];

export const CHIPS = [
  'held',
  'unanswered',
  'late',
  'rush',
  'comeback',
  'overdue',
  'partly out',
  'goods still here',
] as const;
/** What stands beside a ticket's word. `late` and `overdue` depend on today and are computed when read. */
export type ChipName = (typeof CHIPS)[number];
/** `count` is the number of holds or questions; null where there is nothing to count. */
export type Chip = Readonly<{ chip: ChipName; words: string; count: number | null }>;

/** Reasons of a hold in the shop's words. */
export const HOLD_WORDS = {
  customer_answer: "waiting customer's answer",
  parts: 'waiting parts',
  customer_parts: "waiting customer's parts",
  money: 'waiting money',
  crack_or_scrap: 'crack or scrap decision',
  sublet: 'waiting sublet',
  machine_down: 'machine down',
  spec_question: 'question about size',
  out_of_limits: 'reading out of limits',
  identity: 'identity in doubt',
} as const;
export type HoldReason = keyof typeof HOLD_WORDS;
export const HOLD_REASONS = Object.keys(HOLD_WORDS) as HoldReason[];

/** Who looks after a hold of this reason. Source: common practice, no source. */
export const HOLD_OWNERS: Readonly<Record<HoldReason, 'counter' | 'parts' | 'lead'>> = {
  customer_answer: 'counter',
  parts: 'parts',
  customer_parts: 'counter',
  money: 'counter',
  crack_or_scrap: 'lead',
  sublet: 'parts',
  machine_down: 'lead',
  spec_question: 'lead',
  out_of_limits: 'lead',
  identity: 'lead',
};

/** What a person may tick on a casting. Order rules read them as `fact:<name>`, or the gates below do. */
export const TICKED_FACTS = [
  'tag-and-photos',
  'fasteners-known',
  'caps-torqued',
  'plugs-out',
  'plug-map-complete',
  'cam-fitted',
  'pre-chamber-out',
  'read-back-after-wash',
] as const;
export type TickedFact = (typeof TICKED_FACTS)[number];

/** The sentence beside the tick. */
export const FACT_WORDS: Readonly<Record<TickedFact, string>> = {
  'tag-and-photos': 'Tag is on, arrival photos are taken',
  'fasteners-known': 'Studs and fasteners to be used are here',
  'caps-torqued': 'Caps are on and torqued with the final fasteners',
  'plugs-out': 'Gallery plugs are out',
  'plug-map-complete': 'Plug map is complete: every plug that came out is back',
  'cam-fitted': 'Camshaft is fitted',
  'pre-chamber-out': 'Pre-chambers are out, or reset',
  'read-back-after-wash': 'Number and side read back after the wash',
};
