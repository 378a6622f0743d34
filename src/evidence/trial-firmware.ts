// One by one: the whole package would triple what a page for browsers loads of it.
import diff from 'semver/functions/diff.js';
import lt from 'semver/functions/lt.js';
import major from 'semver/functions/major.js';
import minor from 'semver/functions/minor.js';
import type { Hit } from '../registry/hit.ts';
import type { Profile } from '../registry/profile.ts';
import type { Registry } from '../registry/registry.ts';

/** The firmware of a trial, where the machine has another one now that differs by more than a patch. */
export function otherFirmware({ data }: Profile<'trial'>, registry: Registry): Hit | null {
  const { firmware: then, machine } = data;
  const now = registry.machine.get(machine ?? '')?.data.firmware;
  if (then === undefined || now === undefined) return null;
  const difference = diff(then, now);
  if (difference === null || difference === 'patch') return null;
  const older = lt(then, now);
  return {
    path: ['firmware'],
    part: 'value',
    message: older
      ? `The trial was run with firmware ${then}, and ${machine} has ${now} now`
      : `The trial was run with firmware ${then}, and the profile of ${machine} still says ${now}`,
    found: then,
    allowed: `${major(now)}.${minor(now)}.x`,
    help: older
      ? 'Repeat the trial; until then acknowledge the finding if the update does not change what it measures.'
      : 'Bring the profile of the machine up to date, or correct the version.',
  };
}
