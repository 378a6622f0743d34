import { describe, expect, it } from 'vitest';
import type { ReducedResult } from '../../src/bench/reduction.ts';
import { isEarlier, sameRuns } from '../../src/evidence/same-runs.ts';
import { siblingLimit } from '../../src/evidence/sibling-limits.ts';
import { otherFirmware } from '../../src/evidence/trial-firmware.ts';
import { trialLimit } from '../../src/evidence/trial-limit.ts';
import { failure, success } from '../../src/result.ts';
import { cloverTrial, type Edit } from '../rules/edited-sample.ts';
import { ladder, sorrelTrial, sorrelWith } from '../rules/second-profiles.ts';
import { testDay } from '../run-command.ts';
import { contextWith, limitOf, registryAfter } from './edited-registry.ts';

const first = 'trials/2026/first.yaml';
const second = 'trials/2026/second.yaml';
const two = [ladder({ write: first, date: '2026-03-01' }), ladder({ write: second, date: '2026-03-02' })];

describe('an earlier run of the same', () => {
  /** Ids of the runs before the second of two ladders. */
  const earlierRuns = (...edits: readonly Edit[]) => {
    const registry = registryAfter([...two, ...edits]);
    return sameRuns(registry.trial.get('second')!, registry).map(({ id }) => id);
  };

  it('is one with the same machine, nozzle, filament, method and conditions', () => {
    expect(earlierRuns()).toEqual(['first']);
  });

  it.each([
    ['machine: plumstead/wren', 'machine: plumstead/owl'],
    ['nozzle: hs-0.6', 'nozzle: hs-0.4'],
    ['filament: oakhollow/daisy-pla', 'filament: oakhollow/clover-petg'],
    ['method: flowLadder', 'method: temperatureSweep'],
    ['acceptedDeficit: 5 %', 'acceptedDeficit: 6 %'],
    ['conditions:', 'batch: 26-0001\nconditions:'],
    ['conditions:', 'firmware: 1.3.0\nconditions:'],
    ['conditions:', 'job: hook\nconditions:'],
    ['conditions:', 'checkedPart: nozzle\nconditions:'],
    ['conditions:', 'settings: {infill: {speed: 344 mm/s, acceleration: 11600 mm/s2}}\nconditions:'],
    ['conditions:', 'acceptedStrength: 80 %\nconditions:'],
    ['conditions:', 'acceptedRipple: 0.02 mm\nconditions:'],
    ['conditions:', 'acceptedDefect: 1 mm\nconditions:'],
    ['conditions:', 'acceptedGrade: 2\nconditions:'],
    ['conditions:', 'residualMoisture: 10 %\nconditions:'],
  ])('is none where one says %s and the other %s', (from, to) => {
    const registry = registryAfter([...two, { in: first, from, to }]);
    expect(Object.keys(registry.trial.get('first')!.data)).toContain(/\w+(?=: .*(?:\n|$))/.exec(to)?.[0]);
    expect(sameRuns(registry.trial.get('second')!, registry)).toEqual([]);
  });

  it('may have been run in another room, or not say something', () => {
    const more = (text: string, of = first) => ({ in: of, from: '230 Cel}', to: `230 Cel, ${text}}` });
    for (const room of ['ambientTemperature: 18', 'relativeHumidity: 40 %', 'chamberTemperature: 35'])
      expect(
        earlierRuns(
          more(`${room.replace(/(?<=Temperature: \d+)/, ' Cel')}`),
          more('ambientTemperature: 25 Cel', second),
        ),
        room,
      ).toEqual(['first']);
    expect(earlierRuns({ in: first, from: '230 Cel}', to: '240 Cel}' })).toEqual([]);
    expect(earlierRuns(more('layerHeight: 0.2 mm'))).toEqual(['first']);
    expect(earlierRuns(more('layerHeight: 0.2 mm'), more('layerHeight: 0.3 mm', second))).toEqual([]);
  });

  it('comes before the other by date, and by id on one day', () => {
    const registry = registryAfter(two);
    const [one, other] = ['first', 'second'].map((id) => registry.trial.get(id)!);
    expect([isEarlier(one!, other!), isEarlier(other!, one!), isEarlier(one!, one!)]).toEqual([
      true,
      false,
      false,
    ]);
    expect(sameRuns(one!, registry)).toEqual([]);
    const sameDay = { in: first, from: '2026-03-01', to: '2026-03-02' };
    expect(earlierRuns(sameDay)).toEqual(['first']);
    expect(earlierRuns({ in: first, from: '2026-03-01', to: '2026-03-03' })).toEqual([]);
  });
});

