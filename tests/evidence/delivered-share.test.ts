import { describe, expect, it } from 'vitest';
import type { ReducedResult } from '../../src/bench/reduction.ts';
import { oddDelivery } from '../../src/evidence/delivered-share.ts';
import { failure, success } from '../../src/result.ts';
import { type Edit, wren } from '../rules/edited-sample.ts';
import { sorrel, sorrelLadder, sorrelTrial, sorrelWith } from '../rules/second-profiles.ts';
import { testDay } from '../run-command.ts';
import { limitOf, registryAfter } from './edited-registry.ts';

const start = (deficit: number) => limitOf('startDeficit', 'ratio', deficit, [null, null]);
const flow = limitOf('meltFlow', 'volumeFlow', 30, [29, 31]);
const starved = { ...limitOf('meltFlow', 'volumeFlow', 12, [null, null]), censored: 'below' } as const;

interface Case {
  /** Share of the fed mass that came out at the lowest steps. */
  readonly share: number;
  readonly edits?: readonly Edit[];
  readonly limit?: ReducedResult;
  /** What surveys of the strand give, by their ids: the relative error of its cross section. */
  readonly surveys?: Readonly<Record<string, number | null>>;
}

/** What is odd about the delivery of the ladder with Sorrel PLA. */
function delivering({ share, edits = [], limit = flow, surveys = {} }: Case) {
  const registry = registryAfter([sorrelWith(''), sorrelLadder(), ...edits]);
  const trial = registry.trial.get('wren-sorrel-pla-230')!;
  const reduce = (id: string) => {
    const { method } = registry.trial.get(id)!.data;
    const area = surveys[id];
    if (area === null) return failure([]);
    const ofStrand = area === undefined ? [] : [limitOf('flowError', 'ratio', area, [null, null])];
    const results = method === 'flowLadder' ? [start(1 - share), limit] : ofStrand;
    return success({ method, results, warnings: [] });
  };
  return oddDelivery(trial, { registry, today: testDay, reduce });
}

const survey = (id: string, batch = ''): Edit => ({
  write: `trials/2026/${id}.yaml`,
  text: `kind: trial
id: ${id}
method: diameterSurvey
origin: simulated
date: '2026-02-11'
filament: oakhollow/sorrel-pla
${batch}conditions: {ambientTemperature: 21 Cel}
gauge: {resolution: 0.01 mm, accuracy: 0.02 mm}
observations: {columns: {position: mm, firstDiameter: mm}, rows: [[0, 1.75]]}
notice: Invented for a test.
`,
});

describe('what comes out at the lowest steps of a ladder', () => {
  it('may be 8 % more or less than what was fed', () => {
    for (const share of [0.921, 1, 1.079]) expect(delivering({ share }), `${share}`).toBeNull();
    for (const share of [0.919, 1.081]) expect(delivering({ share }), `${share}`).not.toBeNull();
  });

  it('is impossible beyond 20 %', () => {
    const isImpossible = (share: number) => delivering({ share })?.isImpossible;
    expect([0.81, 1.19].map(isImpossible)).toEqual([false, false]);
    expect([0.79, 1.21].map(isImpossible)).toEqual([true, true]);
  });

  it('is told as a share of what was fed', () => {
    expect(delivering({ share: 0.9 })).toEqual({
      isImpossible: false,
      hit: {
        path: ['observations'],
        part: 'key',
        message:
          "At the lowest steps 90 % came out of what was fed, by the diameter of 1.75 mm and the density of the filament's profile",
        found: '90 %',
        allowed: '92 % to 108 %',
        help: 'Check the fed length and its unit, the zero of the scale, and the diameter and density of the filament; a foaming filament needs the density of the strand, not that of the foam. Measure the strand (diameterSurvey) if it is thinner or thicker than it should be.',
      },
    });
  });

  it('is told with three digits', () => {
    expect(delivering({ share: 0.91234 })?.hit.found).toBe('91.2 %');
  });

  it('is not asked where a ladder says nothing of it', () => {
    const registry = registryAfter([sorrelWith(''), sorrelLadder()]);
    const trial = registry.trial.get('wren-sorrel-pla-230')!;
    const none = success({ method: 'flowLadder', results: [flow], warnings: [] } as const);
    expect(oddDelivery(trial, { registry, today: testDay, reduce: () => none })).toBeNull();
    expect(oddDelivery(trial, { registry, today: testDay, reduce: () => failure([]) })).toBeNull();
  });

  it('is asked of ladders only, and where the filament is there', () => {
    const sweep = { in: sorrelTrial, from: 'method: flowLadder', to: 'method: temperatureSweep' };
    expect(delivering({ share: 0.5, edits: [sweep], surveys: { 'wren-sorrel-pla-230': 0 } })).toBeNull();
    const clouds = { in: sorrelTrial, from: 'oakhollow/sorrel-pla', to: 'oakhollow/clouds' };
    expect(delivering({ share: 0.5, edits: [clouds] })).toBeNull();
  });
});

