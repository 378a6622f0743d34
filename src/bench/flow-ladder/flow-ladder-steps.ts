import { describe } from '../../statistics/describe.ts';
import type { Observations } from '../sheet/observations.ts';
import type { FlowLadderSettings } from './flow-ladder-settings.ts';

/** One reading of a ladder. */
export interface WeighedPiece {
  /** Commanded, mm3/s. */
  readonly flow: number;
  /** g */
  readonly mass: number;
  /** Extruded mass over the mass of the fed filament by its nominal diameter and density. */
  readonly ratio: number;
  /** Where it was written. */
  readonly row: number;
}

/** All readings at one commanded flow, summed up by the logarithm of their ratio. */
export interface LadderStep {
  /** Commanded, mm3/s. */
  readonly flow: number;
  readonly count: number;
  readonly meanLogRatio: number;
  /** Sum of the squared deviations from that mean. */
  readonly squares: number;
  /** Step of the scale's display relative to the mean mass. */
  readonly relativeResolution: number;
}

/** The readings in the order in which they were written. The columns must hold positive numbers only. */
export function weighedPieces(observations: Observations, settings: FlowLadderSettings): WeighedPiece[] {
  const { commandedFlow = [], feedLength = [], extrudedMass = [] } = observations.columns;
  const massPerLength = settings.density * Math.PI * (settings.filamentDiameter / 2) ** 2;
  return observations.rows.map((row, index) => {
    const mass = extrudedMass[index] ?? Number.NaN;
    const fed = massPerLength * (feedLength[index] ?? Number.NaN);
    return { flow: commandedFlow[index] ?? Number.NaN, mass, ratio: mass / fed, row };
  });
}

/** Readings gathered by commanded flow, ascending; the order of the readings makes no difference. */
export function ladderSteps(readings: readonly WeighedPiece[], massResolution: number): LadderStep[] {
  const byFlow = new Map<number, WeighedPiece[]>();
  const sorted = readings.toSorted((one, other) => one.flow - other.flow || one.ratio - other.ratio);
  for (const reading of sorted) {
    const group = byFlow.get(reading.flow);
    if (group === undefined) byFlow.set(reading.flow, [reading]);
    else group.push(reading);
  }
  return [...byFlow].map(([flow, group]) => {
    const logRatios = group.map((reading) => Math.log(reading.ratio));
    const { count, mean, standardDeviation } = describe(logRatios);
    return {
      flow,
      count,
      meanLogRatio: mean,
      squares: count > 1 ? standardDeviation ** 2 * (count - 1) : 0,
      relativeResolution: massResolution / describe(group.map((reading) => reading.mass)).mean,
    };
  });
}
