import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { secondsOfPauses } from '../src/bench/reference-print/job-pauses.ts';
import { type JobFeature, jobPlan } from '../src/bench/reference-print/job-plan.ts';
import { figuresOfPairing } from '../src/decisions/compare/figures-of-pairing.ts';
import { jobFilament } from '../src/decisions/compare/job-filament.ts';
import { type JobSpeed, jobSpeeds } from '../src/decisions/compare/job-speeds.ts';
import { loadFolders } from '../src/host/load-registry.ts';
import { findPairing, type Pairing } from '../src/knowledge/pairing.ts';
import { randomSource } from '../src/statistics/random.ts';
import { simulatePrint } from './simulate-print.ts';
import { simulatedPlan } from './simulated-plan.ts';

/** An invented reference print of the demo registry. */
interface DemoPrint {
  readonly trial: string;
  readonly date: string;
  readonly machine: string;
  readonly nozzle: string;
  readonly job: string;
  readonly nozzleTemperature: number;
}

const demoPrints: readonly DemoPrint[] = [
  print('lantern-mask-rack', '2026-09-08', 'brackwater/lantern', 'hs-0.4', 'mask-rack', 230),
  print('lantern-prop-bottle', '2026-09-09', 'brackwater/lantern', 'hs-0.6', 'prop-bottle', 230),
  print('skiff-mask-rack', '2026-09-10', 'ferrywright/skiff', 'br-0.4', 'mask-rack', 220),
  print('steeple-mask-rack', '2026-09-11', 'tollwick/steeple', 'hs-0.4', 'mask-rack', 230),
];

const filament = 'ashgrove/stagecraft-pla';
/** What the shop's estimates of changes of layer and pauses on travel moves miss. */
const unseen = { layerChange: 1.2, pause: 1.25 };
/** Relative spread from one print to the next. */
const repeatability = 0.003;

function print(
  trial: string,
  date: string,
  machine: string,
  nozzle: string,
  job: string,
  nozzleTemperature: number,
): DemoPrint {
  return { trial, date, machine, nozzle, job, nozzleTemperature };
}

const profiles = fileURLToPath(new URL('../profiles', import.meta.url));
const { registry } = loadFolders([profiles]);

for (const demo of demoPrints) {
  const pairing = findPairing(registry, { ...demo, filament, policy: 'workshop' });
  if (!pairing.ok) throw new Error(pairing.error.message);
  writeFileSync(`${profiles}/trials/2026/${demo.trial}.yaml`, trialText(demo, withoutCaps(pairing.value)));
}

/** The time model is put to the test where speeds are as high as they go. */
function withoutCaps(pairing: Pairing): Pairing {
  const { caps: _, ...data } = pairing.policy.data;
  return { ...pairing, policy: { ...pairing.policy, data } };
}

function trialText(demo: DemoPrint, pairing: Pairing): string {
  const job = registry.job.get(demo.job)?.data;
  if (job === undefined) throw new Error(`no job ${demo.job}`);
  const figures = figuresOfPairing(registry, pairing);
  if (!figures.ok) throw new Error(figures.error.message);
  const speeds = jobSpeeds(figures.value, job);
  if (!speeds.ok) throw new Error(speeds.error.message);
  const plan = simulatedPlan(jobPlan(job, speeds.value, secondsOfPauses(figures.value.pauses)));
  const real = {
    ...plan,
    layerChange: unseen.layerChange * plan.layerChange,
    paths: plan.paths.map((path) => ({ ...path, pause: unseen.pause * path.pause })),
  };
  const mass = jobFilament(figures.value, job).mass?.value ?? 0;
  const random = randomSource(demo.trial);
  // The part is the same each time it is printed.
  const simulated = simulatePrint(real, demo.job);
  const rows = [1, 2].map(() => {
    const time = simulated * (1 + repeatability * random.normal());
    const weighed = mass * 1.01 * (1 + 0.005 * random.normal());
    return `    - [${Math.round(time)}, ${weighed.toFixed(1)}]`;
  });
  return `# yaml-language-server: $schema=../../../schema/trial.schema.json
kind: trial
id: ${demo.trial}
method: referencePrint
origin: simulated
date: '${demo.date}'
operator: Bench team, Lantern Street Props
machine: ${demo.machine}
nozzle: ${demo.nozzle}
filament: ${filament}
job: ${demo.job}
settings:
${[...speeds.value].map(settingText).join('\n')}
firmware: ${pairing.machine.data.firmware}
conditions:
  nozzleTemperature: ${demo.nozzleTemperature} Cel
  ambientTemperature: 21 Cel
scale: {resolution: 0.1 g}
observations:
  columns: {printTime: s, mass: g}
  rows:
${rows.join('\n')}
notice: >-
  Simulated: the head moved by small steps of time over stretches and corners that differ from one to the next
  (scripts/demo-prints.ts); no machine has printed it. Settings of the policy "workshop" without its caps.
`;
}

function settingText([feature, { speed, acceleration }]: readonly [JobFeature, JobSpeed]): string {
  return `  ${feature}: {speed: ${speed} mm/s, acceleration: ${acceleration} mm/s2}`;
}
