import { methodOf } from '../../bench/methods.ts';
import { trialObservations } from '../../bench/sheet/trial-observations.ts';
import type { AnyProfile, Profile } from '../../registry/profile.ts';
import type { Path } from '../../registry/shape.ts';
import { stated } from '../../registry/stated.ts';
import type { CubicMillimetresPerSecond } from '../../units/canonical.ts';
import { shown } from '../../units/wording.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

type Noted = 'machine' | 'filament' | 'trial';

/** Of the highest flow: sheets may claim less than a wide nozzle delivers, and a filament may be known on a slow machine only. */
const largestMultiple = { machine: 2, trial: 2, filament: 5 } as const satisfies Record<Noted, number>;
/** Of the lowest flow limit. */
const leastShare = 0.1;

export const rule: ProfileRule<Noted> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['machine', 'filament', 'trial'],
  severity: 'warning',
  statement:
    'A field note that is shown above a flow names one that prints reach, and not one that all exceed.',
  rationale: 'With a wrong digit or unit the note is never shown, or always, so that nobody reads it.',
  source: 'Common practice, no source: notes are about flows near the limit of a hot end.',
  formula: `${leastShare} Q_min <= Q <= ${largestMultiple.machine} Q_max, of a filament ${largestMultiple.filament} Q_max; flows that the profile states or the trial was run at, the lower end only without a nozzle`,
  example: alike(
    'machine',
    { bad: '300 mm3/s', good: '30 mm3/s' },
    (flow) => `
fieldNotes:
  - date: '2026-04-02'
    what: Spool rubs on the holder
    effect: The feed stutters
    concerns: {aboveFlow: ${flow}}`,
  ),
  *check(profile) {
    const flows = flowsOf(profile);
    for (const [index, { concerns = {} }] of (profile.data.fieldNotes ?? []).entries()) {
      const { aboveFlow, nozzle } = concerns;
      if (aboveFlow === undefined || aboveFlow <= 0) continue;
      const idle =
        neverShown(aboveFlow, flows, largestMultiple[profile.kind]) ??
        (nozzle === undefined ? alwaysShown(aboveFlow, flows) : null);
      if (idle === null) continue;
      yield {
        path: ['fieldNotes', index, 'concerns', 'aboveFlow'],
        part: 'value',
        blames: [{ path: idle.known.path }],
        message: `The note is ${idle.when} shown: it concerns flows above ${shown(aboveFlow, 'volumeFlow')}, and flows here reach ${shown(idle.known.value, 'volumeFlow')}`,
        found: shown(aboveFlow, 'volumeFlow'),
        allowed: idle.allowed,
        help: 'Check the digits and the unit of both; leave `aboveFlow` out if the note is about every flow.',
      };
    }
  },
};

/** Why a note tells nothing about a flow. */
interface IdleNote {
  readonly when: 'never' | 'always';
  readonly known: KnownFlow;
  readonly allowed: string;
}

function neverShown(flow: number, flows: readonly KnownFlow[], multiple: number): IdleNote | null {
  const known = flows.toSorted((a, b) => b.value - a.value)[0];
  if (known === undefined || flow <= multiple * known.value) return null;
  const allowed = `up to ${shown(multiple * known.value, 'volumeFlow')}`;
  return { when: 'never', known, allowed };
}

function alwaysShown(flow: number, flows: readonly KnownFlow[]): IdleNote | null {
  const known = flows.toSorted((a, b) => a.value - b.value)[0];
  if (known === undefined || flow >= leastShare * known.value) return null;
  const allowed = `from ${shown(leastShare * known.value, 'volumeFlow')}`;
  return { when: 'always', known, allowed };
}

interface KnownFlow {
  readonly value: CubicMillimetresPerSecond;
  readonly path: Path;
}

/** The flow limits that a profile states; of a trial the highest flow that it was run at. */
function flowsOf(profile: AnyProfile): readonly KnownFlow[] {
  if (profile.kind === 'trial') return highestRun(profile);
  if (profile.kind === 'filament') return stated(profile.data.meltFlow, ['meltFlow']);
  if (profile.kind !== 'machine') return [];
  return profile.data.hotEnds.flatMap(({ meltFlow }, index) =>
    stated(meltFlow, ['hotEnds', index, 'meltFlow']),
  );
}

function highestRun(trial: Profile<'trial'>): readonly KnownFlow[] {
  const read = trialObservations(trial, methodOf(trial.data.method));
  const { commandedFlow = [] } = read.ok ? read.value.columns : {};
  return commandedFlow.length === 0 ? [] : [{ value: Math.max(...commandedFlow), path: ['observations'] }];
}
