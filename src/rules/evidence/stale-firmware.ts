import semver from 'semver';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  kinds: ['trial'],
  severity: 'warning',
  statement: 'A trial was run with the controller software that the machine has now, but for patches.',
  rationale: 'New software moves, heats and feeds in another way: what held before may hold no more.',
  source: 'Semantic Versioning 2.0.0, clauses 6 to 8: only a patch leaves the behaviour as it was.',
  example: {
    kind: 'trial',
    bad: 'firmware: 1.2.0',
    good: 'firmware: 1.3.4',
  },
  *check(profile, { registry }) {
    const { firmware: then, machine } = profile.data;
    const now = registry.machine.get(machine ?? '')?.data.firmware;
    if (then === undefined || now === undefined) return;
    const difference = semver.diff(then, now);
    if (difference === null || difference === 'patch') return;
    const older = semver.lt(then, now);
    yield {
      path: ['firmware'],
      part: 'value',
      message: older
        ? `The evidence is stale: the trial was run with ${then}, and ${machine} has ${now} now`
        : `The trial was run with ${then}, and the profile of ${machine} still says ${now}`,
      found: then,
      allowed: `${semver.major(now)}.${semver.minor(now)}.x`,
      help: older
        ? 'Repeat the ladder; until then acknowledge the finding if the change does not touch the flow.'
        : 'Bring the profile of the machine up to date, or correct the version.',
    };
  },
};
