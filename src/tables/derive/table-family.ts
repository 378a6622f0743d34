import type { Registry } from '../../registry/registry.ts';
import { type Result, success } from '../../result.ts';
import type { DegreesCelsius } from '../../units/canonical.ts';
import { type DeriveOptions, deriveTables, type TableProblem, type TableRequest } from './derive-tables.ts';
import type { SpeedTable } from './speed-table.ts';

/** The tables of a pairing at every tested nozzle temperature, the coolest first. */
export interface TableFamily {
  readonly tables: readonly SpeedTable[];
  /** The temperature that the policy would take, and why. */
  readonly chosen: DegreesCelsius;
  readonly chosenBy: string;
}

/** A table for each nozzle temperature that was tested, and which of them the policy takes. Problems as of one table. */
export function deriveFamily(
  registry: Registry,
  request: Omit<TableRequest, 'temperature'>,
  options: DeriveOptions,
): Result<TableFamily, TableProblem> {
  const chosen = deriveTables(registry, request, options);
  if (!chosen.ok) return chosen;
  const tables: SpeedTable[] = [];
  for (const { nozzleTemperature } of chosen.value.meltLimits) {
    const table = deriveTables(registry, { ...request, temperature: nozzleTemperature }, options);
    if (!table.ok) return table;
    tables.push(table.value);
  }
  const { temperatures, largestFlow } = chosen.value;
  return success({ tables, chosen: temperatures.print, chosenBy: largestFlow.chosenBy });
}
