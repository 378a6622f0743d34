import type { Trial } from '../../registry/generated/documents.ts';

/** Something that a trial must name before its readings mean anything. */
export interface TrialKey {
  readonly name: string;
  /** The keys that lead to it. */
  readonly path: readonly string[];
  /** A line of YAML that names it. */
  readonly example: string;
}

/** A key at the root of a trial. */
export function rootKey(name: keyof Trial, example: string): TrialKey {
  return { name, path: [name], example: `${name}: ${example}` };
}

/** A key among the conditions of a trial. */
export function conditionKey(name: keyof Trial['conditions'], example: string): TrialKey {
  return { name, path: ['conditions', name], example: `conditions: {${name}: ${example}}` };
}

export const machineKey = rootKey('machine', 'brackwater/lantern');
export const nozzleKey = rootKey('nozzle', 'hs-0.6');
export const nozzleTemperatureKey = conditionKey('nozzleTemperature', '230 Cel');
