import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { BenchRun } from '../../../src/bench/facts/fact.ts';
import { methodNames } from '../../../src/bench/method-facts.ts';
import { methodOf } from '../../../src/bench/methods.ts';
import { reduceTrial } from '../../../src/bench/reduce-trial.ts';
import { readBenchSheet } from '../../../src/bench/sheet/bench-sheet.ts';
import { loadFolders } from '../../../src/host/load-registry.ts';
import { sampleRegistry } from '../../sample-registry.ts';

const cases = methodNames.flatMap((name) =>
  Object.keys(methodOf(name).facts)
    .filter((fact) => /Resolution$|^acceptedGrade$|^reelMass$|Accuracy$/.test(fact))
    .map((fact) => [name, fact] as const),
);

const tooLarge = [
  ['motionTiming', 'clockResolution', 1e9],
  ['motionTiming', 'clockAccuracy', 1e9],
  ['soundLevel', 'roomCorrection', 1e9],
] as const;

describe.each([...cases.map(([name, fact]) => [name, fact, -1] as const), ...tooLarge])('%s', (...given) => {
  const [name, fact, value] = given;
  test(`refuses ${fact} as ${value}, by the code and the words`, () => {
    const method = methodOf(name);
    const page = readFileSync(new URL(`../../../docs/bench/${name}.md`, import.meta.url), 'utf8');
    const sheet = readBenchSheet(/```csv \S+\n([\s\S]*?)```/.exec(page)?.[1] ?? '', method);
    if (!sheet.ok) throw new Error(JSON.stringify(sheet.error));
    const run: BenchRun = {
      filamentDiameter: 1.75,
      density: 1.24e-3,
      residualMoisture: 0.0005,
      [fact]: value,
    };
    const reduced = method.reduce(sheet.value, run);
    expect(reduced.ok ? [] : reduced.error.map(({ code }) => code)).toContain('badSetting');
    expect(reduced.ok ? '' : reduced.error[0]?.message).toMatch(value < 0 ? /-1/ : /1000000000/);
  });
});

test('a trial whose fact is cut out as unreadable is not reduced with the usual one in its place', () => {
  const sample = sampleRegistry();
  sample.edit('trials/2026/wren-daisy-pla-230.yaml', 'resolution: 0.001 g', 'resolution: 0.001 mm');
  const { registry } = loadFolders(['profiles'], sample.cwd);
  expect(reduceTrial(registry, 'wren-daisy-pla-230')).toMatchObject({
    ok: false,
    error: [{ code: 'badSetting', message: expect.stringContaining('`scale: {resolution}` cannot be read') }],
  });
});
