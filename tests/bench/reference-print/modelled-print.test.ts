import { describe, expect, it } from 'vitest';
import { type SimulatedPath, simulatePrint } from '../../../scripts/simulate-print.ts';
import { simulatedPlan } from '../../../scripts/simulated-plan.ts';
import { reduceTrial } from '../../../src/bench/reduce-trial.ts';
import { type JobFeature, jobPlan } from '../../../src/bench/reference-print/job-plan.ts';
import { modelledPrintTime } from '../../../src/bench/reference-print/modelled-print.ts';
import { printTime } from '../../../src/physics/print-time.ts';
import { demo } from '../../decisions/compare/demo-comparison.ts';

const prints = [...demo.trial.values()].filter(({ data }) => data.method === 'referencePrint');
const timeOf = (trial: string) => {
  const reduced = reduceTrial(demo, trial);
  return reduced.ok ? reduced.value.results.find(({ quantity }) => quantity === 'printTime')!.value : null;
};

describe('the reference prints of the demo registry', () => {
  it('are at least one for each of three machines', () => {
    expect(new Set(prints.map(({ data }) => data.machine)).size).toBeGreaterThanOrEqual(3);
    expect(prints.every(({ data }) => data.origin === 'simulated')).toBe(true);
  });

  it.each(prints.map(({ id }) => id))('%s took the modelled time within a twentieth', (id) => {
    const modelled = modelledPrintTime(demo, demo.trial.get(id)!.data)!;
    expect(Math.abs(modelled / timeOf(id)! - 1)).toBeLessThan(0.05);
  });
});

describe('the time model against a head moved by small steps of time', () => {
  // Stretches and corners of the simulation differ from one to the next; the model takes their typical ones.
  it.each([
    [2000, 120],
    [8000, 300],
    [18_500, 640],
  ])('is within a tenth at %d mm/s² and %d mm/s', (acceleration, speed) => {
    const job = demo.job.get('mask-rack')!.data;
    const features = Object.keys(job.features) as JobFeature[];
    const settings = new Map(features.map((feature) => [feature, { speed, acceleration }]));
    const plan = jobPlan(job, settings, { layerChange: 0.4, travel: 0.05, shortestLayerTime: 0 });
    const simulated = simulatePrint(simulatedPlan(plan), `${acceleration}`);
    expect(Math.abs(printTime(plan).total / simulated - 1)).toBeLessThan(0.1);
  });
});

describe('the simulated head', () => {
  const move: SimulatedPath = {
    length: 100,
    meanSegment: 1e9,
    speed: 200,
    acceleration: 1000,
    corner: null,
    pause: 0,
    firstLayer: 'as every other',
  };
  const print = (path: SimulatedPath) =>
    simulatePrint({ layers: 1, paths: [path], layerChange: 0, shortestLayerTime: 0 }, 'one move');

  it('keeps to v²/2a and L/v by itself', () => {
    // The simulation sizes its layer by chance: the same share of both moves.
    const long = print(move);
    const share = print({ ...move, speed: 1 }) / 100;
    expect(Math.abs(long / ((100 * share) / 200 + 200 / 1000) - 1)).toBeLessThan(0.01);
  });
});

describe('no time is modelled', () => {
  const [first] = prints;
  const given = first!.data;

  it.each([
    ['another method', { method: 'soundLevel' as const }],
    ['a job that the registry does not hold', { job: 'lost-job' }],
    ['a machine that the registry does not hold', { machine: 'brackwater/lost' }],
    [
      'settings that leave out a path of the job',
      { settings: { infill: { speed: 100, acceleration: 1000 } } },
    ],
    ['a speed of 0', { settings: { ...given.settings, infill: { speed: 0, acceleration: 1000 } } }],
  ])('for %s', (_, change) => {
    expect(modelledPrintTime(demo, { ...given, ...change })).toBeNull();
  });
});
