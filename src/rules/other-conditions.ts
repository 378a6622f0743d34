import type { Hit } from '../registry/hit.ts';
import type { AnyProfile, Profile } from '../registry/profile.ts';
import type { Path } from '../registry/shape.ts';
import { type Conditions, statementsOf } from '../registry/statement.ts';
import { formatQuantity } from '../units/format-quantity.ts';
import type { ProfileRule } from './rule.ts';

export const otherConditions: ProfileRule = {
  judges: 'profile',
  code: 'evidence/other-conditions',
  severity: 'error',
  statement:
    'A measured value holds under the conditions of its trial: machine, nozzle, filament, nozzle temperature.',
  rationale: 'A limit found with one nozzle or at one temperature says little about another.',
  source: 'JCGM 200 (VIM) 2.9 and 2.16: a result holds for the conditions under which it was obtained.',
  *check(profile, { registry }) {
    for (const { path, statement } of statementsOf(profile)) {
      const trial = statement.evidence === undefined ? undefined : registry.trial.get(statement.evidence);
      if (statement.basis !== 'measured' || trial === undefined) continue;
      yield* differences(path, { ...impliedBy(profile), ...statement.at }, trial);
    }
  },
};

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
    if (asked === undefined || asked === was) continue;
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
