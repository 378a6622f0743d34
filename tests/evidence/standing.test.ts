import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { reduceTrial } from '../../src/bench/reduce-trial.ts';
import { reducingOnce } from '../../src/bench/reducing-once.ts';
import { type EvidenceStanding, standingOf, trialStanding } from '../../src/evidence/standing.ts';
import { standingText } from '../../src/evidence/standing-text.ts';
import { loadFolders } from '../../src/host/load-registry.ts';
import { toPointer } from '../../src/registry/shape.ts';
import { statementsOf } from '../../src/registry/statement.ts';
import { rules } from '../../src/rules/engine/rules.ts';
import { testDay } from '../run-command.ts';
import { type SampleRegistry, sampleRegistry } from '../sample-registry.ts';

const daisy = 'filaments/oakhollow/daisy-pla.yaml';
const wren = 'machines/plumstead/wren.yaml';
const trial = 'trials/2026/wren-daisy-pla-230.yaml';

const sample = loadFolders([fileURLToPath(new URL('../fixtures/registry', import.meta.url))]).registry;

/** What the readings of the sample trials give, which nothing that is edited here changes. */
const reduce = reducingOnce(sample, reduceTrial);

/** How the statement at a place of Daisy PLA stands in a registry. */
function standing({ cwd }: SampleRegistry, pointer = '/meltFlow/1', today = testDay): EvidenceStanding {
  const { registry } = loadFolders(['profiles'], cwd);
  const filament = registry.filament.get('oakhollow/daisy-pla')!;
  const placed = [...statementsOf(filament)].find(({ path }) => toPointer(path) === pointer)!;
  return standingOf(filament, placed, { registry, today, reduce });
}

function acknowledge(registry: SampleRegistry, file: string, entry: string): void {
  registry.write(file, `${registry.read(file)}acknowledged:\n  - {${entry}}\n`);
}

function edited(file: string, from: string, to: string): SampleRegistry {
  const registry = sampleRegistry();
  registry.edit(file, from, to);
  return registry;
}

const newFirmware = () => edited(wren, 'firmware: 1.3.0', 'firmware: 4.0.0');
const staleEntry =
  "rule: evidence/stale-firmware, at: /firmware, found: 1.3.0, reason: Only the screen, until: '2026-12-31'";

