import { resultOf } from '../../bench/methods.ts';
import type { JobFeature } from '../../bench/reference-print/job-plan.ts';
import { modelledPrintMass } from '../../bench/reference-print/modelled-mass.ts';
import { modelledPrintTime } from '../../bench/reference-print/modelled-print.ts';
import { trialIndex } from '../../knowledge/trial-index.ts';
import type { Job } from '../../registry/generated/documents.ts';
import type { Profile } from '../../registry/profile.ts';
import { metres } from '../../units/wording.ts';
import { alike, prints } from '../engine/examples.ts';
import { meantFigure } from '../engine/meant-figure.ts';
import { explainedPart, printShares } from '../engine/print-shares.ts';
import type { ProfileRule, RuleContext } from '../engine/rule.ts';

const acceptedShare = Math.max(printShares.time, printShares.mass);
const explainedShare = explainedPart * acceptedShare;
/** Times and masses that are off: one alone may be wrong itself, or a setting of its print. */
const fewestFigures = 2;

export const rule: ProfileRule<'job'> = {
  judges: 'profile',
  reach: 'registry',
  kinds: ['job'],
  severity: 'warning',
  statement: 'The prints of a job take the time, and weigh what, its paths give.',
  rationale:
    'Where no print does, and another length of one path would explain them all, that path is wrong, and every comparison by this job with it.',
  source:
    'The time model and the mass balance of `consistency/print-time` and `evidence/print-mass`; the accepted share is common practice, no source.',
  formula: `for a figure L of one path, with digits exchanged or another power of ten or unit: |t_model/t_print - 1| <= ${explainedShare} and |m_model/m_print - 1| <= ${explainedShare} in every print, where one of both is above ${acceptedShare} in every print as the job stands, and two or more are in all`,
  example: alike('trial', { bad: '44.3, 71.1', good: '16.1, 9.6' }, (print) => prints(print), {
    copied: true,
  }),
  *check({ id, data }, context) {
    const prints = printsOf(id, context);
    const all = prints.flat();
    const off = all.filter((figure) => worstOf([figure], data) > acceptedShare);
    if (off.length < fewestFigures || prints.some((print) => worstOf(print, data) <= acceptedShare)) return;
    const names = Object.keys(data.features) as JobFeature[]; // Object.keys widens to string
    const lengths = new Map(names.map((name) => [name, data.features[name]?.pathLength ?? 0]));
    const slip = meantFigure(
      lengths,
      (name, length) => worstOf(all, withLength(data, name, length)),
      explainedShare,
    );
    if (slip === null) return;
    const [written, meant] = [lengths.get(slip.key) ?? 0, slip.meant].map(metres);
    yield {
      path: ['features', slip.key, 'pathLength'],
      part: 'value',
      blames: [{ path: ['features', slip.key, 'pathLength'] }],
      message: `No print of this job fits ${written} for ${slip.key}; with ${meant} all would fit`,
      found: written ?? '',
      allowed: `about ${meant}`,
      help: `Check the digits and the unit of the path length for ${slip.key}.`,
    };
  },
};

/** A time in s or a mass in g of a print, and what a job gives for it. */
interface PrintFigure {
  readonly printed: number;
  readonly modelled: (job: Job) => number | null;
}

/** The times and masses of the prints of a job that can be compared with it. */
function printsOf(job: string, { registry, reduce }: RuleContext): PrintFigure[][] {
  const trials = trialIndex(registry).byJob.get(job) ?? [];
  return trials.flatMap((trial) => {
    const figures = figuresOf(trial, { registry, reduce });
    return figures.length === 0 ? [] : [figures];
  });
}

function figuresOf(
  { id, data }: Profile<'trial'>,
  { registry, reduce }: Pick<RuleContext, 'registry' | 'reduce'>,
): PrintFigure[] {
  const reduced = reduce(id);
  if (!reduced.ok) return [];
  const models = [
    { quantity: 'printTime', modelled: (job: Job) => modelledPrintTime(registry, data, job) },
    { quantity: 'printMass', modelled: (job: Job) => modelledPrintMass(registry, data, job) },
  ] as const;
  return models.flatMap(({ quantity, modelled }) => {
    const printed = resultOf(reduced.value, quantity)?.value;
    return printed === undefined ? [] : [{ printed, modelled }];
  });
}

/** How far the figure is off that is off most, as a share of what was printed. */
function worstOf(figures: readonly PrintFigure[], job: Job): number {
  const shares = figures.flatMap(({ printed, modelled }) => {
    const given = modelled(job);
    return given === null ? [] : [Math.abs(given / printed - 1)];
  });
  return Math.max(0, ...shares);
}

function withLength(job: Job, feature: JobFeature, pathLength: number): Job {
  const path = job.features[feature];
  return path === undefined
    ? job
    : { ...job, features: { ...job.features, [feature]: { ...path, pathLength } } };
}
