import { describe, expect, it } from 'vitest';
import { otherConditionHits } from '../../src/evidence/trial-conditions.ts';
import type { AnyProfile } from '../../src/registry/profile.ts';
import type { Registry } from '../../src/registry/registry.ts';
import { statementsOf } from '../../src/registry/statement.ts';
import { cloverTrial, type Edit, wren } from '../rules/edited-sample.ts';
import { sorrelLadder, sorrelTrial, sorrelWith } from '../rules/second-profiles.ts';
import { registryAfter } from './edited-registry.ts';

const trial = 'wren-sorrel-pla-230';

/** What speaks against the conditions of the statements of a profile. */
function hitsOf(profile: (registry: Registry) => AnyProfile | undefined, edits: readonly Edit[]) {
  const registry = registryAfter(edits);
  const found = profile(registry)!;
  return [...statementsOf(found)].flatMap((placed) => [...otherConditionHits(found, placed, { registry })]);
}

const inSorrel = ({ filament }: Registry) => filament.get('oakhollow/sorrel-pla');

/** What is found where Sorrel PLA states a flow under some conditions, of a ladder of its own. */
const stating = (conditions: string, ...more: readonly Edit[]) =>
  hitsOf(inSorrel, [
    sorrelWith(
      `meltFlow:\n  - {value: 27 mm3/s, basis: measured, evidence: ${trial}, at: {${conditions}}}\n`,
    ),
    sorrelLadder(),
    ...more,
  ]);

describe('a condition that is another one than that of the trial', () => {
  it.each([
    ['nozzleTemperature', '240 Cel', '230 Cel'],
    ['nozzle', 'hs-0.4', 'hs-0.6'],
    ['machine', 'plumstead/owl', 'plumstead/wren'],
    ['batch', '26-0007', '26-0003', { batch: '26-0003' }],
    ['layerHeight', '0.3 mm', '0.2 mm', { conditions: 'layerHeight: 0.2 mm' }],
    ['acceleration', '5000 mm/s2', '3000 mm/s2', { conditions: 'acceleration: 3000 mm/s2' }],
  ])('is told: %s', (name, stated, was, more: { batch?: string; conditions?: string } = {}) => {
    const nozzle = 'conditions: {nozzleTemperature: 230 Cel';
    const edits = [
      ...(more.batch === undefined
        ? []
        : [{ in: sorrelTrial, from: 'conditions: {', to: `batch: ${more.batch}\nconditions: {` }]),
      ...(more.conditions === undefined
        ? []
        : [{ in: sorrelTrial, from: nozzle, to: `${nozzle}, ${more.conditions}` }]),
    ];
    expect(stating(`${name}: ${stated}`, ...edits)).toEqual([
      {
        path: ['meltFlow', 0, 'evidence'],
        part: 'value',
        blames: [{ path: ['meltFlow', 0, 'evidence'] }],
        message: `The statement holds for ${name} ${stated}, but the trial "${trial}" was run with ${was}`,
        found: stated,
        allowed: was,
        help: `Name the trial that was run with ${stated}, or correct \`${name}\`.`,
      },
    ]);
    expect(stating(`${name}: ${was}`, ...edits)).toEqual([]);
  });

  it('is told once with all others', () => {
    const [hit, ...more] = stating('nozzle: hs-0.4, nozzleTemperature: 240 Cel');
    expect(hit?.message).toBe(
      `The statement holds for nozzle hs-0.4 and nozzleTemperature 240 Cel, but the trial "${trial}" was run with hs-0.6 and 230 Cel`,
    );
    expect(hit?.help).toBe(
      'Name the trial that was run with hs-0.4, 240 Cel, or correct `nozzle` and `nozzleTemperature`.',
    );
    expect(more).toEqual([]);
  });

  it('is none where the trial does not say it', () => {
    expect(stating('batch: 26-0007')).toEqual([]);
  });
});

describe('an acceleration', () => {
  it('that the trial does not tell is left out of the statement', () => {
    expect(stating('acceleration: 5000 mm/s2')).toEqual([
      {
        path: ['meltFlow', 0, 'at', 'acceleration'],
        part: 'value',
        message: `The statement holds for acceleration 5000 mm/s2, but the trial "${trial}" does not say at which one it was run`,
        found: '5000 mm/s2',
        allowed: 'no acceleration',
        help: 'Leave `acceleration` out of the statement; where the bench sheet tells it, the next trial says it under `conditions`.',
      },
    ]);
  });

  it('may stand in a column of the readings instead', () => {
    const contour = [
      sorrelWith(
        `contourSpeed:\n  - {value: 90 mm/s, basis: measured, evidence: ${trial}, at: {acceleration: 5000 mm/s2}}\n`,
      ),
      sorrelLadder(`  columns: {speed: mm/s, acceleration: mm/s2, grade: '1'}
  rows:
    - [60, 5000, 1]
    - [80, 5000, 2]
`),
      { in: sorrelTrial, from: 'method: flowLadder', to: 'method: contourLadder' },
    ];
    expect(hitsOf(inSorrel, contour)).toEqual([]);
    // Readings that cannot be read have a finding of their own.
    expect(hitsOf(inSorrel, [...contour, { in: sorrelTrial, from: '[60, 5000, 1]', to: '[60, 1]' }])).toEqual(
      [],
    );
  });
});

