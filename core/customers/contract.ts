/** Customers, the people who may speak for them, terms, stops and exemptions. */
import { z } from 'zod';
import { command, query } from '../kernel/contract.ts';
import { changeOf, TakenOverSchema } from '../kernel/field-changes.ts';
import {
  BasisPointsSchema,
  CentsSchema,
  DaySchema,
  idOf,
  MomentSchema,
  optionalWords,
  SeenVersion,
  words,
} from '../kernel/schemas.ts';

const CUSTOMER_KINDS = ['retail', 'trade'] as const;
const PREFERS = ['call', 'text', 'email'] as const;
export const STATEMENTS = ['mail', 'file', 'none'] as const;

export const Amount = CentsSchema.refine((value) => value >= 0, 'An amount is not below 0.');
export const Percent = BasisPointsSchema.refine((value) => value >= 0 && value <= 10_000, 'A percentage is 0 to 100.');

export const ContactInput = z.strictObject({
  kind: z.enum(['phone', 'email'], { error: 'Choose telephone or e-mail.' }),
  value: words(120, 'the number or address'),
});

export const PersonInput = z.strictObject({
  name: words(80, 'a name'),
  roleWords: optionalWords(80, 'the role'),
  mayApprove: z.boolean().default(false),
  /** Before tax; null for any amount. */
  approveLimit: Amount.nullable().default(null),
  mayCollect: z.boolean().default(false),
  prefers: z.enum(PREFERS).default('call'),
  contacts: z.array(ContactInput).max(10, 'Keep to 10 numbers and addresses.').default([]),
});

const customerFields = {
  name: words(80, 'a name'),
  shortName: words(20, 'a short name'),
  legalName: optionalWords(240, 'the legal name'),
  trade: optionalWords(80, 'the trade'),
  billingAddress: optionalWords(400, 'the address'),
  deliveryAddress: optionalWords(400, 'the address'),
  route: optionalWords(40, 'the route'),
  notes: optionalWords(2000, 'the notes'),
};

export const NewCustomer = z.strictObject({
  kind: z.enum(CUSTOMER_KINDS).default('retail'),
  ...customerFields,
  /** Left out: made from the name. Prints on tags. */
  shortName: optionalWords(20, 'the short name'),
  needsOrderNumber: z.boolean().default(false),
  whoApproves: z.enum(['named', 'anyone']).default('named'),
  /** Left out: one person of the customer's own name who may approve and collect. */
  persons: z.array(PersonInput).max(20).default([]),
});

/** Who a ticket is for: somebody we know, or somebody made from what was typed. */
export const CustomerWish = z.union([
  z.strictObject({
    customerId: idOf<'customer'>(),
    /** Whom we speak to about this ticket. */
    personId: idOf<'customer_person'>().nullable().default(null),
  }),
  z.strictObject({ add: NewCustomer }),
]);

const ContactView = z.object({
  contactId: idOf<'contact_point'>(),
  kind: z.enum(['phone', 'email']),
  value: z.string(),
});
export const PersonView = z.object({
  personId: idOf<'customer_person'>(),
  name: z.string(),
  roleWords: z.string().nullable(),
  mayApprove: z.boolean(),
  approveLimit: CentsSchema.nullable(),
  /** "may approve, any amount", "may approve up to 600.00", "may not approve". */
  approveWords: z.string(),
  mayCollect: z.boolean(),
  prefers: z.enum(PREFERS),
  contacts: z.array(ContactView),
  version: z.int(),
});

/** A customer in one line, as found. */
export const CustomerLine = z.object({
  customerId: idOf<'customer'>(),
  kind: z.enum(CUSTOMER_KINDS),
  name: z.string(),
  shortName: z.string(),
  /** The first telephone, as typed; empty when none is known. */
  phone: z.string(),
  /** The person the text matched, or the first one. */
  personId: idOf<'customer_person'>().nullable(),
  person: z.string().nullable(),
  termsWords: z.string(),
  onStop: z.boolean(),
  /** "On stop since 2 March: cheque came back."; null when not on stop. */
  stopWords: z.string().nullable(),
  needsOrderNumber: z.boolean(),
  openTickets: z.int(),
});

