import type { Hit } from '../../registry/hit.ts';
import type { AnyProfile, Profile } from '../../registry/profile.ts';
import type { Registry } from '../../registry/registry.ts';
import type { Path } from '../../registry/shape.ts';
import { type Conditions, statementsOf } from '../../registry/statement.ts';
import { formatQuantity } from '../../units/format-quantity.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule = {
  judges: 'profile',
  severity: 'error',
  statement:
    'A measured value holds under the conditions of its trial: machine, nozzle, filament, nozzle temperature.',
  rationale: 'A limit found with one nozzle or at one temperature says little about another.',
  source: 'JCGM 200 (VIM) 2.9 and 2.16: a result holds for the conditions under which it was obtained.',
  example: {
    kind: 'filament',
    bad: `meltFlow:
  - value: 19 mm3/s
    basis: measured
    evidence: wren-clover-petg-245
    at: {machine: plumstead/wren, nozzle: hs-0.4, nozzleTemperature: 245 Cel}`,
    good: `meltFlow:
  - value: 19 mm3/s
    basis: measured
    evidence: wren-clover-petg-245
    at: {machine: plumstead/wren, nozzle: hs-0.6, nozzleTemperature: 245 Cel}`,
  },
  *check(profile, { registry }) {
    for (const { path, statement } of statementsOf(profile)) {
      const trial = statement.evidence === undefined ? undefined : registry.trial.get(statement.evidence);
      if (statement.basis !== 'measured' || trial === undefined) continue;
      const implied = isKnown(registry, trial) ? impliedBy(profile) : {};
      yield* differences(path, { ...implied, ...statement.at }, trial);
    }
  },
};

/** Whether what the trial was run with is there; a mistyped id of a profile is no other condition. */
function isKnown(registry: Registry, { data }: Profile<'trial'>): boolean {
  const hasMachine = data.machine === undefined || registry.machine.has(data.machine);
  return hasMachine && registry.filament.has(data.filament);
}

/** The profile itself is a condition: a filament's statements hold for that filament. */
function impliedBy(profile: AnyProfile): Conditions {
  if (profile.kind === 'filament') return { filament: profile.id };
  return profile.kind === 'machine' ? { machine: profile.id } : {};
}

function* differences(path: Path, stated: Conditions, trial: Profile<'trial'>): Generator<Hit> {
  const { machine, nozzle, filament, conditions } = trial.data;
  const actual = { machine, nozzle, filament, nozzleTemperature: conditions.nozzleTemperature };
  for (const name of ['machine', 'nozzle', 'filament', 'nozzleTemperature'] as const) {
    const [asked, was] = [stated[name], actual[name]];
    if (asked === undefined || was === undefined || asked === was) continue;
    const [askedText, wasText] = [asked, was].map((value) =>
      typeof value === 'number' ? formatQuantity(value, 'temperature') : value,
    );
    yield {
      path: [...path, 'evidence'],
      part: 'value',
      message: `The statement holds for ${name} ${askedText}, but the trial "${trial.id}" was run with ${wasText}`,
      found: `${askedText}`,
      allowed: `${wasText}`,
      help: `Name the trial that was run with ${askedText}, or correct \`${name}\`.`,
    };
  }
}
