/** Row ids, one brand per table, so that a ticket's id cannot be given where a casting's is wanted. */
declare const table: unique symbol;
/** A positive integer that names a row of one table. */
export type Id<Table extends string> = number & { readonly [table]: Table };

/** @throws RangeError when the value is not a positive safe integer. */
export function id<Table extends string>(value: number): Id<Table> {
  if (!Number.isSafeInteger(value) || value < 1) throw new RangeError(`an id is a positive integer, got ${value}`);
  return value as Id<Table>;
}

export type StaffId = Id<'staff'>;
export type DeviceId = Id<'device'>;
export type CustomerId = Id<'customer'>;
export type CustomerPersonId = Id<'customer_person'>;
export type TicketId = Id<'ticket'>;
export type CastingId = Id<'casting'>;
export type CastingTypeId = Id<'casting_type'>;
export type EngineTypeId = Id<'engine_type'>;
export type SpotId = Id<'spot'>;
export type OperationKindId = Id<'operation_kind'>;
export type OperationId = Id<'operation'>;
export type WorkLineId = Id<'work_line'>;
export type WorkCentreId = Id<'work_centre'>;
export type EstimateId = Id<'estimate'>;
export type AddedWorkId = Id<'added_work'>;
export type ApprovalId = Id<'approval'>;
export type PartLineId = Id<'part_line'>;
export type ContainerId = Id<'container'>;
export type RackPlaceId = Id<'rack_place'>;
export type ArrivalItemId = Id<'arrival_item'>;
export type HoldId = Id<'hold'>;
export type FindingId = Id<'finding'>;
export type ReadingId = Id<'reading'>;
export type LimitId = Id<'limit_row'>;
export type ToolId = Id<'tool'>;
export type InvoiceId = Id<'invoice'>;
export type PaymentId = Id<'payment'>;
export type DocumentId = Id<'document'>;
export type AttachmentId = Id<'attachment'>;
