import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { MethodName } from '../../src/bench/method-facts.ts';
import { checked, runCommand, unwrapped } from '../run-command.ts';
import { type SampleRegistry, sampleRegistry } from '../sample-registry.ts';

interface SimulatedRun {
  readonly id: string;
  /** Readings for the settings of a row. */
  readonly read: (given: number, row: number, all: readonly number[]) => readonly number[];
  /** Quantity that the reduction gives, and the range that it must lie in. */
  readonly gives: readonly [quantity: string, low: number, high: number];
}

const sway = (row: number) => Math.sin(2.4 * row);

/** Benches with a known truth, one a method; `plan.test.ts` has the flow ladder. */
const runs: Readonly<Record<Exclude<MethodName, 'flowLadder'>, SimulatedRun>> = {
  diameterSurvey: {
    id: 'daisy-pla-diameter',
    read: (_, row) =>
      [1.752 + 0.01 * sway(row), 1.748 - 0.008 * sway(row + 1)].map((mm) => Number(mm.toFixed(2))),
    gives: ['meanDiameter', 1.74, 1.76],
  },
  temperatureSweep: {
    id: 'wren-daisy-pla-sweep',
    read: (temperature) => [Math.round(5 - Math.max(0, Math.abs(temperature - 217) - 5) / 6)],
    gives: ['highestNozzleTemperature', 222, 233],
  },
  contourLadder: {
    id: 'wren-daisy-pla-contour',
    read: (speed) => [speed <= 130 ? 5 : speed <= 160 ? 4 : speed <= 220 ? 3 : 2],
    gives: ['contourSpeed', 130, 200],
  },
  layerTime: {
    id: 'wren-daisy-pla-layertime',
    read: (time) => [time < 3 ? 2 : time < 4 ? 3 : time < 6 ? 4 : 5],
    gives: ['shortestLayerTime', 2.5, 5],
  },
  dryingCurve: {
    id: 'daisy-pla-drying',
    read: (hours) => [Number((1000 * (1 + 0.004 * Math.exp(-hours / 1.2))).toFixed(2))],
    gives: ['dryMass', 999, 1001],
  },
  soundLevel: {
    id: 'wren-daisy-pla-sound',
    read: (distance, row) => [Number((52 - 20 * Math.log10(distance) + 0.4 * sway(row)).toFixed(1)), 35],
    gives: ['soundLevel', 51, 53],
  },
  referencePrint: {
    id: 'wren-daisy-pla-hook',
    read: (_, row) => [62 + 0.3 * sway(row), 12 + 0.02 * sway(row)].map((value) => Number(value.toFixed(2))),
    gives: ['printTime', 61 * 60, 63 * 60],
  },
  settingLadder: {
    id: 'wren-daisy-pla-retraction-length',
    read: (length) => [length < 0.5 ? 1 : length < 0.8 ? 3 : length < 1.1 ? 4 : 5],
    gives: ['retractionLength', 0.5, 1.1],
  },
  setPointCheck: {
    id: 'wren-daisy-pla-nozzle-temperature',
    read: (set, _, [, minutes = 0]) => [Number((set - 5 - 60 * Math.exp(-minutes)).toFixed(1))],
    gives: ['nozzleTemperatureOffset', -5.5, -4.5],
  },
  motionTiming: {
    id: 'wren-daisy-pla-motion',
    read: (speed, row, [, length = 0, moves = 0]) => {
      const each =
        0.012 + (length < speed ** 2 / 3700 ? 2 * Math.sqrt(length / 3700) : length / speed + speed / 3700);
      return [Number((moves * each + 0.08 * sway(row)).toFixed(2)), 0];
    },
    gives: ['reachedAcceleration', 3600, 3800],
  },
};

function plan(registry: SampleRegistry, method: string, ...args: string[]) {
  return runCommand(registry.cwd, [
    ...['plan', 'plumstead/wren', 'oakhollow/daisy-pla', '--method', method],
    ...args,
  ]);
}

const folder = 'profiles/trials/2026';

