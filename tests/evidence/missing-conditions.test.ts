import { describe, expect, it } from 'vitest';
import { missingConditionEdits } from '../../src/evidence/missing-conditions.ts';
import type { Registry } from '../../src/registry/registry.ts';
import { applyEdits } from '../../src/registry/yaml/text-edit.ts';
import { type Edit, wren } from '../rules/edited-sample.ts';
import { sorrelLadder, sorrelTrial, sorrelWith } from '../rules/second-profiles.ts';
import { hitsIn, registryAfter } from './edited-registry.ts';

const trial = 'wren-sorrel-pla-230';
const measured = `basis: measured, evidence: ${trial}`;

const found = (edits: readonly Edit[], profileIn?: Parameters<typeof hitsIn>[3]) =>
  hitsIn('evidence/missing-condition', edits, null, profileIn);
const stating = (statement: string, ...more: readonly Edit[]) =>
  found([sorrelWith(`meltFlow:\n  - {value: 27 mm3/s, ${statement}}\n`), sorrelLadder(), ...more]);

describe('a measured statement without the conditions that its trial knows', () => {
  it('is told them all, and where to write them', () => {
    const all = 'machine: plumstead/wren, nozzle: hs-0.6, nozzleTemperature: 230 Cel';
    expect(stating(measured)).toEqual([
      {
        path: ['meltFlow', 0],
        part: 'value',
        message: `The statement does not say for which machine, nozzle, nozzleTemperature it holds, and the trial "${trial}" knows: ${all}`,
        found: 'no machine, nozzle, nozzleTemperature',
        allowed: all,
        help: `Add \`at: {${all}}\`; \`meltbounds check --fix\` does.`,
      },
    ]);
  });

  it('is told those that it leaves out', () => {
    expect(stating(`${measured}, at: {machine: plumstead/wren, nozzle: hs-0.6}`)).toEqual([
      {
        path: ['meltFlow', 0, 'at'],
        part: 'key',
        message: `The statement does not say for which nozzleTemperature it holds, and the trial "${trial}" knows: nozzleTemperature: 230 Cel`,
        found: 'no nozzleTemperature',
        allowed: 'nozzleTemperature: 230 Cel',
        help: 'Add under `at`: nozzleTemperature: 230 Cel; `meltbounds check --fix` does.',
      },
    ]);
  });

  it('is told nothing where it names another one, which is one mistake', () => {
    expect(stating(`${measured}, at: {nozzle: hs-0.4}`)).toEqual([]);
  });

  it('is told nothing where it is complete, not measured, or its trial is not there', () => {
    const complete = 'at: {machine: plumstead/wren, nozzle: hs-0.6, nozzleTemperature: 230 Cel}';
    expect(stating(`${measured}, ${complete}`)).toEqual([]);
    expect(stating(`basis: derived, reason: By hand, evidence: ${trial}`)).toEqual([]);
    expect(stating('basis: measured, evidence: wren-sorrel-pla-231')).toEqual([]);
    expect(stating('basis: measured')).toEqual([]);
  });

  it('is told nothing where the method of its trial does not measure it', () => {
    const bridge = `bridgeSpeed:\n  - {value: 40 mm/s, ${measured}}\n`;
    expect(found([sorrelWith(bridge), sorrelLadder()])).toEqual([]);
  });

  it('is asked in a machine and in what is added to a filament, too', () => {
    const ofMachine = {
      in: wren,
      from: 'meltFlow:\n',
      to: `meltFlow:\n      - {value: 27 mm3/s, ${measured}}\n`,
    };
    const inWren = ({ machine }: Registry) => machine.get('plumstead/wren');
    expect(found([sorrelWith(''), sorrelLadder(), ofMachine], inWren).map((hit) => hit.found)).toEqual([
      'no nozzle, filament, nozzleTemperature',
    ]);
    const added = ({ addition }: Registry) => addition.get('sorrel-more');
    expect(found([sorrelWith(''), sorrelLadder(), addition], added).map((hit) => hit.found)).toEqual([
      'no machine, nozzle, nozzleTemperature',
    ]);
  });
});

const addition: Edit = {
  write: 'additions/sorrel-more.yaml',
  text: `kind: addition
id: sorrel-more
version: 1.0.0
filament: oakhollow/sorrel-pla
meltFlow:
  - {value: 27 mm3/s, ${measured}}
`,
};

describe('the missing conditions are written', () => {
  const written = (statement: string) => {
    const { filament, ...registry } = registryAfter([
      sorrelWith(`meltFlow:\n  - value: 27 mm3/s\n    basis: measured\n${statement}`),
      sorrelLadder(),
    ]);
    const sorrel = filament.get('oakhollow/sorrel-pla')!;
    const text = applyEdits(sorrel.source.text, missingConditionEdits(sorrel, { filament, ...registry }));
    return text.slice(text.indexOf('meltFlow:'), text.indexOf('notice:'));
  };
  const first = `meltFlow:\n  - value: 27 mm3/s\n    basis: measured\n    evidence: ${trial}\n`;

  it('below the trial where there were none', () => {
    expect(written(`    evidence: ${trial}\n`)).toBe(
      `${first}    at: {machine: plumstead/wren, nozzle: hs-0.6, nozzleTemperature: 230 Cel}\n`,
    );
  });

  it('beside those that are there', () => {
    expect(written(`    evidence: ${trial}\n    at:\n      nozzle: hs-0.6\n`)).toBe(
      `${first}    at:\n      nozzle: hs-0.6\n      machine: plumstead/wren\n      nozzleTemperature: 230 Cel\n`,
    );
  });

  it('not where nothing is missing', () => {
    const complete = `    evidence: ${trial}\n    at: {machine: plumstead/wren, nozzle: hs-0.6, nozzleTemperature: 230 Cel}\n`;
    expect(written(complete)).toBe(`${first.replace(`    evidence: ${trial}\n`, '')}${complete}`);
  });
});

it('the trial may know the batch', () => {
  const batch = { in: sorrelTrial, from: 'conditions: {', to: 'batch: 26-0003\nconditions: {' };
  expect(
    stating(`${measured}, at: {machine: plumstead/wren, nozzle: hs-0.6, nozzleTemperature: 230 Cel}`, batch),
  ).toMatchObject([{ allowed: 'batch: 26-0003' }]);
});