describe('the flow limit of a trial', () => {
  const flow = limitOf('meltFlow', 'volumeFlow', 30, [29, 31]);
  const limit = (results: readonly ReducedResult[] | null, ...edits: readonly Edit[]) => {
    const registry = registryAfter([sorrelWith(''), ladder({ write: sorrelTrial }), ...edits]);
    return trialLimit(registry.trial.get('wren-sorrel-pla-230')!, contextWith(registry, results));
  };

  it('has the ends of its interval, or none where there are none', () => {
    expect(limit([flow])).toEqual({ value: 30, low: 29, high: 31 });
    expect(limit([limitOf('meltFlow', 'volumeFlow', 30, [null, null])])).toEqual({
      value: 30,
      low: 30,
      high: 30,
    });
  });

  it('is open upwards where the ladder ended before it, downwards where it began beyond', () => {
    expect(limit([{ ...flow, censored: 'above' }])).toEqual({ value: 30, low: 30, high: Infinity });
    expect(limit([{ ...flow, censored: 'below' }])).toEqual({ value: 30, low: 0, high: 30 });
  });

  it('is unknown where the readings tell none', () => {
    expect(limit(null)).toBeNull();
    expect(limit([])).toBeNull();
    expect(limit([flow], { in: sorrelTrial, from: 'flowLadder', to: 'layerTime' })).toBeNull();
  });
});

describe('the flow limits of similar trials', () => {
  const flows: Readonly<Record<string, number>> = { first: 20, second: 30, third: 60, clover: 90 };
  /** The middle of what the siblings of the first ladder give; the trials of the sample give nothing. */
  const middle = (edits: readonly Edit[], fewest?: number) => {
    const registry = registryAfter([...two, ladder({ write: 'trials/2026/third.yaml' }), ...edits]);
    const reduce = (id: string) => {
      const value = flows[id];
      if (value === undefined) return failure([]);
      const results = [limitOf('meltFlow', 'volumeFlow', value, [value - 1, value + 1])];
      return success({ method: 'flowLadder' as const, results, warnings: [] });
    };
    return siblingLimit(registry.trial.get('first')!, { registry, today: testDay, reduce }, fewest);
  };

  it('have a middle, without that of the trial itself', () => {
    expect(middle([])).toBe(45);
  });

  it('are those of the same nozzle, machine and polymer family, whatever the filament', () => {
    expect(middle([{ in: second, from: 'hs-0.6', to: 'hs-0.4' }])).toBe(60);
    expect(middle([{ in: second, from: 'plumstead/wren', to: 'plumstead/owl' }])).toBe(60);
    expect(middle([{ in: second, from: 'daisy-pla', to: 'clover-petg' }])).toBe(60);
    expect(middle([sorrelWith(''), { in: second, from: 'daisy-pla', to: 'sorrel-pla' }])).toBe(45);
  });

  it('are to be as many as are asked for, one unless told', () => {
    expect(middle([], 2)).toBe(45);
    expect(middle([], 3)).toBeNull();
    const alone = [second, 'trials/2026/third.yaml'].map((file) => ({
      in: file,
      from: 'hs-0.6',
      to: 'hs-0.4',
    }));
    expect(middle(alone)).toBeNull();
  });
});

describe('the firmware of a trial', () => {
  const hit = (firmware: string) => {
    const registry = registryAfter([{ in: cloverTrial, from: 'firmware: 1.3.0\n', to: firmware }]);
    return otherFirmware(registry.trial.get('wren-clover-petg-245')!, registry);
  };

  it('that is older than that of the machine asks for another run', () => {
    expect(hit('firmware: 1.2.9\n')).toEqual({
      path: ['firmware'],
      part: 'value',
      message: 'The trial was run with firmware 1.2.9, and plumstead/wren has 1.3.0 now',
      found: '1.2.9',
      allowed: '1.3.x',
      help: 'Repeat the trial; until then acknowledge the finding if the update does not change what it measures.',
    });
  });

  it('that is newer asks for another profile', () => {
    expect(hit('firmware: 2.0.0\n')).toMatchObject({
      message: 'The trial was run with firmware 2.0.0, and the profile of plumstead/wren still says 1.3.0',
      help: 'Bring the profile of the machine up to date, or correct the version.',
    });
  });

  it('may be the same, differ by a patch, or not be told', () => {
    for (const firmware of ['firmware: 1.3.0\n', 'firmware: 1.3.7\n', '']) expect(hit(firmware)).toBeNull();
  });
});