describe('more is explained', () => {
  const uncertain = { in: sorrelTrial, from: 'scale:', to: 'feedLengthUncertainty: 6 %\nscale:' };
  const loose = {
    in: sorrel,
    from: 'diameter: 1.75 mm',
    to: 'diameter: 1.75 mm\ndiameterTolerance: 0.0875 mm',
  };

  it('by twice the stated uncertainty of the fed length', () => {
    expect(delivering({ share: 0.89, edits: [uncertain] })).toBeNull();
    expect(delivering({ share: 0.87, edits: [uncertain] })?.hit.allowed).toBe('88 % to 112 %');
  });

  it('by a tolerance of the diameter, which counts twice in the cross section', () => {
    expect(delivering({ share: 1.09, edits: [loose] })).toBeNull();
    expect(delivering({ share: 1.11, edits: [loose] })?.hit.allowed).toBe('90 % to 110 %');
  });

  it('by both together, up to what else would be impossible', () => {
    const both = [{ ...uncertain, to: 'feedLengthUncertainty: 8 %\nscale:' }, loose];
    expect(delivering({ share: 0.75, edits: both })).toBeNull();
    expect(delivering({ share: 0.73, edits: both })?.isImpossible).toBe(true);
  });

  it('by a survey of the strand, which takes the place of the tolerance', () => {
    const edits = [survey('sorrel-diameter')];
    const thin = { 'sorrel-diameter': -0.1 };
    expect(delivering({ share: 0.9, edits, surveys: thin })).toBeNull();
    const odd = delivering({ share: 1, edits, surveys: thin });
    expect(odd?.hit).toMatchObject({
      message:
        'At the lowest steps 111 % came out of what was fed, by the diameter of 1.75 mm and the density of the filament\'s profile and the survey "sorrel-diameter"',
      found: '111 %',
    });
    expect(delivering({ share: 0.99, edits: [...edits, loose], surveys: thin })?.hit.allowed).toBe(
      '92 % to 108 %',
    );
  });

  it('by the first survey that gives an error, of the same batch where both name one', () => {
    const batch = { in: sorrelTrial, from: 'conditions:', to: 'batch: 26-0003\nconditions:' };
    const other = survey('sorrel-a', 'batch: 26-0004\n');
    const same = survey('sorrel-b', 'batch: 26-0003\n');
    const nameless = survey('sorrel-c');
    const at = (surveys: Readonly<Record<string, number | null>>, ...edits: readonly Edit[]) =>
      delivering({ share: 0.9, edits, surveys }) === null;
    expect(at({ 'sorrel-a': -0.1 }, batch, other)).toBe(false);
    expect(at({ 'sorrel-b': -0.1 }, batch, same)).toBe(true);
    expect(at({ 'sorrel-c': -0.1 }, batch, nameless)).toBe(true);
    expect(at({ 'sorrel-a': -0.1 }, other)).toBe(true);
    expect(at({ 'sorrel-b': null, 'sorrel-c': -0.1 }, batch, same, nameless)).toBe(true);
  });
});