function fill(registry: SampleRegistry, { id, read }: SimulatedRun): void {
  const path = `trials/2026/${id}.csv`;
  const [header = '', ...rows] = registry.read(path).trimEnd().split('\r\n');
  const filled = rows.map((row, index) => {
    const cells = row.split(',');
    const given = cells.filter((cell) => cell !== '').map(Number);
    return [...given, ...read(given[0] ?? 0, index, given)].join(',');
  });
  registry.write(path, [header, ...filled, ''].join('\r\n'));
}

describe.each(Object.entries(runs))('the plan of a %s', (method, run) => {
  it('is a sheet with its settings, how to run it, what to have at hand, and the cautions', async () => {
    const { status, out, err } = await plan(sampleRegistry(), method);
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(out).toMatch(/^(?:[A-Z][a-z ]+ .* in|In) \d+ rows, each read \w+\.\n\n/);
    expect(out).toMatch(/\nSettings\n {2}- .+/);
    expect(out).toMatch(/\nHow to\n {2}- .+/);
    expect(out).toMatch(/\nWhat you need\n {2}- .+/);
    expect(unwrapped(out)).toContain('never a licence to exceed a limit of the maker');
  });

  it('has a trial that lacks nothing but its readings, on a sheet or in its own rows', async () => {
    const onSheet = sampleRegistry();
    const { out } = await plan(onSheet, method, '--out', folder);
    expect(out.split('\n')[0]).toBe(join(folder, `${run.id}.yaml`));
    const inRows = sampleRegistry();
    inRows.write(`trials/2026/${run.id}.yaml`, (await plan(inRows, method, '--format', 'trial')).out);
    for (const registry of [onSheet, inRows]) {
      const { findings } = await checked(registry.cwd);
      // A row that the plan sets nothing of is empty until it holds its readings.
      const missing = ['evidence/unreducible', 'shape/size'];
      expect(findings.length).toBeGreaterThan(0);
      expect(findings.filter(({ rule }) => !missing.includes(rule))).toEqual([]);
    }
  });

  it('filled in is sound, and reduces to what the bench was made of', async () => {
    const registry = sampleRegistry();
    await plan(registry, method, '--out', folder);
    fill(registry, run);
    expect((await checked(registry.cwd)).findings).toEqual([]);
    const { status, out } = await runCommand(registry.cwd, ['reduce', run.id, '--format', 'json']);
    expect(status).toBe(0);
    const [quantity, low, high] = run.gives;
    const result = JSON.parse(out).results.find((each: { quantity: string }) => each.quantity === quantity);
    expect(result.censored).toBeNull();
    expect(result.value.value).toBeGreaterThanOrEqual(low);
    expect(result.value.value).toBeLessThanOrEqual(high);
  });
});

it('moves on an axis that is too short for the top speed are timed at one that they hold', async () => {
  const registry = sampleRegistry();
  registry.edit('machines/plumstead/wren.yaml', '8200 mm/s2', '800 mm/s2');
  const { status, out } = await plan(registry, 'motionTiming');
  expect(status).toBe(0);
  // 80 % of the axis of 228 mm is 182 mm; a quarter of it touches √(800 · 45.6) = 191 mm/s.
  expect(unwrapped(out)).toContain(
    'top speed 430 mm/s (claimed), for which the axis is too short at this acceleration: 190 mm/s instead, and half of it',
  );
  expect(unwrapped(out)).toContain('no longer than 182.4 mm');
});

it('a reference print needs a job', async () => {
  const registry = sampleRegistry();
  registry.remove('jobs/hook.yaml');
  const { status, err } = await plan(registry, 'referencePrint');
  expect(status).toBe(2);
  expect(err).toBe('The registry holds no job to print.\nAdd one under jobs/.\n');
});

it('a ladder of a setting is planned for the one that is named', async () => {
  const { status, out } = await plan(sampleRegistry(), 'settingLadder', '--setting', 'bridgeSpeed');
  expect(status).toBe(0);
  expect(out).toContain('Ladder of the bridge speed of oakhollow/daisy-pla');
  const unknown = await plan(sampleRegistry(), 'settingLadder', '--setting', 'bridgespeed');
  expect(unknown.status).toBe(2);
  expect(unknown.err).toContain('There is no setting "bridgespeed" that a ladder raises.');
});