export const CustomerPage = z.object({
  customerId: idOf<'customer'>(),
  version: z.int(),
  kind: z.enum(CUSTOMER_KINDS),
  name: z.string(),
  shortName: z.string(),
  legalName: z.string().nullable(),
  /** Legal name, or the name where none is kept. */
  printName: z.string(),
  trade: z.string().nullable(),
  billingAddress: z.string().nullable(),
  deliveryAddress: z.string().nullable(),
  route: z.string().nullable(),
  notes: z.string().nullable(),
  terms: z.object({ termsId: idOf<'terms'>(), code: z.string(), words: z.string() }),
  needsOrderNumber: z.boolean(),
  creditLimit: CentsSchema.nullable(),
  onStopAt: MomentSchema.nullable(),
  onStopWhy: z.string().nullable(),
  stopWords: z.string().nullable(),
  whoApproves: z.enum(['named', 'anyone']),
  priceList: z.string(),
  labourDiscount: BasisPointsSchema,
  partsDiscount: BasisPointsSchema,
  overrun: BasisPointsSchema,
  statement: z.enum(STATEMENTS),
  standingInstruction: z.string().nullable(),
  /** The standing instruction was signed; its picture or paper is kept. */
  instructionSigned: z.boolean(),
  mergedInto: idOf<'customer'>().nullable(),
  persons: z.array(PersonView),
  exemptions: z.array(
    z.object({
      exemptionId: idOf<'tax_exemption'>(),
      taxCode: z.string(),
      certificateNo: z.string(),
      words: z.string().nullable(),
      from: DaySchema,
      until: DaySchema.nullable(),
      ended: DaySchema.nullable(),
      /** In force on the shop's day today. */
      inForce: z.boolean(),
      sentence: z.string(),
    }),
  ),
  openTickets: z.array(
    z.object({
      ticketId: idOf<'ticket'>(),
      number: z.int(),
      engineWords: z.string().nullable(),
      arrivedAt: MomentSchema.nullable(),
    }),
  ),
});

const customerId = idOf<'customer'>();
const Changed = z.object({ version: z.int(), takenOver: z.array(TakenOverSchema) });

export const customersContract = {
  'customers/add-customer': command({
    may: 'customers:edit',
    input: NewCustomer,
    output: z.object({
      customerId,
      version: z.int(),
      persons: z.array(z.object({ personId: idOf<'customer_person'>(), name: z.string() })),
    }),
  }),
  'customers/change-customer': command({
    may: 'customers:edit',
    input: z.strictObject({
      customerId,
      seenVersion: SeenVersion,
      changes: z.strictObject({
        kind: changeOf(z.enum(CUSTOMER_KINDS)),
        name: changeOf(customerFields.name),
        shortName: changeOf(customerFields.shortName),
        legalName: changeOf(customerFields.legalName),
        trade: changeOf(customerFields.trade),
        billingAddress: changeOf(customerFields.billingAddress),
        deliveryAddress: changeOf(customerFields.deliveryAddress),
        route: changeOf(customerFields.route),
        notes: changeOf(customerFields.notes),
        needsOrderNumber: changeOf(z.boolean()),
        whoApproves: changeOf(z.enum(['named', 'anyone'])),
      }),
    }),
    output: Changed,
  }),
  'customers/add-person': command({
    may: 'customers:edit',
    input: z.strictObject({ customerId, person: PersonInput }),
    output: z.object({ personId: idOf<'customer_person'>(), version: z.int() }),
  }),
  'customers/change-person': command({
    may: 'customers:edit',
    input: z.strictObject({
      personId: idOf<'customer_person'>(),
      seenVersion: SeenVersion,
      changes: z.strictObject({
        name: changeOf(words(80, 'a name')),
        roleWords: changeOf(optionalWords(80, 'the role')),
        mayApprove: changeOf(z.boolean()),
        approveLimit: changeOf(Amount.nullable()),
        mayCollect: changeOf(z.boolean()),
        prefers: changeOf(z.enum(PREFERS)),
      }),
      addContacts: z.array(ContactInput).max(10).default([]),
      dropContacts: z.array(idOf<'contact_point'>()).max(20).default([]),
      /** The person no longer speaks for this customer. */
      retire: z.boolean().default(false),
    }),
    output: Changed,
  }),
  'customers/find-customer': query({
    may: 'customers:see',
    input: z.strictObject({ text: z.string().max(10_000), limit: z.int().min(1).max(50).default(12) }),
    output: z.object({ customers: z.array(CustomerLine), more: z.boolean() }),
  }),
  'customers/get-customer': query({
    may: 'customers:see',
    input: z.strictObject({ customerId }),
    output: CustomerPage,
  }),
  /** Signed once, printed each time: "no crack check on mower heads". Empty words end it. */
  'customers/set-standing-instruction': command({
    may: 'customers:edit',
    input: z.strictObject({
      customerId,
      seenVersion: SeenVersion,
      words: optionalWords(400, 'the instruction'),
      /** The signed paper, kept before (photos). */
      proof: idOf<'attachment'>().nullable().default(null),
    }),
    output: z.object({ version: z.int() }),
  }),
} as const;
