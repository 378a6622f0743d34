import type { Profile } from '../registry/profile.ts';
import type { Registry } from '../registry/registry.ts';
import { chooseStatement } from '../registry/statement.ts';
import { failure, type Result, success } from '../result.ts';
import type { Dimension } from '../units/dimension.ts';
import type { BenchProblem } from './bench-problem.ts';
import { readBenchSheet } from './bench-sheet.ts';
import { flowLadder } from './flow-ladder.ts';
import type { FlowLadderSettings } from './flow-ladder-settings.ts';
import { readInlineObservations } from './inline-observations.ts';
import type { Observations } from './observations.ts';
import type { Reduction } from './reduction.ts';

/** Accepted deficit of a ladder that states none, as a fraction: common practice, no source. */
export const usualAcceptedDeficit = 0.05;

/** Scale step taken where a trial names no scale, in g: the usual pocket scale (common practice, no source). */
export const usualMassResolution = 0.01;

/**
 * Reduces a trial of a registry to its results, all in canonical units. The same trial gives the same result on every
 * machine. Errors: readings that cannot be reduced, or a trial whose filament or density is not in the registry.
 */
export function reduceTrial(registry: Registry, trialId: string): Result<Reduction, readonly BenchProblem[]> {
  const trial = registry.trial.get(trialId);
  if (trial === undefined) {
    return failure([
      {
        code: 'unknownTrial',
        message: `there is no usable trial "${trialId}" in the registry`,
        help: 'check the id, and check the trial with `meltbounds check`',
      },
    ]);
  }
  const settings = settingsOf(registry, trial);
  if (!settings.ok) return failure([settings.error]);
  const observations = readObservations(trial, flowLadder.columns);
  return observations.ok ? flowLadder.reduce(observations.value, settings.value) : observations;
}

function readObservations(
  { data, attachment }: Profile<'trial'>,
  columns: Readonly<Record<string, Dimension>>,
): Result<Observations, readonly BenchProblem[]> {
  const { columns: units, rows } = data.observations;
  if (attachment?.ok) return readBenchSheet(attachment.source.text, columns);
  if (units !== undefined && rows !== undefined)
    return readInlineObservations({ columns: units, rows }, columns);
  return failure([
    {
      code: 'emptySheet',
      message: 'there are no readings that could be read',
      help: 'write them under `observations`, or name a CSV file beside the trial',
    },
  ]);
}

function settingsOf(registry: Registry, trial: Profile<'trial'>): Result<FlowLadderSettings, BenchProblem> {
  const { filament: id, machine, acceptedDeficit, scale, feedLengthUncertainty, events } = trial.data;
  const filament = registry.filament.get(id);
  const density = chooseStatement(filament?.data.density, { machine, filament: id });
  if (filament === undefined || density === null) {
    return failure({
      code: 'unknownFilament',
      message: `the filament "${id}" of the trial, or its density, is not in the registry`,
      help: 'add the filament with its diameter and density, then reduce again',
    });
  }
  const halted = (events ?? []).map(({ commandedFlow }) => commandedFlow);
  return success({
    filamentDiameter: filament.data.diameter,
    density: density.value,
    acceptedDeficit: acceptedDeficit ?? usualAcceptedDeficit,
    massResolution: scale?.resolution ?? usualMassResolution,
    ...(feedLengthUncertainty !== undefined && { feedLengthUncertainty }),
    ...(halted.length > 0 && { haltedAt: Math.min(...halted) }),
  });
}
