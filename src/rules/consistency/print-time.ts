import { resultOf } from '../../bench/methods.ts';
import type { JobFeature } from '../../bench/reference-print/job-plan.ts';
import { modelledPrintTime } from '../../bench/reference-print/modelled-print.ts';
import type { Trial } from '../../registry/generated/documents.ts';
import type { Blame, Hit } from '../../registry/hit.ts';
import { shown } from '../../units/wording.ts';
import { alike, prints } from '../engine/examples.ts';
import { meantFigure } from '../engine/meant-figure.ts';
import { explainedPart, printShares } from '../engine/print-shares.ts';
import type { ProfileRule, RuleContext } from '../engine/rule.ts';

const acceptedShare = printShares.time;

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  reach: 'neighbours',
  kinds: ['trial'],
  severity: 'warning',
  statement: `A reference print takes the time calculated from its job and its settings, within ${100 * acceptedShare} %.`,
  rationale:
    'If not, the machine does not do what it is set to, or the job, the settings or the stopwatch reading are wrong, and `compare` would promise savings that are not there.',
  source:
    'OpenStax, University Physics vol. 1, section 3.4: motion with constant acceleration; the accepted share is common practice, no source.',
  formula: `|t_model/t_print - 1| <= ${acceptedShare}, t_model from paths, mean segments, corners, speeds and accelerations, changes of layer and shortest layer time`,
  example: alike(
    'trial',
    { bad: '22', good: '16' },
    (minutes) => prints(`${minutes}.1, 9.6`, `${minutes}.2, 9.7`),
    { copied: true },
  ),
  *check(profile, { registry, reduce }) {
    const modelled = modelledPrintTime(registry, profile.data);
    if (modelled === null) return;
    const reduced = reduce(profile.id);
    const printed = reduced.ok ? resultOf(reduced.value, 'printTime')?.value : undefined;
    if (printed === undefined || Math.abs(modelled / printed - 1) <= acceptedShare) return;
    const off = { trial: profile.data, printed, modelled };
    yield {
      ...(slippedSetting(off, registry) ?? allReadings(off)),
      blames: [{ path: ['observations'] }, jobPaths(profile.data)],
    };
  },
};

/** A reference print that takes another time than its job and its settings give, both in s. */
interface OffPrint {
  readonly trial: Trial;
  readonly printed: number;
  readonly modelled: number;
}

function jobPaths({ job = '' }: Trial): Blame {
  return { of: { kind: 'job', id: job }, path: ['features'] };
}

const explainedShare = explainedPart * acceptedShare;

/** The one setting that explains all with a digit or a unit put right. */
function slippedSetting(
  { trial, printed, modelled }: OffPrint,
  registry: RuleContext['registry'],
): Hit | null {
  const { settings = {} } = trial;
  const features = Object.keys(settings) as JobFeature[]; // Object.keys widens to string
  const speeds = new Map(features.map((feature) => [feature, settings[feature]?.speed ?? 0]));
  const slip = meantFigure(
    speeds,
    (feature, speed) => {
      const changed = { ...settings, [feature]: { ...settings[feature], speed } };
      const time = modelledPrintTime(registry, { ...trial, settings: changed });
      return time === null ? null : Math.abs(time / printed - 1);
    },
    explainedShare,
  );
  if (slip === null) return null;
  const [written, meant] = [speeds.get(slip.key) ?? 0, slip.meant].map((speed) => shown(speed, 'speed'));
  return {
    path: ['settings', slip.key, 'speed'],
    part: 'value',
    message: `The print took ${shown(printed, 'time')}, and its job with ${written} for ${slip.key} gives ${shown(modelled, 'time')}; ${meant} would fit`,
    found: written ?? '',
    allowed: `about ${meant}`,
    help: `Check the digits and the unit of the speed for ${slip.key}; if it is right, check the readings and the paths of the job.`,
  };
}

function allReadings({ printed, modelled }: OffPrint): Hit {
  const share = `${Math.round(100 * (modelled / printed - 1))} %`;
  return {
    path: ['observations'],
    part: 'key',
    message: `The print took ${shown(printed, 'time')}, and its job with these settings gives ${shown(modelled, 'time')}, ${share} off`,
    found: shown(printed, 'time'),
    allowed: `within ${100 * acceptedShare} % of ${shown(modelled, 'time')}`,
    help: 'Check the readings and their unit, the settings, and the paths of the job; state `layerChangeTime` and `travelPause` of the machine if they are missing; otherwise the machine does not reach the acceleration that it is set to.',
  };
}
