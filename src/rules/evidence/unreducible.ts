import type { BenchProblem } from '../../bench/bench-problem.ts';
import type { Blame, Hit } from '../../registry/hit.ts';
import type { Profile } from '../../registry/profile.ts';
import type { Path } from '../../registry/shape.ts';
import { ladder } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  reach: 'neighbours',
  kinds: ['trial'],
  severity: 'error',
  statement: 'The result of a trial can be calculated from its readings.',
  rationale:
    'Readings that give no result cannot support a limit; usually a unit, a column or a digit is wrong.',
  source: 'JCGM 101:2008, clause 5: the inputs of a propagation must be known.',
  example: { kind: 'trial', bad: ladder([8]), good: ladder([8, 12, 16, 18, 20, 22]) },
  *check(profile, { registry, reduce }) {
    const { data, attachment } = profile;
    // A filament that cannot be used has a finding of its own, and so has a file of readings that is not there.
    if (!registry.filament.has(data.filament) || attachment?.ok === false) return;
    const reduced = reduce(profile.id);
    if (reduced.ok) return;
    for (const problem of reduced.error) yield problemHit(profile, problem);
  },
};

function problemHit(trial: Profile<'trial'>, problem: BenchProblem): Hit {
  const { attachment } = trial;
  return {
    path: placeOf(trial, problem),
    part: 'value',
    message: `The readings cannot be reduced: ${problem.message}`,
    ...(problem.found !== undefined && { found: problem.found }),
    allowed: `readings that the method ${trial.data.method} can reduce`,
    help: problem.help,
    // Columns that cannot be read are left out, and the rows then have too many numbers.
    blames: [{ path: ['observations', 'columns'] }, ...blamedElsewhere(trial, problem)],
    ...(attachment?.ok &&
      problem.row !== undefined && { elsewhere: { source: attachment.source, line: problem.row } }),
  };
}

/** What the weight of a piece is calculated from. */
function blamedElsewhere({ data }: Profile<'trial'>, { code }: BenchProblem): Blame[] {
  if (code !== 'implausibleRatio') return [];
  const of = { kind: 'filament', id: data.filament } as const;
  return [
    { of, path: ['density'] },
    { of, path: ['diameter'] },
  ];
}

function placeOf(trial: Profile<'trial'>, { row }: BenchProblem): Path {
  if (trial.data.observations.rows !== undefined && row !== undefined)
    return ['observations', 'rows', row - 1];
  return ['observations'];
}
