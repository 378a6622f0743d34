import { restsOnTrial } from '../../knowledge/rests-on-trial.ts';
import type { Hit } from '../../registry/hit.ts';
import { nozzlesOf } from '../../registry/nozzle.ts';
import type { Profile } from '../../registry/profile.ts';
import { stated } from '../../registry/stated.ts';
import { statementsOf } from '../../registry/statement.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'machine' | 'filament'> = {
  judges: 'profile',
  reach: 'neighbours',
  kinds: ['machine', 'filament'],
  severity: 'error',
  statement:
    'The statements of a profile are about that profile and, in a hot end, about one of its own nozzles.',
  rationale: 'A statement about something else is never used, or is used for the wrong nozzle.',
  source: 'Format of the registry: a statement stands with what it is about.',
  example: alike(
    'machine',
    { bad: 'hs-0.6', good: 'hs-0.4' },
    (value) => `
hotEnds:
  - id: left
    filamentDiameter: 1.75 mm
    nozzles:
      - {id: hs-0.4, diameter: 0.4 mm, material: hardenedSteel}
    meltFlow:
      - value: 32 mm3/s
        basis: claimed
        source: plumstead-wren-sheet
        at: {nozzle: ${value}}
  - id: right
    filamentDiameter: 1.75 mm
    nozzles:
      - {id: hs-0.6, diameter: 0.6 mm, material: hardenedSteel}`,
  ),
  *check(profile, { registry }) {
    if (profile.kind === 'machine') yield* foreignNozzles(profile);
    const key = profile.kind;
    for (const { path, statement } of statementsOf(profile)) {
      const named = statement.at?.[key];
      if (named === undefined || named === profile.id || restsOnTrial(statement, registry)) continue;
      yield {
        path: [...path, 'at', key],
        part: 'value',
        message: `The statement is about the ${key} ${named}, but it stands in ${profile.id}`,
        found: named,
        allowed: profile.id,
        help: `Leave \`${key}\` out, or move the statement to ${named}.`,
      };
    }
  },
};

function* foreignNozzles({ data }: Profile<'machine'>): Generator<Hit> {
  const all = nozzlesOf(data).map(({ nozzle }) => nozzle.id);
  for (const [index, { id, nozzles, meltFlow }] of data.hotEnds.entries()) {
    const own = nozzles.map((nozzle) => nozzle.id);
    for (const [position, { statement }] of stated(meltFlow, []).entries()) {
      const named = statement.at?.nozzle;
      if (named === undefined || own.includes(named) || !all.includes(named)) continue;
      yield {
        path: ['hotEnds', index, 'meltFlow', position, 'at', 'nozzle'],
        part: 'value',
        message: `The nozzle "${named}" does not fit the hot end "${id}", for which the flow is stated`,
        found: named,
        allowed: own.join(', '),
        help: 'Move the statement to the hot end of the nozzle, or correct the nozzle.',
      };
    }
  }
}
