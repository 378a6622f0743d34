import { readingsDigest } from '../bench/adopt/readings-digest.ts';
import type { Statement } from '../registry/generated/documents.ts';
import type { Hit } from '../registry/hit.ts';
import type { AnyProfile, Profile } from '../registry/profile.ts';
import { oncePerRegistry, type Registry } from '../registry/registry.ts';
import { statementsOf } from '../registry/statement.ts';
import { quote } from '../text/quote.ts';
import { changedReadings } from './changed-readings.ts';
import { meantTrial } from './meant-trial.ts';
import { propertyOf } from './statement-intervals.ts';

/** Keys of a trial whose change its digest shows. */
const digested = [
  'observations',
  'scale',
  'gauge',
  'clock',
  'thermometer',
  'soundMeter',
  'feedLengthUncertainty',
  'acceptedDeficit',
  'acceptedStrength',
  'acceptedRipple',
  'acceptedDefect',
  'acceptedGrade',
  'residualMoisture',
  'reelMass',
] as const satisfies readonly (keyof Profile<'trial'>['data'])[];

/** What says at a trial that its readings are other ones than those that a limit was adopted from. */
export function changedReadingsHit(trial: Profile<'trial'>, registry: Registry): Hit | null {
  const resting = restingOn(registry).get(trial.id) ?? [];
  // What was adopted from another trial names the wrong one, and has a finding of its own.
  const changed = resting.filter(
    ({ statement }) => changedReadings(statement, trial) !== null && meantTrial(statement, registry) === null,
  );
  const [first] = changed;
  const now = readingsDigest(trial);
  if (first === undefined || now === null) return null;
  const { profile, property, statement } = first;
  const others = changed.length === 1 ? '' : `, and ${changed.length - 1} more,`;
  return {
    path: ['observations'],
    part: 'key',
    blames: digested.map((key) => ({ path: [key] })),
    message: `The readings are not those that ${property} of ${profile.kind} ${quote(profile.id)}${others} was adopted from`,
    found: `digest ${now}`,
    allowed: `digest ${statement.readings}`,
    help: `Compare the readings with the bench sheet and put back what differs. Only where the sheet has what stands here, look at what they give now: \`meltbounds reduce ${trial.id}\``,
  };
}

interface Resting {
  readonly profile: AnyProfile;
  readonly property: string;
  readonly statement: Statement<unknown>;
}

/** The statements that carry a digest of their readings, by their trial. */
const restingOn = oncePerRegistry((registry) => {
  const byTrial = new Map<string, Resting[]>();
  for (const profile of registry.profiles) {
    for (const { path, statement } of statementsOf(profile)) {
      if (statement.evidence === undefined || statement.readings === undefined) continue;
      const known = byTrial.get(statement.evidence) ?? [];
      byTrial.set(statement.evidence, [...known, { profile, property: propertyOf(path), statement }]);
    }
  }
  return byTrial;
});
