import { readFileSync, statSync } from 'node:fs';
import { resolve } from 'node:path';
import { Option } from 'commander';
import type { BenchProblem } from '../bench/bench-problem.ts';
import { largestSheet, readBenchSheet } from '../bench/bench-sheet.ts';
import { flowLadder } from '../bench/flow-ladder.ts';
import { usualAcceptedDeficit, usualMassResolution } from '../bench/reduce-trial.ts';
import type { Reduction } from '../bench/reduction.ts';
import { failure, type Result, success } from '../result.ts';
import type { Dimension } from '../units/dimension.ts';
import { parseQuantity } from '../units/parse-quantity.ts';

/** What a bare bench sheet does not say itself, as the user writes it. */
export interface SheetOptions {
  readonly method?: string;
  readonly diameter?: string;
  readonly density?: string;
  readonly tolerance?: string;
  readonly resolution?: string;
  readonly halted?: string;
}

export interface CannotReduce {
  readonly reason: string;
  readonly help: string;
}

/** Options that only a bare bench sheet needs; a trial of the registry holds them itself. */
export function sheetOptions(): Option[] {
  return [
    new Option('--method <name>', 'bench method of a CSV sheet').choices([flowLadder.method]),
    new Option('--diameter <length>', 'filament diameter, such as "1.75 mm" (CSV sheet)'),
    new Option('--density <density>', 'filament density, such as "1.24 g/cm3" (CSV sheet)'),
    new Option('--tolerance <ratio>', 'accepted flow deficit, such as "5 %" (CSV sheet; default 5 %)'),
    new Option(
      '--resolution <mass>',
      'smallest step of the scale, such as "0.01 g" (CSV sheet; default 0.01 g)',
    ),
    new Option(
      '--halted <flow>',
      'commanded flow at which the run was halted, such as "66 mm3/s" (CSV sheet)',
    ),
  ];
}

/** Reads and reduces a bare CSV bench sheet. The inner result is what the method says of the readings. */
export function reduceSheet(
  path: string,
  options: SheetOptions,
  cwd: string,
): Result<Result<Reduction, readonly BenchProblem[]>, CannotReduce> {
  if (options.method === undefined) {
    return failure({
      reason: 'A bare sheet does not say how it was run.',
      help: `Add --method ${flowLadder.method}.`,
    });
  }
  const settings = settingsFrom(options);
  if (!settings.ok) return settings;
  const text = readSheetText(resolve(cwd, path), path);
  if (!text.ok) return text;
  const observations = readBenchSheet(text.value, flowLadder.columns);
  return success(observations.ok ? flowLadder.reduce(observations.value, settings.value) : observations);
}

/** Text of a bench sheet, `shown` as the user calls it. */
export function readSheetText(absolute: string, shown: string): Result<string, CannotReduce> {
  try {
    // Bytes never outnumber characters by more than four, so a file beyond that cannot be a bench sheet.
    if (statSync(absolute).size > 4 * largestSheet) {
      return failure({
        reason: `${shown} is too large for a bench sheet.`,
        help: 'Check that it is the right file.',
      });
    }
    return success(new TextDecoder('utf-8', { fatal: true }).decode(readFileSync(absolute)));
  } catch (error) {
    const encoding = error instanceof TypeError;
    return failure({
      reason: encoding ? `${shown} is not UTF-8 text.` : `${shown} cannot be read.`,
      help: encoding ? 'Save it as CSV in UTF-8.' : 'Check the spelling of the path.',
    });
  }
}

function settingsFrom(options: SheetOptions) {
  const diameter = required('--diameter', options.diameter, 'length', '1.75 mm');
  if (!diameter.ok) return diameter;
  const density = required('--density', options.density, 'density', '1.24 g/cm3');
  if (!density.ok) return density;
  const tolerance = optional('--tolerance', options.tolerance, 'ratio');
  if (!tolerance.ok) return tolerance;
  const resolution = optional('--resolution', options.resolution, 'mass');
  if (!resolution.ok) return resolution;
  const halted = optional('--halted', options.halted, 'volumeFlow');
  if (!halted.ok) return halted;
  return success({
    filamentDiameter: diameter.value,
    density: density.value,
    acceptedDeficit: tolerance.value ?? usualAcceptedDeficit,
    massResolution: resolution.value ?? usualMassResolution,
    ...(halted.value !== null && { haltedAt: halted.value }),
  });
}

function required(
  flag: string,
  written: string | undefined,
  dimension: Dimension,
  example: string,
): Result<number, CannotReduce> {
  if (written === undefined) {
    return failure({
      reason: `A bare sheet needs ${flag}.`,
      help: `Add, for instance: ${flag} "${example}"`,
    });
  }
  const quantity = parseQuantity(written, dimension);
  if (quantity.ok) return success(quantity.value.value);
  return failure({ reason: `${flag}: ${quantity.error.message}`, help: quantity.error.help });
}

function optional(
  flag: string,
  written: string | undefined,
  dimension: Dimension,
): Result<number | null, CannotReduce> {
  return written === undefined ? success(null) : required(flag, written, dimension, '');
}
