import { statementsOf } from '../../registry/statement.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule = {
  judges: 'profile',
  reach: 'neighbours',
  severity: 'warning',
  statement: 'A measured value has the date of its trial.',
  rationale: 'The newest statement counts; with a wrong date it may count when it should not.',
  source: 'Format of the registry: date is the day on which the value was measured.',
  example: alike(
    'filament',
    { bad: '2026-02-17', good: '2026-02-12' },
    (value) => `meltFlow:
  - value: 19.6 mm3/s
    interval: 19.5..20.3 mm3/s
    basis: measured
    evidence: wren-clover-petg-245
    readings: 2bf0b98f14c9bbd5
    at: {machine: plumstead/wren, nozzle: hs-0.6, nozzleTemperature: 245 Cel, batch: 26-0002}
    date: '${value}'`,
  ),
  *check(profile, { registry, today }) {
    for (const { path, statement } of statementsOf(profile)) {
      const trial = statement.evidence === undefined ? undefined : registry.trial.get(statement.evidence);
      const { date } = statement;
      if (trial === undefined || date === undefined || date === trial.data.date) continue;
      // A date in the future is an error of its own.
      if (statement.basis !== 'measured' || date > today || trial.data.date > today) continue;
      yield {
        path: [...path, 'date'],
        part: 'value',
        blames: [{ path: [...path, 'evidence'] }],
        message: `The value is dated ${date}, but its trial "${trial.id}" was run on ${trial.data.date}`,
        found: date,
        allowed: trial.data.date,
        help: `Write \`date: '${trial.data.date}'\`, or name the trial of that day.`,
      };
    }
  },
};
