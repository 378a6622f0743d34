import { readingsDigest } from '../bench/adopt/readings-digest.ts';
import { compareText } from '../registry/finding.ts';
import type { Statement } from '../registry/generated/documents.ts';
import type { Profile } from '../registry/profile.ts';
import { oncePerRegistry, type Registry } from '../registry/registry.ts';
import { changedReadings } from './changed-readings.ts';

/**
 * The trial whose readings a statement was adopted from by its digest, where it names another one; null where its trial has
 * these readings, or no trial of the registry has.
 */
export function meantTrial(
  { evidence, readings }: Pick<Statement<unknown>, 'evidence' | 'readings'>,
  registry: Registry,
): Profile<'trial'> | null {
  const named = registry.trial.get(evidence ?? '');
  if (readings === undefined || named === undefined || changedReadings({ readings }, named) === null)
    return null;
  return byDigest(registry).get(readings) ?? null;
}

/** Of trials with the same readings, the first by its id. */
const byDigest = oncePerRegistry((registry) => {
  const trials = [...registry.trial.values()].sort((one, other) => compareText(other.id, one.id));
  return new Map(trials.map((trial) => [readingsDigest(trial), trial]));
});
