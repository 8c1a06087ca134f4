/** A straight eight with four valves a cylinder, checked in and read: the widest bench table there is. */
type Ask = (name: string, input: unknown) => Promise<unknown>;

const COUNTS = {
  cylinders: 8,
  intake_valves: 16,
  exhaust_valves: 16,
  guides: 32,
  seats: 32,
  springs: 32,
  chambers: 8,
  decks: 1,
};

/** @returns ids of the casting and its type */
export async function makeManyValves(ask: Ask): Promise<{ casting: number; type: number }> {
  const { castingType: type } = (await ask('operations/add-casting-type', {
    code: 'ST-8',
    engineType: null,
    kind: 'head',
    name: 'straight eight, four valves a cylinder',
    castingNumberPattern: null,
    material: 'aluminium',
    camLayout: 'dohc',
    fuel: 'petrol',
    private: false,
    counts: COUNTS,
    guideStyle: 'insert',
    seatStyle: 'insert',
    usualWeight: null,
    heavyDiesel: false,
    waterJacket: true,
  })) as { castingType: number };
  for (const [quantity, low, high, target] of [
    ['height-with-shim', '34.75', '35.25', '35.00'],
    ['installed-height', null, null, '35.00'],
  ] as const) {
    await ask('limits/add-limit', {
      quantity,
      stage: quantity === 'installed-height' ? 'before' : 'after',
      side: 'any',
      low,
      high,
      target,
      unit: 'mm',
      secondUnitText: null,
      sourceTag: '[demo]',
      sourceWords: 'bench',
      for: 'casting_type',
      castingType: type,
    });
  }
  const made = (await ask('tickets/check-in-ticket', {
    customer: { customerId: 1, personId: null },
    castings: [{ type: 'ST-8', material: 'aluminium', position: 'single' }],
    wishes: [{ operation: 'installed-height' }],
    signed: { how: 'on_paper', by: 'bench' },
  })) as { castings: { castingId: number }[] };
  const casting = made.castings[0]?.castingId ?? 0;
  const { spots } = (await ask('operations/get-casting-type', { castingType: type })) as {
    spots: { id: number; kind: string }[];
  };
  const valves = spots.filter((s) => s.kind === 'valve');
  await ask('readings/add-readings', {
    casting,
    rows: valves.map((spot, i) => ({
      quantity: 'installed-height',
      spot: spot.id,
      stage: 'before',
      typed: (35 + (i % 9) / 8).toFixed(2),
      unit: 'mm',
    })),
  });
  return { casting, type };
}
