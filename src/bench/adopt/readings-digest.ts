import { compareText } from '../../registry/finding.ts';
import type { Profile } from '../../registry/profile.ts';
import { sha256Of } from '../../text/sha256.ts';
import { methodOf } from '../methods.ts';
import { trialObservations } from '../sheet/trial-observations.ts';

const known = new WeakMap<Profile<'trial'>, string | null>();

/** Hexadecimal digits of a digest: enough to tell readings apart, short enough to compare by eye. */
const digits = 16;

/**
 * Digest of what a trial says that its reduction rests on: method, readings and facts such as instruments, in canonical
 * units, whatever the layout, the units and the order of columns. Facts of the filament do not count: they may be
 * corrected without a bench. Null where the readings cannot be read.
 */
export function readingsDigest(trial: Profile<'trial'>): string | null {
  const before = known.get(trial);
  if (before !== undefined) return before;
  const digest = digestOf(trial);
  known.set(trial, digest);
  return digest;
}

function digestOf(trial: Profile<'trial'>): string | null {
  const method = methodOf(trial.data.method);
  const observations = trialObservations(trial, method);
  if (!observations.ok) return null;
  const facts = Object.entries(method.facts).flatMap(([name, { statedIn, read }]) => {
    const value = statedIn === 'trial' ? read(trial.data, undefined) : undefined;
    return value === undefined ? [] : [[name, value] as const];
  });
  const columns = Object.entries(observations.value.columns);
  const content = [method.method, columns.sort(byName), facts.sort(byName)];
  return sha256Of(JSON.stringify(content)).slice(0, digits);
}

function byName([one]: readonly [string, unknown], [other]: readonly [string, unknown]): number {
  return compareText(one, other);
}
