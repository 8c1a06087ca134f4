/** The shapes of the practice files, as far as the loader reads them. */
export type Size = Readonly<{ value: string; unit: string }>;
type Limit = Readonly<{
  quantity: string;
  stage: 'before' | 'after';
  side: 'I' | 'E' | 'any';
  low: string | null;
  high: string | null;
  target: string | null;
  unit: string;
}>;

export type CastingTypesFile = Readonly<{
  engineTypes: readonly (Readonly<{
    bankLean: string | null;
    faceLean: string | null;
    bore: Size | null;
    stroke: Size | null;
  }> &
    Readonly<Record<string, unknown>>)[];
  castingTypes: readonly Readonly<{
    code: string;
    name: string;
    castingKind: string;
    castingNumber: string | null;
    engineType: string | null;
    material: string;
    camLayout: string;
    fuel: string;
    private: boolean;
    guideStyle?: string | null;
    seatStyle?: string | null;
    counts: Readonly<Record<string, number>>;
    weightKg: number;
    heavyDiesel: boolean;
    waterJacket?: boolean;
    spots: readonly (Readonly<{ side: string }> & Readonly<Record<string, unknown>>)[];
    arrivalItems: readonly Readonly<{
      words: string;
      expected: number | null;
      mixRule: string;
      removeBeforeWash: boolean;
      containerHint: string | null;
    }>[];
    limits: readonly Limit[];
    /** Data of the engine that the arithmetic of a cut asks for, each kept as a target. */
    engineFigures?: readonly Readonly<{ quantity: string; target: string; unit: string }>[];
    chamberCc?: string | null;
    pistonBowlCc?: string | null;
    valves?: Readonly<{
      headDiameter?: Readonly<{ I: Size; E: Size }>;
      /** Degrees from the plane of the head. */
      seatAngle?: Readonly<{ I: number; E: number }>;
    }> | null;
    deck?: Readonly<{ rod?: Size; compressionHeight?: Size }> | null;
    bore?: Size | null;
    cylinders?: Readonly<{ pistonClearance: Size; honeAllowance: Size; cleanUp: Size; greatestBore: Size }> | null;
    mains?: Readonly<{ shell: Size; journalStandard: Size }> | null;
    /** In the unit of the bore. */
    wetLiner?: Readonly<{
      counterbore: string;
      flange: string;
      protrusion: readonly [string, string];
      spread: string;
    }> | null;
    limitSource: Readonly<{ tag: string; words: string; from: string }>;
    springs?: Readonly<{
      installedHeight: Size;
      loads: readonly Readonly<{ force: string; at: string }>[];
      forceUnit: string;
      freeLength: string;
      solidHeight: Size;
      lift: Size;
      sealGapStatic: Size;
    }> | null;
  }>[];
}>;
export type PlacesFile = Readonly<{
  places: readonly Readonly<{
    code: string;
    purpose: string;
    words: string | null;
    maxKg: number | null;
    onlyMetal: string | null;
  }>[];
}>;
export type GaugesFile = Readonly<{
  gauges: readonly Readonly<{
    name: string;
    kind: string;
    rangeLow: string;
    rangeHigh: string;
    resolution: string;
    uncertainty: string;
    unit: string;
    workCentre: string;
    nextDue: string | null;
  }>[];
}>;
export type RatesFile = Readonly<{
  benchRate: string;
  weldRate: string;
  factors: readonly Readonly<{
    code: string;
    factor: string;
    whenFact: string;
    whenValue: string;
    from: string;
    operations: readonly string[];
  }>[];
  taxes: readonly Readonly<{
    code: string;
    words: string;
    percent: string;
    from: string;
    classes: Readonly<Record<string, boolean>>;
  }>[];
  parts: readonly Readonly<{ code: string; words: string; price: string; coreCharge?: string }>[];
  shims: Readonly<{ in: readonly string[]; mm: readonly string[]; inMaxStack: string; mmMaxStack: string }>;
}>;
export type PricesFile = Readonly<{
  operations: readonly Readonly<{
    operation: string;
    castingKind: string;
    list: string;
    price: string;
    lineMinimum: string;
    from: string;
  }>[];
  packages: readonly Readonly<{
    package: string;
    castingType: string;
    list: string;
    price: string;
    lineMinimum: string;
    from: string;
  }>[];
}>;
export type StaffFile = Readonly<{
  staff: readonly Readonly<{
    id: string;
    initials: string;
    name: string;
    roles: readonly string[];
    job: string;
    demoPin: string | null;
    retiredOn: string | null;
  }>[];
}>;
export type CustomersFile = Readonly<{
  terms: readonly Readonly<{
    code: string;
    words: string;
    kind: string;
    days: number;
    earlyPercent: string | null;
    earlyDays: number | null;
  }>[];
  customers: readonly Readonly<{
    id: string;
    kind: string;
    trade: string | null;
    name: string;
    shortName: string;
    legalName: string | null;
    billingAddress: string | null;
    terms: string;
    creditLimit: string | null;
    labourDiscountPercent: string;
    partsDiscountPercent: string;
    onStop: Readonly<{ at: string; why: string }> | null;
    needsOrderNumber: boolean;
    whoApproves: string;
    taxExemption: Readonly<{
      taxRate: string;
      certificate: string;
      words: string;
      from: string;
      until: string | null;
    }> | null;
    persons: readonly Readonly<{
      name: string;
      roleWords: string | null;
      mayApprove: boolean;
      approveLimit: string | null;
      mayCollect: boolean;
      prefers: string;
      contacts: readonly Readonly<{ kind: string; value: string }>[];
    }>[];
    notes: string | null;
  }>[];
}>;