describe('a ladder that starves from its first step on', () => {
  it('is not held to be impossible, and is told so', () => {
    expect(delivering({ share: 0.7, limit: starved })).toMatchObject({
      isImpossible: false,
      hit: {
        help: 'The hot end may starve from the first step on: run the ladder again from a far lower flow. Else check the fed length, the diameter and the density.',
      },
    });
  });

  it('does not deliver more than was fed', () => {
    expect(delivering({ share: 1.3, limit: starved })).toMatchObject({
      isImpossible: true,
      hit: { help: expect.stringMatching(/^Check the fed length/) },
    });
  });
});

describe('one diameter taken for another', () => {
  it('shows as the square of their ratio', () => {
    expect(delivering({ share: (2.85 / 1.75) ** 2 })?.hit.help).toBe(
      "That is what filament of 2.85 mm would give: check the diameter in the filament's profile, and which filament was loaded.",
    );
    expect(delivering({ share: 1.05 * (2.85 / 1.75) ** 2 })?.hit.help).toMatch(
      /^That is what filament of 2.85/,
    );
    expect(delivering({ share: 0.9 * (2.85 / 1.75) ** 2 })?.hit.help).toMatch(/^Check the fed length/);
  });

  it('shows where the thick one was stated, too', () => {
    const thick = { in: sorrel, from: 'diameter: 1.75 mm', to: 'diameter: 2.85 mm' };
    const wide = { in: wren, from: 'filamentDiameter: 1.75 mm', to: 'filamentDiameter: 2.85 mm' };
    expect(delivering({ share: (1.75 / 2.85) ** 2, edits: [thick, wide] })?.hit.help).toMatch(
      /^That is what filament of 1.75 mm would give/,
    );
  });
});

describe('a figure of the filament that is judged itself is not told again', () => {
  it('a density on the machine of the ladder, and no other', () => {
    const foamed = (machine: string) => ({
      in: sorrel,
      from: '{value: 1.24 g/cm3, basis: claimed, source: oakhollow-daisy-pla-sheet}',
      to: `{value: 1.24 g/cm3, basis: claimed, source: oakhollow-daisy-pla-sheet}
  - {value: 0.9 g/cm3, basis: assumed, at: {machine: ${machine}}}`,
    });
    expect(delivering({ share: 0.9, edits: [foamed('plumstead/wren')] })).toBeNull();
    expect(delivering({ share: 0.9, edits: [foamed('plumstead/finch')] })).not.toBeNull();
  });

  it.each([
    ['a diameter that no filament has', 'diameter: 1.75 mm', 'diameter: 2.2 mm'],
    ['a diameter that does not go into the hot end', 'diameter: 1.75 mm', 'diameter: 2.85 mm'],
    ['a density far below the family', 'value: 1.24 g/cm3', 'value: 0.9 g/cm3'],
    ['a density far above the family', 'value: 1.24 g/cm3', 'value: 1.6 g/cm3'],
  ])('%s', (_, from, to) => {
    expect(delivering({ share: 0.9, edits: [{ in: sorrel, from, to }] })).toBeNull();
  });

  it('unlike a density at the end of the family, or one that nobody knows a family for', () => {
    const density = { in: sorrel, from: 'value: 1.24 g/cm3', to: 'value: 1.26 g/cm3' };
    expect(delivering({ share: 0.9, edits: [density] })).not.toBeNull();
    const unknown = {
      in: sorrel,
      from: 'polymer: PLA\ndesignation: PLA',
      to: 'polymer: PVB\ndesignation: PVB',
    };
    expect(delivering({ share: 0.9, edits: [unknown] })).not.toBeNull();
  });
});
