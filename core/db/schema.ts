/** Written by `npm run schema` from the migrations. Do not edit. */
import type { Generated } from 'kysely';
import type { Day, Moment } from '../kernel/days.ts';
import type { Id } from '../kernel/ids.ts';
import type { BasisPoints, Cents, Factor, Grams, Microdegrees, Nanometres, PriceE4, Seconds } from '../kernel/units.ts';

export type AccountYesTable = {
  id: Generated<Id<'account_yes'>>;
  ticket_id: Id<'ticket'>;
  customer_id: Id<'customer'>;
  about: 'work' | 'release';
  why: string;
  ended: Generated<0 | 1>;
  use_cents: Cents | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type ActivityTable = {
  id: Generated<Id<'activity'>>;
  at: Moment;
  staff_id: Id<'staff'> | null;
  device_id: Id<'device'> | null;
  came_from: string;
  app_version: string;
  command: string;
  ticket_id: Id<'ticket'> | null;
  subject_table: string;
  subject_id: number;
  text_digest: string;
  previous_hash: string;
  hash: string;
};

export type ActivityTextTable = {
  activity_id: Generated<Id<'activity'>>;
  salt: string;
  body: string | null;
};

export type AddOnTable = {
  id: Generated<Id<'add_on'>>;
  operation_kind_id: Id<'operation_kind'>;
  usual_kind_id: Id<'operation_kind'>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type AddedWorkTable = {
  id: Generated<Id<'added_work'>>;
  ticket_id: Id<'ticket'>;
  number: number;
  revision: Generated<number>;
  casting_id: Id<'casting'>;
  operation_id: Id<'operation'> | null;
  words: string;
  expires_at: Moment;
  cost_to_stop_cents: Generated<Cents>;
  cost_to_stop_all_cents: Generated<Cents>;
  if_no_answer: string | null;
  asked_at: Moment | null;
  closed_at: Moment | null;
  version: Generated<number>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type AddedWorkFindingTable = {
  id: Generated<Id<'added_work_finding'>>;
  added_work_id: Id<'added_work'>;
  ticket_id: Id<'ticket'>;
  finding_id: Id<'finding'>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type AddedWorkOptionTable = {
  id: Generated<Id<'added_work_option'>>;
  added_work_id: Id<'added_work'>;
  ticket_id: Id<'ticket'>;
  letter: string;
  words: string;
  kind: 'work' | 'other_casting' | 'stop_casting' | 'stop_all';
  days_more: Generated<number>;
  extra_cents: Generated<Cents>;
  new_total_cents: Generated<Cents>;
  if_declined_words: string | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type AllocationTable = {
  id: Generated<Id<'allocation'>>;
  payment_id: Id<'payment'> | null;
  credit_note_id: Id<'credit_note'> | null;
  invoice_id: Id<'invoice'>;
  ticket_id: Id<'ticket'>;
  amount_cents: Cents;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type ApprovalTable = {
  id: Generated<Id<'approval'>>;
  ticket_id: Id<'ticket'>;
  about: 'estimate' | 'added_work' | 'ceiling' | 'scrap' | 'overrun';
  estimate_id: Id<'estimate'> | null;
  option_id: Id<'added_work_option'> | null;
  added_work_id: Id<'added_work'> | null;
  casting_id: Id<'casting'> | null;
  answer: 'yes' | 'no' | 'part' | 'withdrawn';
  withdraws_id: Id<'approval'> | null;
  amount_cents: Cents;
  tax_in: Generated<0 | 1>;
  person_id: Id<'customer_person'> | null;
  said_by: string;
  means: 'signature' | 'text' | 'email' | 'phone' | 'counter';
  number_called: string | null;
  words: string;
  proof_id: Id<'attachment'> | null;
  said_at: Moment;
  override_by: Id<'staff'> | null;
  override_why: string | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type ApprovalLineTable = {
  id: Generated<Id<'approval_line'>>;
  approval_id: Id<'approval'>;
  ticket_id: Id<'ticket'>;
  work_line_id: Id<'work_line'>;
  answer: 'yes' | 'no';
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type ArrivalItemTable = {
  id: Generated<Id<'arrival_item'>>;
  casting_id: Id<'casting'>;
  ticket_id: Id<'ticket'>;
  position: number;
  words: string;
  expected: number | null;
  counted: number | null;
  container_id: Id<'container'> | null;
  mix_rule: Generated<'none' | 'keep_order' | 'own_place'>;
  remove_before_wash: Generated<0 | 1>;
  inside: Generated<0 | 1>;
  customers_own: Generated<0 | 1>;
  numbers_seen: Generated<0 | 1>;
  arrows_seen: Generated<0 | 1>;
  bolted_in_place: Generated<0 | 1>;
  missing_at_arrival: Generated<0 | 1>;
  removed_at: Moment | null;
  words_more: string | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type ArrivalTemplateTable = {
  id: Generated<Id<'arrival_template'>>;
  casting_type_id: Id<'casting_type'>;
  position: number;
  words: string;
  expected: number | null;
  mix_rule: Generated<'none' | 'keep_order' | 'own_place'>;
  remove_before_wash: Generated<0 | 1>;
  inside: Generated<0 | 1>;
  container_hint: string | null;
  retired_on: Day | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type AttachmentTable = {
  id: Generated<Id<'attachment'>>;
  sha256: string;
  bytes: number;
  mime: string;
  width: number | null;
  height: number | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type BenchTableTable = {
  id: Generated<Id<'bench_table'>>;
  code: string;
  words: string;
  casting_kind: 'head' | 'block' | 'intake_manifold' | 'exhaust_manifold' | 'crank' | 'rod_set' | 'flywheel' | 'cover';
  spot_kind: 'valve' | 'cylinder' | 'main' | 'cam_journal' | 'deck_corner' | 'deck_line' | 'chamber' | 'lifter' | 'plug' | 'journal' | 'rod' | 'port' | null;
  operation_kind_id: Id<'operation_kind'> | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type BenchTableRowTable = {
  id: Generated<Id<'bench_table_row'>>;
  bench_table_id: Id<'bench_table'>;
  quantity_id: Id<'quantity'>;
  point: string | null;
  stage: 'before' | 'after';
  position: number;
  shown: Generated<0 | 1>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type CastingTable = {
  id: Generated<Id<'casting'>>;
  ticket_id: Id<'ticket'>;
  tag_no: number;
  position_in_ticket: number;
  kind: 'head' | 'block' | 'intake_manifold' | 'exhaust_manifold' | 'crank' | 'rod_set' | 'flywheel' | 'cover';
  casting_type_id: Id<'casting_type'>;
  material: 'iron_grey' | 'iron_ductile' | 'steel' | 'aluminium' | 'other' | 'not_known';
  close_tolerance: Generated<0 | 1>;
  material_how: 'known' | 'magnet' | 'type' | 'not_known';
  metal_confirmed_at: Moment | null;
  metal_confirmed_by: Id<'staff'> | null;
  position: 'left' | 'right' | 'front_bank' | 'rear_bank' | 'single' | 'not_known';
  customer_position_words: string | null;
  casting_number: string | null;
  date_code: string | null;
  serial: string | null;
  earlier_stamps: string | null;
  shop_stamp: string | null;
  stamp_allowed: Generated<'yes' | 'tag_only' | 'ask'>;
  pair_no: number | null;
  bare: Generated<0 | 1>;
  came_assembled: Generated<0 | 1>;
  dress_words: string | null;
  own_marks: string | null;
  weight_g: Grams | null;
  weight_class: Generated<'one' | 'one_careful' | 'two' | 'hoist'>;
  shop_owned: Generated<0 | 1>;
  previous_casting_id: Id<'casting'> | null;
  card_tag_off_at: Moment | null;
  metal_tag_on_at: Moment | null;
  scrap_at: Moment | null;
  scrap_why: string | null;
  scrap_approval_id: Id<'approval'> | null;
  out_at: Moment | null;
  version: Generated<number>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type CastingFactTable = {
  id: Generated<Id<'casting_fact'>>;
  casting_id: Id<'casting'>;
  ticket_id: Id<'ticket'>;
  fact: string;
  holds: Generated<0 | 1>;
  words: string | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type CastingRowTable = {
  id: Generated<Id<'casting_row'>>;
  casting_id: Id<'casting'>;
  ticket_id: Id<'ticket'>;
  bench_table_row_id: Id<'bench_table_row'>;
  shown: Generated<0 | 1>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type CastingTypeTable = {
  id: Generated<Id<'casting_type'>>;
  code: string;
  engine_type_id: Id<'engine_type'> | null;
  kind: 'head' | 'block' | 'intake_manifold' | 'exhaust_manifold' | 'crank' | 'rod_set' | 'flywheel' | 'cover';
  name: string;
  casting_number_pattern: string | null;
  material: 'iron_grey' | 'iron_ductile' | 'steel' | 'aluminium' | 'other' | null;
  cam_layout: 'none' | 'side' | 'ohv' | 'sohc' | 'dohc';
  fuel: 'petrol' | 'diesel' | 'gas' | 'other';
  private: Generated<0 | 1>;
  cylinders: Generated<number>;
  intake_valves: Generated<number>;
  exhaust_valves: Generated<number>;
  guides: Generated<number>;
  seats: Generated<number>;
  springs: Generated<number>;
  chambers: Generated<number>;
  camshafts: Generated<number>;
  cam_journals: Generated<number>;
  mains: Generated<number>;
  pins: Generated<number>;
  rods: Generated<number>;
  decks: Generated<number>;
  manifold_faces: Generated<number>;
  plugs: Generated<number>;
  sleeves: Generated<number>;
  guide_style: Generated<'integral' | 'insert'>;
  seat_style: Generated<'integral' | 'insert'>;
  usual_weight_g: Grams | null;
  heavy_diesel: Generated<0 | 1>;
  water_jacket: Generated<0 | 1>;
  retired_on: Day | null;
  version: Generated<number>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type ConditionKindTable = {
  id: Generated<Id<'condition_kind'>>;
  code: string;
  shop_words: string;
  customer_words: string;
  found_on: string;
  ask_customer: 'no' | 'note' | 'maybe' | 'yes' | 'after_measure' | 'at_once';
  suggests_finding_id: Id<'finding_kind'> | null;
  retired_on: Day | null;
  version: Generated<number>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type ConditionMarkTable = {
  id: Generated<Id<'condition_mark'>>;
  casting_id: Id<'casting'>;
  ticket_id: Id<'ticket'>;
  condition_kind_id: Id<'condition_kind'>;
  seen: 'present' | 'not_seen' | 'cannot_tell';
  view: string;
  x_bp: BasisPoints | null;
  y_bp: BasisPoints | null;
  severity: number | null;
  words: string | null;
  photo_wanted: Generated<0 | 1>;
  at_stage: 'arrival' | 'finding';
  removed_at: Moment | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type ContactLogTable = {
  id: Generated<Id<'contact_log'>>;
  ticket_id: Id<'ticket'> | null;
  customer_id: Id<'customer'>;
  person_id: Id<'customer_person'> | null;
  means: 'call' | 'text' | 'email' | 'counter' | 'letter';
  number_or_address: string | null;
  about: 'ready' | 'answer' | 'money' | 'enquiry' | 'late' | 'other';
  words: string;
  reached: Generated<0 | 1>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type ContactPointTable = {
  id: Generated<Id<'contact_point'>>;
  customer_person_id: Id<'customer_person'>;
  kind: 'phone' | 'email';
  value: string;
  digits: string | null;
  retired_on: Day | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type ContainerTable = {
  id: Generated<Id<'container'>>;
  ticket_id: Id<'ticket'>;
  casting_id: Id<'casting'> | null;
  label: string;
  kind: 'bag' | 'tray' | 'board' | 'box' | 'basket' | 'pallet';
  contents: string;
  count: number | null;
  owner_mark: Generated<'ours_with_casting' | 'customers_own' | 'new' | 'old_return'>;
  spot_words: string | null;
  sealed_at: Moment | null;
  out_at: Moment | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type CoreTable = {
  id: Generated<Id<'core'>>;
  ticket_id: Id<'ticket'>;
  part_line_id: Id<'part_line'> | null;
  work_line_id: Id<'work_line'> | null;
  direction: 'customer_owes' | 'we_owe' | 'left_in_payment';
  amount_cents: Cents;
  due_by: Day;
  grade: 'good' | 'repairable' | 'scrap' | null;
  settled_at: Moment | null;
  credit_note_id: Id<'credit_note'> | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type CreditNoteTable = {
  id: Generated<Id<'credit_note'>>;
  number: number;
  invoice_id: Id<'invoice'>;
  ticket_id: Id<'ticket'>;
  customer_id: Id<'customer'>;
  issued_on: Day;
  reason: 'price_error' | 'quality' | 'goodwill' | 'core' | 'return';
  approved_by: Id<'staff'>;
  words: string;
  before_tax_cents: Cents;
  tax_cents: Cents;
  total_cents: Cents;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type CreditNoteLineTable = {
  id: Generated<Id<'credit_note_line'>>;
  credit_note_id: Id<'credit_note'>;
  ticket_id: Id<'ticket'>;
  invoice_line_id: Id<'invoice_line'> | null;
  words: string;
  quantity: number;
  amount_cents: Cents;
  tax_class: 'labour_repair' | 'labour_fabrication' | 'part' | 'supplies' | 'fee' | 'core' | 'sublet' | 'freight' | 'deposit' | 'storage' | 'combined';
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type CreditNoteTaxTable = {
  id: Generated<Id<'credit_note_tax'>>;
  credit_note_id: Id<'credit_note'>;
  ticket_id: Id<'ticket'>;
  rate_code: string;
  rate_bp: BasisPoints;
  base_cents: Cents;
  amount_cents: Cents;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type CustomerTable = {
  id: Generated<Id<'customer'>>;
  kind: 'retail' | 'trade';
  name: string;
  short_name: string;
  legal_name: string | null;
  trade: string | null;
  billing_address: string | null;
  delivery_address: string | null;
  route: string | null;
  terms_id: Id<'terms'>;
  needs_order_number: Generated<0 | 1>;
  credit_limit_cents: Cents | null;
  on_stop_at: Moment | null;
  on_stop_why: string | null;
  who_approves: Generated<'named' | 'anyone'>;
  price_list: string;
  labour_discount_bp: Generated<BasisPoints>;
  parts_discount_bp: Generated<BasisPoints>;
  overrun_bp: Generated<BasisPoints>;
  overrun_proof_id: Id<'attachment'> | null;
  statement: Generated<'mail' | 'file' | 'none'>;
  standing_instruction: string | null;
  instruction_proof_id: Id<'attachment'> | null;
  merged_into_id: Id<'customer'> | null;
  notes: string | null;
  version: Generated<number>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type CustomerPersonTable = {
  id: Generated<Id<'customer_person'>>;
  customer_id: Id<'customer'>;
  name: string;
  role_words: string | null;
  may_approve: Generated<0 | 1>;
  approve_limit_cents: Cents | null;
  may_collect: Generated<0 | 1>;
  prefers: Generated<'call' | 'text' | 'email'>;
  retired_on: Day | null;
  version: Generated<number>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type DeviceTable = {
  id: Generated<Id<'device'>>;
  name: string;
  kind: 'desktop' | 'tablet' | 'pc';
  work_centre_id: number | null;
  token_hash: string;
  revoked_at: Moment | null;
  version: Generated<number>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type DisposalTable = {
  id: Generated<Id<'disposal'>>;
  ticket_id: Id<'ticket'>;
  law_checked_words: string;
  items: string;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type DisputeTable = {
  id: Generated<Id<'dispute'>>;
  invoice_id: Id<'invoice'>;
  ticket_id: Id<'ticket'>;
  words: string;
  closed_at: Moment | null;
  closed_words: string | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type DocumentTable = {
  id: Generated<Id<'document'>>;
  kind: string;
  subject_table: string;
  subject_id: number;
  ticket_id: Id<'ticket'> | null;
  revision: Generated<number>;
  file_name: string;
  attachment_id: Id<'attachment'>;
  facts_digest: string | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type DraftTable = {
  id: Generated<Id<'draft'>>;
  kind: 'check_in' | 'added_work' | 'readings' | 'first_run';
  staff_id: Id<'staff'>;
  device_id: Id<'device'> | null;
  title: string | null;
  body: string;
  kept_at: Moment;
  dropped_at: Moment | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type EngineTypeTable = {
  id: Generated<Id<'engine_type'>>;
  code: string;
  words: string;
  cylinders: number;
  layout: 'inline' | 'v' | 'flat' | 'single';
  bank_lean_udeg: Microdegrees | null;
  face_lean_udeg: Microdegrees | null;
  bore_nm: Nanometres | null;
  stroke_nm: Nanometres | null;
  numbering: string;
  front_is: Generated<'far_from_flywheel' | 'other_words'>;
  front_words: string | null;
  retired_on: Day | null;
  version: Generated<number>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type EstimateTable = {
  id: Generated<Id<'estimate'>>;
  ticket_id: Id<'ticket'>;
  revision: number;
  valid_until: Day;
  before_tax_cents: Cents;
  tax_cents: Cents;
  total_cents: Cents;
  words: string | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type EstimateLineTable = {
  id: Generated<Id<'estimate_line'>>;
  estimate_id: Id<'estimate'>;
  ticket_id: Id<'ticket'>;
  work_line_id: Id<'work_line'> | null;
  role: string;
  words: string;
  quantity: Generated<number>;
  amount_cents: Cents;
  tax_class: string;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type FactorTable = {
  id: Generated<Id<'factor'>>;
  code: string;
  factor: Factor;
  when_fact: 'material' | 'cam_layout' | 'heavy_diesel' | 'close_tolerance';
  when_value: string | null;
  from_on: Day;
  until_on: Day | null;
  version: Generated<number>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type FactorOpTable = {
  id: Generated<Id<'factor_op'>>;
  factor_id: Id<'factor'>;
  operation_kind_id: Id<'operation_kind'> | null;
  package_id: Id<'package'> | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type FindCastingTable = {
  casting_id: Generated<Id<'casting'>>;
  number: string;
  wild: 0 | 1;
};

export type FindDirtyTable = {
  subject: Generated<'customer' | 'ticket' | 'casting'>;
  row_id: number;
};

export type FindingTable = {
  id: Generated<Id<'finding'>>;
  casting_id: Id<'casting'>;
  ticket_id: Id<'ticket'>;
  operation_id: Id<'operation'> | null;
  finding_kind_id: Id<'finding_kind'> | null;
  condition_kind_id: Id<'condition_kind'> | null;
  words: string;
  spot_id: Id<'spot'> | null;
  place_words: string | null;
  answers_id: Id<'finding'> | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type FindingKindTable = {
  id: Generated<Id<'finding_kind'>>;
  code: string;
  shop_words: string;
  note: string | null;
  retired_on: Day | null;
  version: Generated<number>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type FindingOfferTable = {
  id: Generated<Id<'finding_offer'>>;
  finding_kind_id: Id<'finding_kind'>;
  operation_kind_id: Id<'operation_kind'>;
  also_needed: Generated<0 | 1>;
  position: Generated<number>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type FixtureTable = {
  id: Generated<Id<'fixture'>>;
  name: string;
  words: string | null;
  retired_on: Day | null;
  version: Generated<number>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type FixtureBookingTable = {
  id: Generated<Id<'fixture_booking'>>;
  fixture_id: Id<'fixture'>;
  operation_id: Id<'operation'>;
  ticket_id: Id<'ticket'>;
  on_day: Day;
  ended_at: Moment | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type HoldTable = {
  id: Generated<Id<'hold'>>;
  ticket_id: Id<'ticket'>;
  casting_id: Id<'casting'> | null;
  operation_id: Id<'operation'> | null;
  reason: 'customer_answer' | 'parts' | 'customer_parts' | 'money' | 'crack_or_scrap' | 'sublet' | 'machine_down' | 'spec_question' | 'out_of_limits' | 'identity';
  owner_role: 'counter' | 'parts' | 'lead';
  owner_id: Id<'staff'> | null;
  follow_up_on: Day;
  words: string | null;
  closed_at: Moment | null;
  closed_by: Id<'staff'> | null;
  closed_words: string | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type HolidayTable = {
  id: Generated<Id<'holiday'>>;
  on_day: Day;
  words: string;
  ended_at: Moment | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type IncidentTable = {
  id: Generated<Id<'incident'>>;
  casting_id: Id<'casting'> | null;
  ticket_id: Id<'ticket'> | null;
  kind: 'near_miss' | 'damage' | 'injury';
  words: string;
  cause: string | null;
  owner_told_at: Moment | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type InvoiceTable = {
  id: Generated<Id<'invoice'>>;
  number: number;
  ticket_id: Id<'ticket'>;
  customer_id: Id<'customer'>;
  issued_on: Day;
  due_on: Day;
  frozen_json: string;
  order_number: string | null;
  warranty_text_id: Id<'text_version'> | null;
  before_tax_cents: Cents;
  tax_cents: Cents;
  total_cents: Cents;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type InvoiceLineTable = {
  id: Generated<Id<'invoice_line'>>;
  invoice_id: Id<'invoice'>;
  ticket_id: Id<'ticket'>;
  work_line_id: Id<'work_line'> | null;
  casting_id: Id<'casting'> | null;
  words: string;
  quantity: number;
  per: Generated<number>;
  unit_price_e4: Generated<PriceE4>;
  working: string | null;
  amount_cents: Cents;
  tax_class: 'labour_repair' | 'labour_fabrication' | 'part' | 'supplies' | 'fee' | 'core' | 'sublet' | 'freight' | 'deposit' | 'storage' | 'combined';
  role: 'labour' | 'part' | 'supplies' | 'fee' | 'rush' | 'discount' | 'minimum' | 'core' | 'sublet' | 'freight' | 'storage' | 'text';
  position: number;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type InvoiceTaxTable = {
  id: Generated<Id<'invoice_tax'>>;
  invoice_id: Id<'invoice'>;
  ticket_id: Id<'ticket'>;
  rate_code: string;
  rate_words: string;
  rate_bp: BasisPoints;
  base_cents: Cents;
  amount_cents: Cents;
  exempt_certificate: string | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type ItemFateTable = {
  id: Generated<Id<'item_fate'>>;
  arrival_item_id: Id<'arrival_item'>;
  ticket_id: Id<'ticket'>;
  fate: 'in_casting' | 'replaced' | 'in_bag' | 'returned' | 'scrapped_agreed';
  count: number | null;
  container_id: Id<'container'> | null;
  words: string | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type LimitCheckTable = {
  id: Generated<Id<'limit_check'>>;
  limit_row_id: Id<'limit_row'>;
  words: string | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type LimitChoiceTable = {
  id: Generated<Id<'limit_choice'>>;
  casting_id: Id<'casting'>;
  ticket_id: Id<'ticket'>;
  quantity_id: Id<'quantity'>;
  stage: 'before' | 'after';
  side: Generated<'I' | 'E' | 'any'>;
  limit_row_id: Id<'limit_row'>;
  reason: string;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type LimitRowTable = {
  id: Generated<Id<'limit_row'>>;
  quantity_id: Id<'quantity'>;
  stage: 'before' | 'after';
  for_what: 'shop' | 'customer_instruction' | 'engine_type' | 'casting_type' | 'this_job';
  casting_type_id: Id<'casting_type'> | null;
  engine_type_id: Id<'engine_type'> | null;
  ticket_id: Id<'ticket'> | null;
  casting_id: Id<'casting'> | null;
  side: Generated<'I' | 'E' | 'any'>;
  material: 'iron_grey' | 'iron_ductile' | 'steel' | 'aluminium' | 'other' | null;
  low: number | null;
  high: number | null;
  target: number | null;
  unit: string;
  typed_low: string | null;
  typed_high: string | null;
  typed_target: string | null;
  second_unit_text: string | null;
  source_tag: string | null;
  source_words: string;
  from_on: Day;
  replaces_id: Id<'limit_row'> | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type NeededReadingTable = {
  id: Generated<Id<'needed_reading'>>;
  operation_kind_id: Id<'operation_kind'>;
  quantity_id: Id<'quantity'>;
  stage: 'before' | 'after';
  at_place: 'all_spots' | 'worked_spots' | 'once';
  required: Generated<0 | 1>;
  retired_on: Day | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type OpFitTable = {
  id: Generated<Id<'op_fit'>>;
  operation_kind_id: Id<'operation_kind'>;
  fact: 'metal' | 'cam_layout' | 'fuel' | 'guide_style' | 'water_jacket';
  value: string;
  fit: 'normal' | 'special' | 'refused';
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type OpGroupTable = {
  id: Generated<Id<'op_group'>>;
  code: string;
  operation_kind_id: Id<'operation_kind'>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type OpTimeTable = {
  id: Generated<Id<'op_time'>>;
  op_use_id: Id<'op_use'>;
  count_name: string;
  per_unit_s: Seconds;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type OpUseTable = {
  id: Generated<Id<'op_use'>>;
  operation_kind_id: Id<'operation_kind'>;
  casting_kind: 'head' | 'block' | 'intake_manifold' | 'exhaust_manifold' | 'crank' | 'rod_set' | 'flywheel' | 'cover';
  charge_unit: 'each' | 'valve' | 'guide' | 'seat' | 'spring' | 'pocket' | 'chamber' | 'cylinder' | 'bore' | 'bank' | 'surface' | 'hole' | 'stud' | 'sleeve' | 'plug' | 'pin' | 'rod' | 'set' | 'hour';
  count_from: 'one' | 'valves' | 'guides' | 'seats' | 'springs' | 'chambers' | 'cylinders' | 'decks' | 'manifold_faces' | 'sleeves' | 'rods' | 'ask';
  setup_s: Seconds;
  unattended_s: Generated<Seconds>;
  retired_on: Day | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type OpenHoursTable = {
  id: Generated<Id<'open_hours'>>;
  weekday: number;
  part: 'counter' | 'bench';
  from_minute: number;
  until_minute: number;
  ended_at: Moment | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type OperationTable = {
  id: Generated<Id<'operation'>>;
  casting_id: Id<'casting'>;
  ticket_id: Id<'ticket'>;
  operation_kind_id: Id<'operation_kind'>;
  work_line_id: Id<'work_line'> | null;
  option_id: Id<'added_work_option'> | null;
  position: number;
  work_centre_id: Id<'work_centre'>;
  units: Generated<number>;
  planned_s: Seconds;
  unattended_s: Generated<Seconds>;
  instruction: string | null;
  queue_rank: number | null;
  redo_of_id: Id<'operation'> | null;
  redo_cause: 'setup' | 'tool_wear' | 'wrong_spec' | 'wrong_part' | 'damage' | 'hidden_defect' | 'customer_change' | null;
  chargeable: Generated<0 | 1>;
  finished_at: Moment | null;
  finished_by: Id<'staff'> | null;
  not_needed_at: Moment | null;
  not_needed_by: Id<'staff'> | null;
  not_needed_why: string | null;
  version: Generated<number>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type OperationKindTable = {
  id: Generated<Id<'operation_kind'>>;
  code: string;
  shop_words: string;
  customer_words: string;
  section: string;
  work_centre_id: Id<'work_centre'> | null;
  wait_after: Generated<'none' | 'overnight' | 'working_days'>;
  wait_days: Generated<number>;
  gate: 'strip' | 'clean' | 'crack' | 'machine' | 'assemble' | 'final_clean' | 'none';
  tax_class: 'labour_repair' | 'labour_fabrication' | 'part' | 'supplies' | 'fee' | 'core' | 'sublet' | 'freight' | 'deposit' | 'storage' | 'combined';
  two_signatures: Generated<0 | 1>;
  handling: Generated<0 | 1>;
  cautions: string | null;
  position: Generated<number>;
  retired_on: Day | null;
  version: Generated<number>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type OperationNowTable = {
  operation_id: Generated<Id<'operation'>>;
  ticket_id: Id<'ticket'>;
  casting_id: Id<'casting'>;
  work_centre_id: Id<'work_centre'>;
  word: string;
  slot: 'running' | 'next' | 'waiting' | 'held' | 'asked';
  right_words: string;
  hold_reason: string | null;
  set_up: string;
  position: number;
  rank: number | null;
  planned_s: Seconds;
  promised_on: Day | null;
  promised_minute: number | null;
  own_time: 0 | 1;
  rush: 0 | 1;
  arrived_at: Moment | null;
};

export type OperationRunTable = {
  id: Generated<Id<'operation_run'>>;
  operation_id: Id<'operation'>;
  ticket_id: Id<'ticket'>;
  staff_id: Id<'staff'>;
  device_id: Id<'device'> | null;
  started_at: Moment;
  ended_at: Moment | null;
  end_kind: 'stopped' | 'finished' | null;
  minutes_corrected: number | null;
  corrected_why: string | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type OperationSpotTable = {
  id: Generated<Id<'operation_spot'>>;
  operation_id: Id<'operation'>;
  ticket_id: Id<'ticket'>;
  spot_id: Id<'spot'>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type OrderRuleTable = {
  id: Generated<Id<'order_rule'>>;
  no: number;
  first_group: string;
  then_group: string;
  strength: 'hard' | 'soft';
  need: 'if_present' | 'must_exist';
  scope: 'casting' | 'pair' | 'ticket';
  if_kind: 'head' | 'block' | 'intake_manifold' | 'exhaust_manifold' | 'crank' | 'rod_set' | 'flywheel' | 'cover' | null;
  if_metal: 'iron' | 'aluminium' | 'other' | null;
  if_cam_layout: 'none' | 'side' | 'ohv' | 'sohc' | 'dohc' | null;
  if_fuel: 'petrol' | 'diesel' | 'gas' | 'other' | null;
  waiver: 'none' | 'reason' | 'customer_signature';
  why: string;
  retired_on: Day | null;
  version: Generated<number>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type OrderWaiverTable = {
  id: Generated<Id<'order_waiver'>>;
  operation_id: Id<'operation'>;
  ticket_id: Id<'ticket'>;
  order_rule_id: Id<'order_rule'>;
  reason: string;
  approval_id: Id<'approval'> | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type PackageTable = {
  id: Generated<Id<'package'>>;
  code: string;
  shop_words: string;
  customer_words: string;
  casting_kind: 'head' | 'block' | 'intake_manifold' | 'exhaust_manifold' | 'crank' | 'rod_set' | 'flywheel' | 'cover';
  tax_class: 'labour_repair' | 'labour_fabrication' | 'part' | 'supplies' | 'fee' | 'core' | 'sublet' | 'freight' | 'deposit' | 'storage' | 'combined';
  not_inside: string | null;
  retired_on: Day | null;
  version: Generated<number>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type PackageItemTable = {
  id: Generated<Id<'package_item'>>;
  package_id: Id<'package'>;
  operation_kind_id: Id<'operation_kind'>;
  metal: Generated<'any' | 'iron' | 'aluminium'>;
  position: number;
  retired_on: Day | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type PartLineTable = {
  id: Generated<Id<'part_line'>>;
  ticket_id: Id<'ticket'>;
  casting_id: Id<'casting'> | null;
  work_line_id: Id<'work_line'> | null;
  stock_item_id: Id<'stock_item'> | null;
  words: string;
  maker_number: string | null;
  quantity: number;
  source: 'shop' | 'stock' | 'customer';
  cost_e4: PriceE4 | null;
  sell: 'list' | 'markup' | 'typed';
  markup_bp: BasisPoints | null;
  supplier_words: string | null;
  quoted_at: Moment | null;
  ordered_at: Moment | null;
  expected_on: Day | null;
  back_ordered_at: Moment | null;
  here_at: Moment | null;
  here_count: number | null;
  checked_at: Moment | null;
  checked_by: Id<'staff'> | null;
  blocks_id: Id<'operation_kind'> | null;
  fitted_at: Moment | null;
  returned_at: Moment | null;
  new_used: Generated<'new' | 'used' | 'rebuilt'>;
  version: Generated<number>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type PaymentTable = {
  id: Generated<Id<'payment'>>;
  receipt_number: number;
  customer_id: Id<'customer'>;
  kind: 'cash' | 'card' | 'transfer' | 'cheque' | 'other';
  amount_cents: Cents;
  reverses_id: Id<'payment'> | null;
  for_ticket_id: Id<'ticket'> | null;
  received_on: Day;
  words: string | null;
  tax_cents: Generated<Cents>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type PhotoTable = {
  id: Generated<Id<'photo'>>;
  attachment_id: Id<'attachment'>;
  ticket_id: Id<'ticket'>;
  casting_id: Id<'casting'> | null;
  finding_id: Id<'finding'> | null;
  condition_mark_id: Id<'condition_mark'> | null;
  stage: 'arrival' | 'finding' | 'done';
  caption: string | null;
  taken_at: Moment | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type PhotoHiddenTable = {
  id: Generated<Id<'photo_hidden'>>;
  photo_id: Id<'photo'>;
  ticket_id: Id<'ticket'>;
  why: string;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type PieceCountTable = {
  id: Generated<Id<'piece_count'>>;
  arrival_item_id: Id<'arrival_item'>;
  ticket_id: Id<'ticket'>;
  stage: 'teardown' | 'after_wash' | 'assembly' | 'out';
  count: number;
  explained: string | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type PinTryTable = {
  id: Generated<Id<'pin_try'>>;
  device_id: Id<'device'>;
  staff_id: Id<'staff'>;
  at: Moment;
  matched: Generated<0 | 1>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type PlacementTable = {
  id: Generated<Id<'placement'>>;
  ticket_id: Id<'ticket'> | null;
  casting_id: Id<'casting'> | null;
  container_id: Id<'container'> | null;
  rack_place_id: Id<'rack_place'>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type PrintingTable = {
  id: Generated<Id<'printing'>>;
  document_id: Id<'document'>;
  outcome: 'printed' | 'kept_as_file' | 'failed' | 'handed_to_viewer';
  words: string | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type PromiseTable = {
  id: Generated<Id<'promise'>>;
  ticket_id: Id<'ticket'>;
  on_day: Day;
  at_minute: number;
  own_time: Generated<0 | 1>;
  depends_on: string | null;
  reason: 'first' | 'parts' | 'answer' | 'machine' | 'found_more' | 'customer' | 'other';
  why: string | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type QuantityTable = {
  id: Generated<Id<'quantity'>>;
  code: string;
  words: string;
  family: 'length' | 'roughness' | 'force' | 'spring_rate' | 'pressure' | 'volume' | 'angle' | 'temperature' | 'duration' | 'torque' | 'mass' | 'count' | 'ratio' | 'choice' | 'text';
  spot_kind: 'valve' | 'cylinder' | 'main' | 'cam_journal' | 'deck_corner' | 'deck_line' | 'chamber' | 'lifter' | 'plug' | 'journal' | 'rod' | 'port' | null;
  derived: string | null;
  side_matters: Generated<0 | 1>;
  entry_rule: Generated<'none' | 'implied' | 'last_digits'>;
  entry_digits: Generated<number>;
  choices: string | null;
  version: Generated<number>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type QuantityPointTable = {
  id: Generated<Id<'quantity_point'>>;
  quantity_id: Id<'quantity'>;
  code: string;
  words: string;
  position: number;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type RackPlaceTable = {
  id: Generated<Id<'rack_place'>>;
  code: string;
  words: string | null;
  purpose: 'arrival' | 'waiting' | 'parts' | 'bench' | 'ready' | 'quarantine' | 'floor' | 'outside';
  max_weight_g: Grams | null;
  only_metal: 'iron' | 'aluminium' | null;
  retired_on: Day | null;
  version: Generated<number>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type RateTable = {
  id: Generated<Id<'rate'>>;
  op_use_id: Id<'op_use'> | null;
  package_id: Id<'package'> | null;
  casting_type_id: Id<'casting_type'> | null;
  price_e4: PriceE4;
  line_minimum_cents: Generated<Cents>;
  from_on: Day;
  list_name: string;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type ReadingTable = {
  id: Generated<Id<'reading'>>;
  casting_id: Id<'casting'>;
  ticket_id: Id<'ticket'>;
  operation_id: Id<'operation'> | null;
  quantity_id: Id<'quantity'>;
  spot_id: Id<'spot'> | null;
  point: string | null;
  stage: 'before' | 'after';
  tool_id: Id<'tool'> | null;
  unit: string | null;
  typed: string;
  value: number | null;
  kind: 'number' | 'choice' | 'text' | 'not_applicable' | 'taken_back';
  fit_mark: Generated<'entered' | 'implied' | 'last_digits' | 'compared' | 'from_tool'>;
  read_on: 'bare_pocket' | 'cup' | 'cup_and_shim' | null;
  taken_at: Moment;
  received_at: Moment;
  device_id: Id<'device'> | null;
  supersedes_id: Id<'reading'> | null;
  reason: string | null;
  note: string | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type ReadingDecisionTable = {
  id: Generated<Id<'reading_decision'>>;
  casting_id: Id<'casting'>;
  ticket_id: Id<'ticket'>;
  quantity_id: Id<'quantity'>;
  spot_id: Id<'spot'> | null;
  stage: 'before' | 'after';
  point: string | null;
  value_shown: number | null;
  accepted: Generated<0 | 1>;
  words: string;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type ReleaseTable = {
  id: Generated<Id<'release'>>;
  ticket_id: Id<'ticket'>;
  taken_by: string;
  person_id: Id<'customer_person'> | null;
  proof: 'claim_ticket' | 'identity' | 'known';
  proof_words: string | null;
  signature_id: Id<'attachment'> | null;
  signed_on_paper: Generated<0 | 1>;
  unworked: Generated<0 | 1>;
  unworked_why: string | null;
  unpaid_ok_by: Id<'staff'> | null;
  unpaid_why: string | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type ReleaseItemTable = {
  id: Generated<Id<'release_item'>>;
  release_id: Id<'release'>;
  ticket_id: Id<'ticket'>;
  casting_id: Id<'casting'> | null;
  container_id: Id<'container'> | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type RequestKeyTable = {
  id: Generated<Id<'request_key'>>;
  key: string;
  device_id: number | null;
  name: string;
  reply: string;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type RuleShownTable = {
  id: Generated<Id<'rule_shown'>>;
  operation_id: Id<'operation'>;
  ticket_id: Id<'ticket'>;
  order_rule_id: Id<'order_rule'>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type SeedEntryTable = {
  id: Generated<Id<'seed_entry'>>;
  table_name: string;
  code: string;
  digest: string;
  app_version: string;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type SequenceTable = {
  id: Generated<Id<'sequence'>>;
  series: 'ticket' | 'tag' | 'invoice' | 'credit_note' | 'receipt';
  next: number;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type ShopSettingTable = {
  id: Generated<Id<'shop_setting'>>;
  name: string;
  short_name: string;
  address: string | null;
  phone: string | null;
  email: string | null;
  tax_number: string | null;
  currency_code: string;
  currency_sign: string;
  units: 'inch' | 'metric';
  show_both_units: Generated<0 | 1>;
  paper: 'letter' | 'a4';
  language: string;
  time_zone: string;
  practice: Generated<0 | 1>;
  minimum_labour_cents: Generated<Cents>;
  supplies_bp: Generated<BasisPoints>;
  supplies_cap_cents: Cents | null;
  fee_per_wash_cents: Generated<Cents>;
  storage_per_day_cents: Generated<Cents>;
  storage_after_days: Generated<number>;
  storage_capped: Generated<0 | 1>;
  rush_bp: Generated<BasisPoints>;
  sublet_bp: Generated<BasisPoints>;
  buffer_bp: Generated<BasisPoints>;
  estimate_days: Generated<number>;
  deposit_new_retail_cents: Generated<Cents>;
  deposit_special_bp: Generated<BasisPoints>;
  credit_warn_bp: Generated<BasisPoints>;
  core_days: Generated<number>;
  core_good_bp: Generated<BasisPoints>;
  core_repairable_bp: Generated<BasisPoints>;
  core_scrap_bp: Generated<BasisPoints>;
  shim_stack_inch_nm: Nanometres | null;
  shim_stack_mm_nm: Nanometres | null;
  bench_rate_e4: PriceE4 | null;
  weld_rate_e4: PriceE4 | null;
  pin_digits: Generated<number>;
  tax_rounding: Generated<'per_rate' | 'per_line'>;
  age_from: Generated<'due' | 'issued'>;
  same_person_signs: Generated<0 | 1>;
  guard: Generated<0 | 1>;
  ceiling_tax_in: Generated<0 | 1>;
  promise_minute: Generated<number>;
  hour_clock: Generated<'24' | '12'>;
  idle_minutes: Generated<number>;
  backup_folder: string | null;
  version: Generated<number>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type SignInTable = {
  id: Generated<Id<'sign_in'>>;
  device_id: Id<'device'>;
  staff_id: Id<'staff'>;
  at: Moment;
  ended_at: Moment | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type SignOffTable = {
  id: Generated<Id<'sign_off'>>;
  casting_id: Id<'casting'>;
  ticket_id: Id<'ticket'>;
  place: 'first' | 'second';
  staff_id: Id<'staff'>;
  same_person_ok_by: Id<'staff'> | null;
  table_json: string;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type SignOffReopenedTable = {
  id: Generated<Id<'sign_off_reopened'>>;
  sign_off_id: Id<'sign_off'>;
  ticket_id: Id<'ticket'>;
  reason: string;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type SizeWantedTable = {
  id: Generated<Id<'size_wanted'>>;
  operation_id: Id<'operation'>;
  ticket_id: Id<'ticket'>;
  quantity_id: Id<'quantity'>;
  target: number;
  typed: string;
  unit: string;
  source_words: string | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type SpotTable = {
  id: Generated<Id<'spot'>>;
  casting_type_id: Id<'casting_type'>;
  kind: 'valve' | 'cylinder' | 'main' | 'cam_journal' | 'deck_corner' | 'deck_line' | 'chamber' | 'lifter' | 'plug' | 'journal' | 'rod' | 'port';
  label: string;
  bench_order: number;
  row: Generated<number>;
  bank: Generated<'left' | 'right' | 'none'>;
  cylinder: number | null;
  side: 'I' | 'E' | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type StaffTable = {
  id: Generated<Id<'staff'>>;
  name: string;
  initials: string;
  pin_hash: string | null;
  job_words: string | null;
  retired_on: Day | null;
  version: Generated<number>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type StaffRoleTable = {
  id: Generated<Id<'staff_role'>>;
  staff_id: Id<'staff'>;
  role: 'counter' | 'machinist' | 'lead' | 'books' | 'owner';
  ended_at: Moment | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type StockItemTable = {
  id: Generated<Id<'stock_item'>>;
  code: string;
  words: string;
  list_price_e4: PriceE4 | null;
  core_charge_cents: Cents | null;
  thickness_nm: Nanometres | null;
  thickness_typed: string | null;
  shim_unit: 'in' | 'mm' | null;
  on_hand: Generated<number>;
  retired_on: Day | null;
  version: Generated<number>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type SubletTable = {
  id: Generated<Id<'sublet'>>;
  operation_id: Id<'operation'>;
  ticket_id: Id<'ticket'>;
  work_line_id: Id<'work_line'> | null;
  supplier_words: string;
  out_at: Moment | null;
  expected_on: Day | null;
  back_at: Moment | null;
  pieces_out: Generated<number>;
  pieces_back: number | null;
  cost_cents: Cents | null;
  markup_bp: BasisPoints | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type TaxExemptionTable = {
  id: Generated<Id<'tax_exemption'>>;
  customer_id: Id<'customer'>;
  tax_rate_code: string;
  certificate_no: string;
  words: string | null;
  from_on: Day;
  until_on: Day | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type TaxExemptionEndTable = {
  id: Generated<Id<'tax_exemption_end'>>;
  tax_exemption_id: Id<'tax_exemption'>;
  ended_on: Day;
  why: string | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type TaxRateTable = {
  id: Generated<Id<'tax_rate'>>;
  code: string;
  words: string;
  bp: BasisPoints;
  from_on: Day;
  until_on: Day | null;
  version: Generated<number>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type TaxRateClassTable = {
  id: Generated<Id<'tax_rate_class'>>;
  tax_rate_id: Id<'tax_rate'>;
  tax_class: 'labour_repair' | 'labour_fabrication' | 'part' | 'supplies' | 'fee' | 'core' | 'sublet' | 'freight' | 'deposit' | 'storage' | 'combined';
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type TermsTable = {
  id: Generated<Id<'terms'>>;
  code: string;
  words: string;
  kind: 'on_receipt' | 'net' | 'end_of_month';
  days: number;
  early_bp: BasisPoints | null;
  early_days: number | null;
  retired_on: Day | null;
  version: Generated<number>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type TextVersionTable = {
  id: Generated<Id<'text_version'>>;
  kind: 'warranty' | 'claim_terms' | 'storage' | 'disclaimer' | 'letter_ready' | 'letter_reminder' | 'letter_final';
  body: string;
  from_on: Day;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type TicketTable = {
  id: Generated<Id<'ticket'>>;
  number: number;
  customer_id: Id<'customer'>;
  quick: Generated<0 | 1>;
  order_number: string | null;
  wanted_words: string | null;
  arrived_at: Moment | null;
  brought_by: string | null;
  taken_in_by: Id<'staff'> | null;
  engine_type_id: Id<'engine_type'> | null;
  engine_words: string | null;
  use_words: string | null;
  gasket: Generated<'mls' | 'composition' | 'other' | 'not_asked'>;
  valve_lift_nm: Nanometres | null;
  valve_lift_typed: string | null;
  fuel_words: string | null;
  history_words: string | null;
  notes: string | null;
  old_parts: Generated<'return' | 'discard' | 'not_asked'>;
  crack_check: Generated<'wanted' | 'declined'>;
  certified: Generated<0 | 1>;
  price_day: Day;
  rush_bp: BasisPoints | null;
  rush_lost_at: Moment | null;
  contact_person_id: Id<'customer_person'> | null;
  declared_value_cents: Cents | null;
  terms_text_id: Id<'text_version'> | null;
  claim_signature_id: Id<'attachment'> | null;
  signed_how: 'drawn' | 'on_paper' | 'left_unsigned' | null;
  claim_signed_at: Moment | null;
  signed_by: string | null;
  comeback_of_id: Id<'ticket'> | null;
  comeback_cause: 'our_work' | 'part' | 'customer_assembly' | 'other_fault' | 'not_established' | null;
  comeback_charge: 'yes' | 'no' | null;
  declined_at: Moment | null;
  declined_why: string | null;
  abandoned_at: Moment | null;
  abandoned_by: Id<'staff'> | null;
  abandoned_why: string | null;
  version: Generated<number>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type TicketNowTable = {
  ticket_id: Generated<Id<'ticket'>>;
  number: number;
  customer_id: Id<'customer'>;
  word: string;
  over: 0 | 1;
  ready: 0 | 1;
  promise_open: 0 | 1;
  stuck: 0 | 1;
  held: number;
  unanswered: number;
  rush: 0 | 1;
  comeback: 0 | 1;
  partly_out: 0 | 1;
  goods_here: 0 | 1;
  arrived_at: Moment | null;
  promised_on: Day | null;
  promised_minute: number | null;
  own_time: 0 | 1;
  first_promised_on: Day | null;
  depends_words: string | null;
  where_words: string;
  left_s: Seconds;
  asked_kind: 'estimate' | 'added work' | null;
  asked_id: number | null;
  asked_number: number | null;
  asked_at: Moment | null;
  asked_end: string | null;
  asked_words: string | null;
  ring_at: Moment | null;
  ring_words: string | null;
  told_at: Moment | null;
  tags: number;
  invoiced_cents: Cents;
  balance_cents: Cents;
  to_pay_cents: Cents;
  due_on: Day | null;
  parts_due_on: Day | null;
  parts_words: string | null;
};

export type ToolTable = {
  id: Generated<Id<'tool'>>;
  name: string;
  serial: string | null;
  kind: string;
  work_centre_id: Id<'work_centre'> | null;
  unit: string;
  range_low: number | null;
  range_high: number | null;
  resolution: number | null;
  uncertainty: number | null;
  uncertainty_bp: BasisPoints | null;
  set_against: string | null;
  retired_on: Day | null;
  version: Generated<number>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type ToolCheckTable = {
  id: Generated<Id<'tool_check'>>;
  tool_id: Id<'tool'>;
  on_day: Day;
  result: string;
  next_due_on: Day;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type UnclaimedNoticeTable = {
  id: Generated<Id<'unclaimed_notice'>>;
  ticket_id: Id<'ticket'>;
  kind: 'ready' | 'reminder' | 'final';
  means: 'call' | 'text' | 'email' | 'counter' | 'letter';
  address: string | null;
  came_back: Generated<0 | 1>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type WashLoadTable = {
  id: Generated<Id<'wash_load'>>;
  method: string;
  machine: string | null;
  started_at: Moment;
  ended_at: Moment | null;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type WashLoadItemTable = {
  id: Generated<Id<'wash_load_item'>>;
  wash_load_id: Id<'wash_load'>;
  ticket_id: Id<'ticket'>;
  operation_id: Id<'operation'>;
  metal_confirmed_by: Id<'staff'>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type WorkCentreTable = {
  id: Generated<Id<'work_centre'>>;
  code: string;
  name: string;
  people: Generated<number>;
  effective_s: Generated<Seconds>;
  unattended: Generated<0 | 1>;
  outside: Generated<0 | 1>;
  position: Generated<number>;
  retired_on: Day | null;
  version: Generated<number>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type WorkLineTable = {
  id: Generated<Id<'work_line'>>;
  ticket_id: Id<'ticket'>;
  casting_id: Id<'casting'> | null;
  kind: 'operation' | 'package' | 'part' | 'sublet' | 'hourly' | 'fee' | 'freight' | 'core' | 'storage' | 'text';
  operation_kind_id: Id<'operation_kind'> | null;
  package_id: Id<'package'> | null;
  casting_type_id: Id<'casting_type'> | null;
  words: string;
  wished_words: string | null;
  position: number;
  quantity: number;
  per: Generated<number>;
  unit_price_e4: PriceE4;
  price_from: 'rate' | 'typed' | 'stock';
  price_why: string | null;
  line_minimum_cents: Generated<Cents>;
  net: Generated<0 | 1>;
  amount_cents: Cents;
  tax_class: 'labour_repair' | 'labour_fabrication' | 'part' | 'supplies' | 'fee' | 'core' | 'sublet' | 'freight' | 'deposit' | 'storage' | 'combined';
  price_day: Day;
  option_id: Id<'added_work_option'> | null;
  count_note: string | null;
  billed_s: Seconds | null;
  withdrawn_at: Moment | null;
  withdrawn_why: string | null;
  version: Generated<number>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type WorkLineCastingTable = {
  id: Generated<Id<'work_line_casting'>>;
  work_line_id: Id<'work_line'>;
  ticket_id: Id<'ticket'>;
  casting_id: Id<'casting'>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type WorkLineFactorTable = {
  id: Generated<Id<'work_line_factor'>>;
  work_line_id: Id<'work_line'>;
  ticket_id: Id<'ticket'>;
  code: string;
  factor: Factor;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type WriteOffTable = {
  id: Generated<Id<'write_off'>>;
  invoice_id: Id<'invoice'>;
  ticket_id: Id<'ticket'>;
  amount_cents: Cents;
  reason: string;
  approved_by: Id<'staff'>;
  created_at: Moment;
  created_by: Id<'staff'> | null;
};

export type Schema = {
  account_yes: AccountYesTable;
  activity: ActivityTable;
  activity_text: ActivityTextTable;
  add_on: AddOnTable;
  added_work: AddedWorkTable;
  added_work_finding: AddedWorkFindingTable;
  added_work_option: AddedWorkOptionTable;
  allocation: AllocationTable;
  approval: ApprovalTable;
  approval_line: ApprovalLineTable;
  arrival_item: ArrivalItemTable;
  arrival_template: ArrivalTemplateTable;
  attachment: AttachmentTable;
  bench_table: BenchTableTable;
  bench_table_row: BenchTableRowTable;
  casting: CastingTable;
  casting_fact: CastingFactTable;
  casting_row: CastingRowTable;
  casting_type: CastingTypeTable;
  condition_kind: ConditionKindTable;
  condition_mark: ConditionMarkTable;
  contact_log: ContactLogTable;
  contact_point: ContactPointTable;
  container: ContainerTable;
  core: CoreTable;
  credit_note: CreditNoteTable;
  credit_note_line: CreditNoteLineTable;
  credit_note_tax: CreditNoteTaxTable;
  customer: CustomerTable;
  customer_person: CustomerPersonTable;
  device: DeviceTable;
  disposal: DisposalTable;
  dispute: DisputeTable;
  document: DocumentTable;
  draft: DraftTable;
  engine_type: EngineTypeTable;
  estimate: EstimateTable;
  estimate_line: EstimateLineTable;
  factor: FactorTable;
  factor_op: FactorOpTable;
  find_casting: FindCastingTable;
  find_dirty: FindDirtyTable;
  finding: FindingTable;
  finding_kind: FindingKindTable;
  finding_offer: FindingOfferTable;
  fixture: FixtureTable;
  fixture_booking: FixtureBookingTable;
  hold: HoldTable;
  holiday: HolidayTable;
  incident: IncidentTable;
  invoice: InvoiceTable;
  invoice_line: InvoiceLineTable;
  invoice_tax: InvoiceTaxTable;
  item_fate: ItemFateTable;
  limit_check: LimitCheckTable;
  limit_choice: LimitChoiceTable;
  limit_row: LimitRowTable;
  needed_reading: NeededReadingTable;
  op_fit: OpFitTable;
  op_group: OpGroupTable;
  op_time: OpTimeTable;
  op_use: OpUseTable;
  open_hours: OpenHoursTable;
  operation: OperationTable;
  operation_kind: OperationKindTable;
  operation_now: OperationNowTable;
  operation_run: OperationRunTable;
  operation_spot: OperationSpotTable;
  order_rule: OrderRuleTable;
  order_waiver: OrderWaiverTable;
  package: PackageTable;
  package_item: PackageItemTable;
  part_line: PartLineTable;
  payment: PaymentTable;
  photo: PhotoTable;
  photo_hidden: PhotoHiddenTable;
  piece_count: PieceCountTable;
  pin_try: PinTryTable;
  placement: PlacementTable;
  printing: PrintingTable;
  promise: PromiseTable;
  quantity: QuantityTable;
  quantity_point: QuantityPointTable;
  rack_place: RackPlaceTable;
  rate: RateTable;
  reading: ReadingTable;
  reading_decision: ReadingDecisionTable;
  release: ReleaseTable;
  release_item: ReleaseItemTable;
  request_key: RequestKeyTable;
  rule_shown: RuleShownTable;
  seed_entry: SeedEntryTable;
  sequence: SequenceTable;
  shop_setting: ShopSettingTable;
  sign_in: SignInTable;
  sign_off: SignOffTable;
  sign_off_reopened: SignOffReopenedTable;
  size_wanted: SizeWantedTable;
  spot: SpotTable;
  staff: StaffTable;
  staff_role: StaffRoleTable;
  stock_item: StockItemTable;
  sublet: SubletTable;
  tax_exemption: TaxExemptionTable;
  tax_exemption_end: TaxExemptionEndTable;
  tax_rate: TaxRateTable;
  tax_rate_class: TaxRateClassTable;
  terms: TermsTable;
  text_version: TextVersionTable;
  ticket: TicketTable;
  ticket_now: TicketNowTable;
  tool: ToolTable;
  tool_check: ToolCheckTable;
  unclaimed_notice: UnclaimedNoticeTable;
  wash_load: WashLoadTable;
  wash_load_item: WashLoadItemTable;
  work_centre: WorkCentreTable;
  work_line: WorkLineTable;
  work_line_casting: WorkLineCastingTable;
  work_line_factor: WorkLineFactorTable;
  write_off: WriteOffTable;
};

/** Tables whose rows carry a version. */
export type Versioned = 'added_work' | 'casting' | 'casting_type' | 'condition_kind' | 'customer' | 'customer_person' | 'device' | 'engine_type' | 'factor' | 'finding_kind' | 'fixture' | 'operation' | 'operation_kind' | 'order_rule' | 'package' | 'part_line' | 'quantity' | 'rack_place' | 'shop_setting' | 'staff' | 'stock_item' | 'tax_rate' | 'terms' | 'ticket' | 'tool' | 'work_centre' | 'work_line';