describe('a polymer', () => {
  it('is that of the filament of the trial, or one that it is blended of', () => {
    expect(stating('polymer: PLA')).toEqual([]);
    expect(stating('polymer: PP', { in: 'filaments/oakhollow/sorrel-pla.yaml', ...blend })).toEqual([]);
    expect(stating('polymer: PET-G')).toEqual([
      {
        path: ['meltFlow', 0, 'at', 'polymer'],
        part: 'value',
        message: `The statement holds for the polymer PET-G, but the trial "${trial}" was run with PLA, oakhollow/sorrel-pla`,
        found: 'PET-G',
        allowed: 'PLA',
        help: 'Name a trial that was run with PET-G, or correct `polymer`.',
      },
    ]);
  });
});

const blend = { from: 'designation: PLA', to: 'designation: PLA+PP' } as const;

describe('the profile itself is a condition', () => {
  const ofClover = 'evidence: wren-clover-petg-245';

  it('of its statements, for a filament', () => {
    expect(
      hitsOf(inSorrel, [sorrelWith(`meltFlow:\n  - {value: 19 mm3/s, basis: measured, ${ofClover}}\n`)]).map(
        ({ message }) => message,
      ),
    ).toEqual([
      'The statement holds for filament oakhollow/sorrel-pla, but the trial "wren-clover-petg-245" was run with oakhollow/clover-petg',
    ]);
  });

  it('of its statements, for what is added to a filament', () => {
    const write = 'additions/sorrel-more.yaml';
    const text = `kind: addition
id: sorrel-more
version: 1.0.0
filament: oakhollow/sorrel-pla
meltFlow:
  - {value: 19 mm3/s, basis: measured, ${ofClover}}
`;
    const added = ({ addition }: Registry) => addition.get('sorrel-more');
    expect(hitsOf(added, [sorrelWith(''), { write, text }]).map(({ found }) => found)).toEqual([
      'oakhollow/sorrel-pla',
    ]);
  });

  it('of its statements, for a machine', () => {
    const owl: Edit = {
      copy: wren,
      to: 'machines/plumstead/owl.yaml',
      edits: [
        ['id: plumstead/wren', 'id: plumstead/owl'],
        ['contourSpeed:', `contourSpeed:\n  - {value: 90 mm/s, basis: measured, ${ofClover}}`],
      ],
    };
    const inOwl = ({ machine }: Registry) => machine.get('plumstead/owl');
    expect(hitsOf(inOwl, [owl]).map(({ message }) => message)).toEqual([
      'The statement holds for machine plumstead/owl, but the trial "wren-clover-petg-245" was run with plumstead/wren',
    ]);
  });

  it('but not where the trial names a machine or a filament that is not there, which has a finding of its own', () => {
    const statement = sorrelWith(`meltFlow:\n  - {value: 19 mm3/s, basis: measured, ${ofClover}}\n`);
    const mistyped = (from: string) => [{ in: cloverTrial, from, to: `${from}x` }];
    for (const name of ['machine: plumstead/wren', 'filament: oakhollow/clover-petg'])
      expect(hitsOf(inSorrel, [statement, ...mistyped(name)]), name).toEqual([]);
  });
});

describe('nothing is compared', () => {
  it('of a statement that is not measured, or whose trial is not there', () => {
    const wrong = (statement: string) =>
      hitsOf(inSorrel, [sorrelWith(`meltFlow:\n  - {value: 19 mm3/s, ${statement}}\n`)]);
    expect(wrong('basis: measured, evidence: wren-clover-petg-245')).toHaveLength(1);
    expect(wrong('basis: derived, reason: By hand, evidence: wren-clover-petg-245')).toEqual([]);
    expect(wrong('basis: measured, evidence: wren-clover-petg-246')).toEqual([]);
    expect(wrong('basis: measured')).toEqual([]);
  });

  it('with a trial that names no machine', () => {
    const edits = [{ in: cloverTrial, from: 'machine: plumstead/wren\n', to: '' }];
    const statement = `meltFlow:\n  - {value: 19 mm3/s, basis: measured, evidence: wren-clover-petg-245}\n`;
    expect(hitsOf(inSorrel, [sorrelWith(statement), ...edits])).toHaveLength(1);
    expect(hitsOf(({ filament }) => filament.get('oakhollow/clover-petg'), edits)).toEqual([]);
  });
});
