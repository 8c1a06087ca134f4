/** Invented casting types for drawing tests: two rows, one mixed row, four valves in one row, a vee block, a shaft. */
import type { DrawnSpot, DrawnType } from '#core/drawing/drawn-type.ts';

const valve = (label: string, benchOrder: number, row: number, cylinder: number): DrawnSpot => ({
  kind: 'valve',
  label,
  benchOrder,
  row,
  bank: 'none',
  cylinder,
  side: label.includes('E') ? 'E' : 'I',
});

const chambers = (count: number): DrawnSpot[] =>
  Array.from({ length: count }, (_, n) => ({
    kind: 'chamber',
    label: `C${n + 1}`,
    benchOrder: n + 1,
    row: 1,
    bank: 'none',
    cylinder: n + 1,
    side: 'none',
  }));

const row = (labels: string, rowNo: number): DrawnSpot[] =>
  labels.split(' ').map((label, n) => valve(label, n + 1, rowNo, Number(label[0])));

export const twinCamFour: DrawnType = {
  kind: 'head',
  counts: { cylinders: 4 },
  spots: [...chambers(4), ...row('1I1 1I2 2I1 2I2 3I1 3I2 4I1 4I2', 1), ...row('1E1 1E2 2E1 2E2 3E1 3E2 4E1 4E2', 2)],
  valvePerBore: { intake: 384, exhaust: 331 },
};

export const pushrodFour: DrawnType = {
  kind: 'head',
  counts: { cylinders: 4 },
  spots: [...chambers(4), ...row('1E 1I 2I 2E 3E 3I 4I 4E', 1)],
  valvePerBore: { intake: 491, exhaust: 380 },
};

export const dieselTwoFourValve: DrawnType = {
  kind: 'head',
  counts: { cylinders: 2, sleeves: 2 },
  spots: [...chambers(2), ...row('1I1 1E1 1I2 1E2 2I1 2E1 2I2 2E2', 1)],
};

const cylinder = (label: string, n: number, bank: 'left' | 'right', bankRow: number): DrawnSpot => ({
  kind: 'cylinder',
  label,
  benchOrder: n,
  row: bankRow,
  bank,
  cylinder: Number(label),
  side: 'none',
});

export const veeBlock: DrawnType = {
  kind: 'block',
  counts: { cylinders: 8, mains: 5 },
  spots: [
    ...['1', '3', '5', '7'].map((label, n) => cylinder(label, n + 1, 'left', 1)),
    ...['2', '4', '6', '8'].map((label, n) => cylinder(label, n + 1, 'right', 2)),
  ],
};

const journal = (label: string, benchOrder: number, journalRow: number): DrawnSpot => ({
  kind: 'journal',
  label,
  benchOrder,
  row: journalRow,
  bank: 'none',
  cylinder: null,
  side: 'none',
});

export const crank: DrawnType = {
  kind: 'crank',
  counts: { mains: 3, pins: 2 },
  spots: [
    ...['M1', 'M2', 'M3'].map((l, n) => journal(l, n + 1, 1)),
    ...['P1', 'P2'].map((l, n) => journal(l, n + 1, 2)),
  ],
};