describe('a statement', () => {
  it('is supported where nothing speaks against it', () => {
    expect(standing(sampleRegistry())).toEqual({ faults: [], isSimulated: true });
  });

  it('that is not measured has no fault', () => {
    expect(standing(sampleRegistry(), '/density/0')).toEqual({ faults: [], isSimulated: false });
  });

  it.each([
    {
      what: 'above what its readings give',
      code: 'unsupported',
      rule: 'evidence/unsupported',
      registry: () => edited(daisy, 'value: 26 mm3/s', 'value: 46 mm3/s'),
      message: /^The limit 46 mm3\/s is above what the trial "wren-daisy-pla-230" supports/,
    },
    {
      what: 'whose interval is not the one of its readings',
      code: 'unsupported',
      rule: 'evidence/unsupported',
      registry: () =>
        edited(
          daisy,
          'evidence: wren-daisy-pla-230',
          'evidence: wren-daisy-pla-230\n    interval: 20..25 mm3/s',
        ),
      message: /^The interval 20\.\.25 mm3\/s is not the one that the readings of the trial/,
    },
    {
      what: 'for another temperature than that of its trial',
      code: 'otherConditions',
      rule: 'evidence/other-conditions',
      registry: () => edited(daisy, 'nozzleTemperature: 230 Cel', 'nozzleTemperature: 220 Cel'),
      message: /^The statement holds for nozzleTemperature 220 Cel, but the trial/,
    },
    {
      what: 'without its trial',
      code: 'missing',
      rule: 'references/dangling',
      registry: () => edited(daisy, 'evidence: wren-daisy-pla-230', 'evidence: wren-daisy-pla-299'),
      message:
        'oakhollow/daisy-pla calls a value measured by the trial "wren-daisy-pla-299", which is not in the registry',
    },
    {
      what: 'that names no trial',
      code: 'missing',
      rule: 'provenance/missing',
      registry: () => edited(daisy, '    evidence: wren-daisy-pla-230\n', ''),
      message: 'oakhollow/daisy-pla calls a value measured, but names no trial',
    },
    {
      what: 'that lacks a condition of its trial',
      code: 'otherConditions',
      rule: 'evidence/missing-condition',
      registry: () => edited(daisy, 'nozzle: hs-0.6, nozzleTemperature: 230 Cel', 'nozzle: hs-0.6'),
      message: /^The statement does not say for which nozzleTemperature it holds/,
    },
    {
      what: 'that was adopted from other readings',
      code: 'unsupported',
      rule: 'evidence/readings-changed',
      registry: () => edited(daisy, 'readings: 6cc971210344c1a6', "readings: '0123456789abcdef'"),
      message:
        'oakhollow/daisy-pla has a value that was adopted from other readings than the trial "wren-daisy-pla-230" has now',
    },
    {
      what: 'whose trial was run with old firmware',
      code: 'stale',
      rule: 'evidence/stale-firmware',
      registry: newFirmware,
      message: 'The trial was run with firmware 1.3.0, and plumstead/wren has 4.0.0 now',
    },
  ])('$what has the fault $code', ({ code, rule, registry, message }) => {
    const { faults } = standing(registry());
    expect(faults).toEqual([{ code, rule, message: expect.stringMatching(message), acknowledged: null }]);
    expect(rules.map((each) => each.code)).toContain(rule);
  });

  it('that is not measured may name readings that have changed', () => {
    const registry = edited(daisy, 'readings: 6cc971210344c1a6', "readings: '0123456789abcdef'");
    const place = registry.read(daisy).replace(/(value: 26 [\s\S]*?basis: )measured/, '$1derived');
    registry.write(daisy, place);
    expect(standing(registry).faults).toEqual([]);
  });

  it('of another basis is judged by its own interval', () => {
    const registry = edited(
      daisy,
      '{value: 5 s, basis: assumed',
      '{value: 5 s, interval: 7..9 s, basis: assumed',
    );
    expect(standing(registry, '/shortestLayerTime/0').faults).toMatchObject([
      { code: 'unsupported', rule: 'evidence/value-above-interval' },
    ]);
  });

  it('asks for its own trial only', () => {
    const { cwd } = sampleRegistry();
    const { registry } = loadFolders(['profiles'], cwd);
    const filament = registry.filament.get('oakhollow/daisy-pla')!;
    const asked: string[] = [];
    const counting = (id: string) => {
      asked.push(id);
      return reduce(id);
    };
    for (const placed of statementsOf(filament)) {
      const before = asked.length;
      standingOf(filament, placed, { registry, today: testDay, reduce: counting });
      const { evidence } = placed.statement;
      expect(asked.slice(before)).toEqual(evidence === undefined ? [] : [evidence]);
    }
  });
});

