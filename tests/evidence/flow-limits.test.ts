import { describe, expect, it } from 'vitest';
import type { ReducedResult } from '../../src/bench/reduction.ts';
import { intervalStatements, propertyOf } from '../../src/evidence/statement-intervals.ts';
import { flowLimits } from '../../src/evidence/supported-flow-limits.ts';
import { daisy, type Edit, wren } from '../rules/edited-sample.ts';
import { sorrelLadder, sorrelTrial, sorrelWith } from '../rules/second-profiles.ts';
import { contextWith, limitOf, registryAfter } from './edited-registry.ts';

const at = 'at: {machine: plumstead/wren, nozzle: hs-0.6, nozzleTemperature: 230 Cel}';
const measured = `basis: measured, evidence: wren-sorrel-pla-230`;
const flow = limitOf('meltFlow', 'volumeFlow', 30, [29, 31]);

describe('the flow limits that others are compared with', () => {
  const limits = (
    statement: string,
    results: readonly ReducedResult[] | null = [flow],
    ...edits: readonly Edit[]
  ) => {
    const registry = registryAfter([
      sorrelWith(`meltFlow:\n  - {value: 27 mm3/s, ${statement}}\n`),
      sorrelLadder(),
      ...edits,
    ]);
    const profile = registry.filament.get('oakhollow/sorrel-pla')!;
    return flowLimits(profile, contextWith(registry, results)).map(({ statement: { value } }) => value);
  };

  it('are those that their readings support', () => {
    expect(limits(`${measured}, ${at}`)).toEqual([27]);
    expect(limits(`${measured}, ${at}`, [limitOf('meltFlow', 'volumeFlow', 20, [19, 21])])).toEqual([]);
    expect(limits(`${measured}, ${at}`, null)).toEqual([]);
  });

  it('are also those whose interval alone is another one', () => {
    expect(limits(`interval: 5..6 mm3/s, ${measured}, ${at}`)).toEqual([27]);
  });

  it('are also those that rest on no trial', () => {
    expect(limits(`basis: assumed, reason: By hand, ${at}`, null)).toEqual([27]);
    expect(limits(`basis: measured, evidence: wren-sorrel-pla-231, ${at}`, null)).toEqual([27]);
  });

  it('are none of a trial whose filament is not there', () => {
    const clouds = {
      in: sorrelTrial,
      from: 'filament: oakhollow/sorrel-pla',
      to: 'filament: oakhollow/clouds',
    };
    expect(limits(`${measured}, ${at}`, [flow], clouds)).toEqual([]);
  });

  it('are none at a temperature that no nozzle has; one that is not told is no matter', () => {
    expect(limits(`basis: assumed, reason: By hand, ${at.replace('230 Cel', '2300 Cel')}`)).toEqual([]);
    expect(limits('basis: assumed, reason: By hand, at: {machine: plumstead/wren, nozzle: hs-0.6}')).toEqual([
      27,
    ]);
  });
});

describe('values that are stated with an interval', () => {
  it('are found wherever they stand, with their places', () => {
    const inHotEnd = {
      in: wren,
      from: 'value: 32 mm3/s\n',
      to: 'value: 32 mm3/s\n        interval: 31..33 mm3/s\n',
    };
    const { machine, filament } = registryAfter([inHotEnd]);
    expect(intervalStatements(machine.get('plumstead/wren')!)).toEqual([
      {
        path: ['hotEnds', 0, 'meltFlow', 0],
        value: 32,
        interval: { low: 31, high: 33 },
        dimension: 'volumeFlow',
        basis: 'claimed',
        evidence: undefined,
      },
    ]);
    expect(intervalStatements(filament.get('oakhollow/daisy-pla')!).map(({ evidence }) => evidence)).toEqual([
      'wren-daisy-pla-215',
      'wren-daisy-pla-230',
    ]);
  });

  it('are no ranges', () => {
    const range = {
      in: daisy,
      from: '{value: 200..235 Cel, basis',
      to: '{value: 200..235 Cel, interval: 200..235 Cel, basis',
    };
    const { filament } = registryAfter([range]);
    expect(intervalStatements(filament.get('oakhollow/daisy-pla')!)).toHaveLength(2);
  });

  it('belong to the innermost key that they stand under', () => {
    expect(propertyOf(['hotEnds', 0, 'meltFlow', 1])).toBe('meltFlow');
    expect(propertyOf(['meltFlow', 1])).toBe('meltFlow');
    expect(propertyOf([])).toBe('');
  });
});
