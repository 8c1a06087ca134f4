/** The gauge in the hand, remembered on this tablet for each table; never guessed, so that no reading names a wrong one. */
import { useState } from 'react';
import type { ReadOn } from '#core/readings/compute/model.ts';
import type { Gauge } from './use-preview.ts';

const nameOf = (table: string): string => `benchtag-gauge-${table}`;
const READ_ON: readonly (ReadOn | null)[] = ['bare_pocket', 'cup', 'cup_and_shim', null];

/** The gauge of a table, and how to change it. `known`: ids of the gauges that may be chosen. */
export function useGauge(table: string, known: readonly number[]): [Gauge, (gauge: Gauge) => void] {
  const [gauge, setGauge] = useState<Gauge>(() => remembered(table));
  const stands = gauge.tool === null || known.includes(gauge.tool);
  const set = (next: Gauge) => {
    setGauge(next);
    try {
      localStorage.setItem(nameOf(table), JSON.stringify(next));
    } catch {
      // Chosen again after a reload.
    }
  };
  return [stands ? gauge : { ...gauge, tool: null }, set];
}

function remembered(table: string): Gauge {
  try {
    const value: unknown = JSON.parse(localStorage.getItem(nameOf(table)) ?? 'null');
    if (typeof value !== 'object' || value === null) return { tool: null, readOn: null };
    const { tool, readOn } = value as Partial<Gauge>;
    return {
      tool: typeof tool === 'number' ? tool : null,
      readOn: readOn !== undefined && READ_ON.includes(readOn) ? readOn : null,
    };
  } catch {
    return { tool: null, readOn: null };
  }
}