describe('a fault is acknowledged', () => {
  it('by the trial that was run with old firmware', () => {
    const registry = newFirmware();
    acknowledge(registry, trial, staleEntry);
    const [fault] = standing(registry).faults;
    expect(fault).toMatchObject({
      code: 'stale',
      acknowledged: { reason: 'Only the screen', until: '2026-12-31' },
    });
    expect(standing(registry, '/meltFlow/0').faults).toMatchObject([{ code: 'stale', acknowledged: null }]);
  });

  it('up to its last day', () => {
    const registry = newFirmware();
    acknowledge(registry, trial, staleEntry);
    const on = (today: string) => standing(registry, '/meltFlow/1', today).faults[0]?.acknowledged;
    expect(on('2026-12-31')).not.toBeNull();
    expect(on('2027-01-01')).toBeNull();
  });

  it('by the profile that states the limit under other conditions', () => {
    const registry = edited(daisy, 'nozzleTemperature: 230 Cel', 'nozzleTemperature: 228 Cel');
    acknowledge(
      registry,
      daisy,
      "rule: evidence/other-conditions, at: /meltFlow/1, found: 228 Cel, reason: Two kelvin, until: '2026-12-31'",
    );
    expect(standing(registry).faults).toMatchObject([{ acknowledged: { reason: 'Two kelvin' } }]);
  });

  it('by the addition that states it, at its place there', () => {
    const registry = sampleRegistry();
    registry.write('additions/daisy-pla-228.yaml', addition);
    expect(standing(registry, '/meltFlow/2').faults).toMatchObject([
      { code: 'otherConditions', acknowledged: { reason: 'Two kelvin' } },
    ]);
  });

  it('at the place that is named, of two where the same is found', () => {
    const registry = edited(daisy, 'nozzleTemperature: 230 Cel', 'nozzleTemperature: 228 Cel');
    registry.edit(daisy, 'nozzleTemperature: 215 Cel', 'nozzleTemperature: 228 Cel');
    const entry = 'rule: evidence/other-conditions, at: /meltFlow/1, found: 228 Cel';
    acknowledge(registry, daisy, `${entry}, reason: Two kelvin, until: '2026-12-31'`);
    const acceptedAt = (pointer: string) =>
      standing(registry, pointer).faults.map((each) => each.acknowledged);
    expect(acceptedAt('/meltFlow/1')).toEqual([{ reason: 'Two kelvin', until: '2026-12-31' }]);
    expect(acceptedAt('/meltFlow/0')).toEqual([null]);
  });

  it('at its place in the addition, of two where the same is found, one of them in the filament', () => {
    const registry = edited(daisy, 'nozzleTemperature: 230 Cel', 'nozzleTemperature: 228 Cel');
    registry.write('additions/daisy-pla-228.yaml', addition);
    const accepted = (pointer: string) => standing(registry, pointer).faults.map((each) => each.acknowledged);
    expect(accepted('/meltFlow/2')).toEqual([{ reason: 'Two kelvin', until: '2026-12-31' }]);
    expect(accepted('/meltFlow/1')).toEqual([null]);
  });

  it('never where another value was accepted', () => {
    const registry = newFirmware();
    acknowledge(registry, trial, staleEntry.replace('found: 1.3.0', 'found: 1.2.0'));
    expect(standing(registry).faults).toMatchObject([{ code: 'stale', acknowledged: null }]);
  });

  it('never where its own readings refute the limit', () => {
    const registry = edited(daisy, 'value: 26 mm3/s', 'value: 46 mm3/s');
    acknowledge(
      registry,
      daisy,
      "rule: evidence/unsupported, at: /meltFlow/1, found: 46 mm3/s, reason: I know better, until: '2026-12-31'",
    );
    expect(standing(registry).faults).toMatchObject([{ code: 'unsupported', acknowledged: null }]);
  });
});

const addition = `kind: addition
id: daisy-pla-228
version: 1.0.0
filament: oakhollow/daisy-pla
meltFlow:
  - value: 25 mm3/s
    basis: measured
    evidence: wren-daisy-pla-230
    at: {machine: plumstead/wren, nozzle: hs-0.6, nozzleTemperature: 228 Cel}
    date: '2026-02-11'
acknowledged:
  - {rule: evidence/other-conditions, at: /meltFlow/0, found: 228 Cel, reason: Two kelvin, until: '2026-12-31'}
`;

it('whatever a trial gives is as old as the trial', () => {
  const { cwd } = newFirmware();
  const { registry } = loadFolders(['profiles'], cwd);
  const context = { registry, today: testDay, reduce: () => expect.fail('nothing is to be reduced') };
  expect(trialStanding(registry.trial.get('wren-daisy-pla-230')!, context)).toMatchObject({
    faults: [{ code: 'stale', rule: 'evidence/stale-firmware' }],
    isSimulated: true,
  });
});

describe('a fault in words', () => {
  const fault = { code: 'stale', rule: 'evidence/stale-firmware', message: '', acknowledged: null } as const;

  it('says what it makes of a value', () => {
    expect(standingText(fault)).toBe('rests on old evidence');
    for (const code of ['missing', 'unsupported', 'otherConditions'] as const)
      expect(standingText({ ...fault, code })).toBe('is not supported by its evidence');
  });

  it('says who has accepted it, until when and why, on one line', () => {
    const acknowledged = {
      reason: 'Only\nthe \u202Escreen\n',
      until: '2026-12-31',
    };
    expect(standingText({ ...fault, acknowledged })).toBe(
      'rests on old evidence, acknowledged until 2026-12-31 (Only the \\u{202e}screen)',
    );
  });
});
