import type { Statement } from '../registry/generated/documents.ts';
import {
  type Basis,
  type Conditions,
  chooseStatement,
  statementsByWeight,
  weakerBasis,
} from '../registry/statement.ts';
import type { CubicMillimetresPerSecond, DegreesCelsius } from '../units/canonical.ts';
import { conditionsOf, type Pairing } from './pairing.ts';

/** The most melt that a pairing delivers at a nozzle temperature. */
export interface MeltLimit {
  readonly flow: CubicMillimetresPerSecond;
  readonly nozzleTemperature: DegreesCelsius;
  readonly basis: Basis;
  /** Trial that shows it, if it was measured. */
  readonly evidence: string | null;
}

/**
 * Melt limits of a pairing, from the coolest nozzle temperature to the hottest. They all rest on the same, strongest
 * basis that there is; temperatures that the hot end must not reach are left out.
 */
export function meltLimits(pairing: Pairing): MeltLimit[] {
  const { filament, hotEnd } = pairing;
  const byWeight = statementsByWeight(
    [...(filament.data.meltFlow ?? []), ...(hotEnd.meltFlow ?? [])],
    (statement) => withoutTemperature(statement.at ?? {}),
    conditionsOf(pairing),
  );
  const strongest = byWeight[0]?.basis;
  const limits = new Map<number, MeltLimit>();
  for (const statement of byWeight.filter(({ basis }) => basis === strongest)) {
    const limit = toLimit(statement, pairing);
    if (limit !== null && !limits.has(limit.nozzleTemperature)) limits.set(limit.nozzleTemperature, limit);
  }
  return [...limits.values()].sort((a, b) => a.nozzleTemperature - b.nozzleTemperature);
}

function withoutTemperature({ nozzleTemperature: _, ...rest }: Conditions): Conditions {
  return rest;
}

function toLimit(statement: Statement<number>, { filament, hotEnd, machine }: Pairing): MeltLimit | null {
  const conditions = { machine: machine.id };
  const window = chooseStatement(filament.data.nozzleTemperature, conditions);
  const highest = chooseStatement(hotEnd.temperatureLimit, conditions)?.value;
  const stated = statement.at?.nozzleTemperature;
  // A claim that names no temperature is read at the middle of the window of the filament.
  const temperature = stated ?? (window === null ? null : (window.value.low + window.value.high) / 2);
  if (temperature === null || (highest !== undefined && temperature > highest)) return null;
  return {
    flow: statement.value,
    nozzleTemperature: temperature,
    basis:
      stated === undefined && window !== null ? weakerBasis(statement.basis, window.basis) : statement.basis,
    evidence: statement.evidence ?? null,
  };
}
