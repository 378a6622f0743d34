import { describe, expect, it } from 'vitest';
import type { ReducedResult } from '../../src/bench/reduction.ts';
import { notAdoptedHits } from '../../src/evidence/not-adopted.ts';
import type { Registry } from '../../src/registry/registry.ts';
import { statementsOf } from '../../src/registry/statement.ts';
import { type Edit, wren } from '../rules/edited-sample.ts';
import { sorrelLadder, sorrelTrial, sorrelWith } from '../rules/second-profiles.ts';
import { contextWith, limitOf, registryAfter } from './edited-registry.ts';

const trial = 'wren-sorrel-pla-230';
const digest = 'e5ee690b75afaf11';
const at = 'at: {machine: plumstead/wren, nozzle: hs-0.6, nozzleTemperature: 230 Cel}';
const measured = `basis: measured, evidence: ${trial}, ${at}`;
const flow = limitOf('meltFlow', 'volumeFlow', 30, [29, 31]);

const inSorrel = ({ filament }: Registry) => filament.get('oakhollow/sorrel-pla');

/** What is found in a profile where each trial gives a flow limit, or what is said instead. */
function found(
  edits: readonly Edit[],
  results: readonly ReducedResult[] | null = [flow],
  profileIn: (
    registry: Registry,
  ) => ReturnType<typeof inSorrel> | ReturnType<Registry['machine']['get']> = inSorrel,
) {
  const registry = registryAfter(edits);
  const profile = profileIn(registry)!;
  const context = contextWith(registry, results);
  return [...statementsOf(profile)].flatMap((placed) => [...notAdoptedHits(profile, placed, context)]);
}

const stating = (statement: string, results?: readonly ReducedResult[] | null, ...more: readonly Edit[]) =>
  found([sorrelWith(`meltFlow:\n  - {value: 27 mm3/s, ${statement}}\n`), sorrelLadder(), ...more], results);

describe('a measured limit without what adopting its trial writes', () => {
  it('is told the interval and the digest', () => {
    const both = `interval: 29..31 mm3/s, readings: ${digest}`;
    expect(stating(measured)).toEqual([
      {
        path: ['meltFlow', 0],
        part: 'value',
        message: `The limit lacks what adopting it from the trial "${trial}" writes: ${both}`,
        found: 'no interval, no readings',
        allowed: both,
        help: `Compare the readings with the bench sheet. Where they are right, run \`meltbounds reduce ${trial} --adopt\`; a value that is lower for a \`reason\` stays.`,
      },
    ]);
  });

  it('is told one of them where it has the other', () => {
    expect(stating(`${measured}, interval: 29..31 mm3/s`).map((hit) => hit.found)).toEqual(['no readings']);
    expect(stating(`${measured}, readings: ${digest}`).map((hit) => hit.found)).toEqual(['no interval']);
  });

  it('is told nothing where it has both, whatever they say', () => {
    expect(stating(`${measured}, interval: 1..2 mm3/s, readings: ${digest}`)).toEqual([]);
  });

  it('in the profile of a machine is told to write it there, since adopting goes to the filament', () => {
    const ofMachine = {
      in: wren,
      from: '    meltFlow:\n',
      to: `    meltFlow:\n      - {value: 27 mm3/s, basis: measured, evidence: ${trial}, at: {nozzle: hs-0.6, filament: oakhollow/sorrel-pla, nozzleTemperature: 230 Cel}}\n`,
    };
    const hits = found([sorrelWith(''), sorrelLadder(), ofMachine], [flow], ({ machine }) =>
      machine.get('plumstead/wren'),
    );
    expect(hits.map(({ help }) => help)).toEqual([
      `Compare the readings with the bench sheet. Where they are right, add to the statement: interval: 29..31 mm3/s, readings: ${digest}`,
    ]);
  });
});

describe('a limit lacks nothing', () => {
  it('where the readings give no interval and it has the digest', () => {
    const bound = { ...limitOf('meltFlow', 'volumeFlow', 28, [null, null]), censored: 'above' } as const;
    expect(stating(`${measured}, readings: ${digest}`, [bound])).toEqual([]);
    expect(stating(measured, [bound]).map((hit) => hit.found)).toEqual(['no readings']);
  });

  it('where the readings refute it', () => {
    expect(stating(measured, [limitOf('meltFlow', 'volumeFlow', 20, [19, 21])])).toEqual([]);
  });

  it('where its conditions are other ones than those of the trial, or are missing', () => {
    expect(stating(measured.replace('hs-0.6', 'hs-0.4'))).toEqual([]);
    expect(stating(`basis: measured, evidence: ${trial}`)).toEqual([]);
  });

  it('where its trial gives nothing, is not there, or has a filament that is not', () => {
    expect(stating(measured, null)).toEqual([]);
    expect(stating(measured, [])).toEqual([]);
    expect(stating(measured.replace(trial, 'wren-sorrel-pla-231'))).toEqual([]);
    const mistyped = {
      in: sorrelTrial,
      from: 'filament: oakhollow/sorrel-pla',
      to: 'filament: oakhollow/clouds',
    };
    expect(stating(measured, [flow], mistyped)).toEqual([]);
  });

  it('where it is not measured', () => {
    expect(stating(measured.replace('measured', 'derived, reason: By hand'))).toEqual([]);
  });

  it('where the profile has adopted something from other readings, which their trial says', () => {
    const two = `meltFlow:
  - {value: 27 mm3/s, ${measured}}
  - {value: 26 mm3/s, interval: 26..27 mm3/s, readings: 0123456789abcdef, ${measured}}
`;
    expect(found([sorrelWith(two), sorrelLadder()])).toEqual([]);
    expect(found([sorrelWith(two.replace('0123456789abcdef', digest)), sorrelLadder()])).toHaveLength(1);
  });
});

describe('of a speed that was found at several accelerations', () => {
  const speeds = [3000, 9000].map((acceleration, index) => ({
    ...limitOf('contourSpeed', 'speed', 100 - 40 * index, [95 - 40 * index, 105 - 40 * index]),
    at: { acceleration },
  }));
  const stated = (acceleration: string) =>
    found(
      [
        sorrelWith(
          `contourSpeed:\n  - {value: 50 mm/s, basis: measured, evidence: ${trial}, at: {machine: plumstead/wren, nozzle: hs-0.6${acceleration}}}\n`,
        ),
        sorrelLadder(`  columns: {speed: mm/s, acceleration: mm/s2, grade: '1'}
  rows:
    - [60, 3000, 1]
    - [80, 9000, 2]
`),
        { in: sorrelTrial, from: 'method: flowLadder', to: 'method: contourLadder' },
      ],
      speeds,
    ).map(({ allowed }) => allowed?.split(', ')[0]);

  it('that at its own counts', () => {
    expect(stated(', acceleration: 3000 mm/s2')).toEqual(['interval: 95..105 mm/s']);
    expect(stated(', acceleration: 9000 mm/s2')).toEqual(['interval: 55..65 mm/s']);
    expect(stated(', acceleration: 5000 mm/s2')).toEqual([]);
  });
});
