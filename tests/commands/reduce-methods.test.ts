import { describe, expect, it } from 'vitest';
import { checked, runCommand } from '../run-command.ts';
import { type SampleRegistry, sampleRegistry } from '../sample-registry.ts';

const daisy = 'filaments/oakhollow/daisy-pla.yaml';
const wren = 'machines/plumstead/wren.yaml';

const layerTimes = `# yaml-language-server: $schema=../../../../../schema/trial.schema.json
kind: trial
id: wren-daisy-layers
method: layerTime
origin: simulated
date: '2026-02-20'
machine: plumstead/wren
nozzle: hs-0.6
filament: oakhollow/daisy-pla
conditions: {nozzleTemperature: 215 Cel, fan: 100 %}
observations:
  columns: {layerTime: s, grade: '{count}'}
  rows:
    - [4, 1]
    - [4, 2]
    - [5, 2]
    - [5, 2]
    - [6, 3]
    - [6, 4]
    - [7, 4]
    - [7, 4]
    - [8, 5]
    - [8, 5]
notice: Simulated for the tests of this project.
`;

const sound = `# yaml-language-server: $schema=../../../../../schema/trial.schema.json
kind: trial
id: wren-sound
method: soundLevel
origin: simulated
date: '2026-02-21'
machine: plumstead/wren
filament: oakhollow/daisy-pla
conditions: {fan: 100 %}
soundMeter: {class: class2}
backgroundLevel: 33 dB[SPL]{A}
roomCorrection: 0 dB[SPL]{A}
observations:
  columns: {distance: m, soundLevel: 'dB[SPL]{A}'}
  rows: [[1, 51.2], [1, 52.0], [1, 51.6], [1, 51.1]]
notice: Simulated for the tests of this project.
`;

function withTrials(): SampleRegistry {
  const registry = sampleRegistry();
  registry.write('trials/2026/wren-daisy-layers.yaml', layerTimes);
  registry.write('trials/2026/wren-sound.yaml', sound);
  return registry;
}

const reduce = (registry: SampleRegistry, ...args: string[]) => runCommand(registry.cwd, ['reduce', ...args]);

async function findings(registry: SampleRegistry) {
  return (await checked(registry.cwd)).findings.map(({ rule, message }) => [rule, message]);
}

describe('a trial of another method than the flow ladder', () => {
  it('is reduced by its own method, and check is content with it', async () => {
    const registry = withTrials();
    const { out, status } = await reduce(registry, 'wren-daisy-layers');
    expect(status).toBe(0);
    expect(out).toMatch(/^Shortest layer time [56][.\d]* s, 95 % interval /);
    expect(out).toContain('\nwren-daisy-layers: layer time\n');
    expect(await findings(registry)).toEqual([]);
  });

  it('has its limit adopted on the safe side, rounded up where longer is safe', async () => {
    const registry = withTrials();
    const { out } = await reduce(registry, 'wren-daisy-layers', '--format', 'json');
    const exact = JSON.parse(out).results[0].value.value as number;

    await reduce(registry, 'wren-daisy-layers', '--adopt');

    const [, stated = ''] = /- value: ([\d.]+) s\n {4}interval/.exec(registry.read(daisy)) ?? [];
    expect(Number(stated)).toBeGreaterThanOrEqual(exact);
    expect(Number(stated)).toBeLessThan(exact * 1.01);
    expect(registry.read(daisy)).toMatch(
      /evidence: wren-daisy-layers\n {4}readings: '?[0-9a-f]{16}'?\n {4}at: \{machine: plumstead\/wren\}\n/,
    );
    expect(await findings(registry)).toEqual([]);
  });

  it('is adopted once: a second time changes nothing', async () => {
    const registry = withTrials();
    await reduce(registry, 'wren-daisy-layers', '--adopt');
    const once = registry.read(daisy);
    const { err } = await reduce(registry, 'wren-daisy-layers', '--adopt');
    expect(err).toBe(`profiles/${daisy} states this limit already.\n`);
    expect(registry.read(daisy)).toBe(once);
  });

  it('may be stated with more than it gives where that is safe, and never with less', async () => {
    const registry = withTrials();
    const statement = (value: string) =>
      `shortestLayerTime:\n  - {value: ${value}, basis: measured, evidence: wren-daisy-layers, at: {machine: plumstead/wren}}`;
    registry.edit(daisy, 'shortestLayerTime:', statement('9 s'));
    expect((await findings(registry)).map(([rule]) => rule)).toEqual(['evidence/not-adopted']);
    registry.edit(daisy, statement('9 s'), statement('4 s'));
    expect(await findings(registry)).toEqual([
      [
        'evidence/unsupported',
        expect.stringContaining('The limit 4 s is below what the trial "wren-daisy-layers"'),
      ],
    ]);
  });

  it('writes the sound of a machine into the profile of the machine', async () => {
    const registry = withTrials();
    const { err } = await reduce(registry, 'wren-sound', '--adopt');
    expect(err).toBe(`Wrote the limit into profiles/${wren}.\n`);
    expect(registry.read(wren)).toMatch(/soundLevel:\n[\s\S]*value: 51\.\d dB\[SPL\]\{A\}\n {4}interval: /);
    expect(await findings(registry)).toEqual([]);
  });

  it('backs no limit that it says nothing of', async () => {
    const registry = withTrials();
    registry.edit(daisy, 'evidence: wren-daisy-pla-215', 'evidence: wren-daisy-layers');
    registry.edit(daisy, "date: '2026-02-10'", "date: '2026-02-20'");
    registry.edit(daisy, '    readings: 291c926ae7c98d98\n', '');
    expect(await findings(registry)).toEqual([
      [
        'evidence/unsupported',
        'The trial "wren-daisy-layers" is a layerTime, which does not measure meltFlow',
      ],
    ]);
  });

  it.each([
    ['nozzle: hs-0.6\n', 'a layerTime needs `nozzle`'],
    ['machine: plumstead/wren\n', 'a layerTime needs `machine`'],
    ['nozzleTemperature: 215 Cel, ', 'a layerTime needs `nozzleTemperature`'],
  ])('without %j says what its method needs', async (key, message) => {
    const registry = withTrials();
    registry.edit('trials/2026/wren-daisy-layers.yaml', key, '');
    expect(await findings(registry)).toContainEqual([
      'evidence/unreducible',
      expect.stringContaining(message),
    ]);
  });

  it('that no profile states cannot be adopted', async () => {
    const registry = withTrials();
    const print = layerTimes
      .replaceAll('wren-daisy-layers', 'wren-daisy-print')
      .replace('method: layerTime', 'method: referencePrint')
      .replace('nozzle: hs-0.6', 'nozzle: hs-0.6\njob: hook')
      .replace(
        /observations:[\s\S]*notice/,
        'observations:\n  columns: {printTime: min}\n  rows: [[61.2], [61.5]]\nnotice',
      );
    registry.write('trials/2026/wren-daisy-print.yaml', print);
    const { status, err } = await reduce(registry, 'wren-daisy-print', '--adopt');
    expect(status).toBe(2);
    expect(err).toContain('No profile states what a referencePrint finds');
  });
});
