import type { Profile } from '../registry/profile.ts';
import type { Grams } from '../units/canonical.ts';
import { benchMethods } from './methods.ts';
import { trialObservations } from './sheet/trial-observations.ts';

/** What the scale of a trial showed, by whatever method; empty where nothing was weighed or the readings cannot be read. */
export function weighedMasses(trial: Profile<'trial'>): readonly Grams[] {
  const read = trialObservations(trial, benchMethods[trial.data.method]);
  if (!read.ok) return [];
  const { extrudedMass, mass } = read.value.columns;
  return extrudedMass ?? mass ?? [];
}
