import { describe, expect, it, test } from 'vitest';
import { projectFolder } from '../../../scripts/docs/documents.ts';
import { openRegistry } from '../../../scripts/slips/planted-registry.ts';
import { readTexts } from '../../../scripts/slips/read-texts.ts';
import type { Finding } from '../../../src/registry/finding.ts';
import { checkRegistry } from '../../../src/rules/engine/check-registry.ts';
import { onePerCause } from '../../../src/rules/engine/one-per-cause.ts';

const texts = readTexts(`${projectFolder}/profiles`);
const demo = openRegistry('demo', texts, '2026-11-25');

const pla = 'filaments/ashgrove/stagecraft-pla.yaml';
const petg = 'filaments/ashgrove/stagecraft-petg.yaml';
const lantern = 'machines/brackwater/lantern.yaml';
const fine = 'trials/2026/lantern-stagecraft-pla-230-fine.yaml';
const sheet = 'trials/2026/lantern-stagecraft-pla-210.csv';

/** What is found in the demo registry once a pattern in a file is replaced. */
function foundAfter(file: string, from: string | RegExp, to: string): readonly Finding[] {
  const before = texts.get(file) ?? '';
  const after = before.replace(from, to);
  expect(after).not.toBe(before);
  return demo.check(new Map([[file, after]]));
}

function places(findings: readonly Finding[]): string[] {
  return findings.map(({ severity, rule, file, pointer }) => `${severity} ${rule} ${file} ${pointer}`);
}

describe('one cause gives one finding:', () => {
  it.each([
    [
      'a unit in every cell of a column',
      [fine, /, (\d\.\d+)\]/g, ', $1 g]'],
      `error shape/wrong-type ${fine} /observations/rows/0/2`,
    ],
    [
      'decimal commas in the rows of a trial',
      [fine, /, (\d)\.(\d+)\]/g, ', $1,$2]'],
      `error evidence/unreducible ${fine} /observations/rows/0`,
    ],
    [
      'decimal commas in a sheet, and the limit that rests on it',
      [sheet, /(\d)\.(\d+)$/gm, '$1,$2'],
      `error evidence/unreducible ${sheet} /observations`,
    ],
    [
      'both sides of a merge in a sheet',
      [sheet, '24,400,1.194\n', '<<<<<<< HEAD\n24,400,1.194\n=======\n24,400,1.191\n>>>>>>> bench\n'],
      `error evidence/unreducible ${sheet} /observations`,
    ],
    [
      'two columns under the wrong names, after a limit was adopted',
      [fine, 'feedLength: mm, extrudedMass: g', 'extrudedMass: g, feedLength: mm'],
      `error evidence/unreducible ${fine} /observations`,
    ],
    [
      'a diameter of another kind of filament',
      [petg, 'diameter: 1.75 mm', 'diameter: 2.85 mm'],
      `error consistency/filament-diameter-mismatch ${petg} /diameter`,
    ],
    [
      'a diameter of another kind of hot end',
      [lantern, 'filamentDiameter: 1.75 mm', 'filamentDiameter: 2.85 mm'],
      `error consistency/filament-diameter-mismatch ${lantern} /hotEnds/0/filamentDiameter`,
    ],
    [
      'a density that makes every ladder of the filament absurd',
      [pla, '1.24 g/cm3', '0.124 g/cm3'],
      `error plausibility/density ${pla} /density/0/value`,
    ],
    [
      'a heater that no flow on it agrees with, though it is usual by itself',
      [lantern, '65 W', '15 W'],
      `error plausibility/heater-power ${lantern} /hotEnds/0/meltFlow/0/value`,
      `error plausibility/heater-power ${lantern} /hotEnds/0/meltFlow/1/value`,
    ],
    [
      'an acceleration that all settings of prints exceed',
      [lantern, '14500 mm/s2', '145 mm/s2'],
      `warning plausibility/run-up ${lantern} /topSpeed/0/value`,
    ],
    [
      'the kind of another folder',
      [pla, 'kind: filament', 'kind: machine'],
      `error identity/id-path ${pla} /kind`,
    ],
  ] as const)('%s', (_, [file, from, to], ...expected) => {
    expect(places(foundAfter(file, from, to))).toEqual(expected);
  });
});

test('what follows stands in the message, and makes it as serious as itself', () => {
  const [finding] = foundAfter(lantern, '37 mm', '3700 mm');
  expect(finding).toMatchObject({ file: lantern, pointer: '/hotEnds/0/meltZoneLength/0/value' });
  const [changed] = foundAfter(fine, '- [12, 400, 1.193]', '- [12, 400, 11.93]');
  expect(changed?.severity).toBe('error');
  expect(changed?.message).toMatch(/From this follows: .*(?:adopted from|supports no limit)/);
});

function finding(rule: string, file: string, pointer: string, line = 1): Finding {
  return {
    severity: 'error' as const,
    ...{ rule, pointer, file, line, column: 1, endLine: line, endColumn: 2, message: rule },
    ...{ found: null, allowed: null, source: null, help: null },
  };
}

test('what several values of a profile contradict is told at the first of them, with where the others stand', () => {
  const limits = [3, 5, 8, 13, 21].map((line) => finding('a/heater', 'pla.yaml', `/meltFlow/${line}`, line));
  const told = onePerCause(
    limits.map((limit) => ({
      ...{ owner: 'pla.yaml', finding: limit },
      blames: [{ file: 'lantern.yaml', pointer: '/heaterPower' }],
    })),
  );
  expect(told.map(({ finding: { line, message } }) => [line, message])).toEqual([
    [3, 'a/heater. The same at 4 more places: lines 5, 8, 13, …'],
  ]);
});

describe('a file that is judged alone', () => {
  const edits = new Map([[pla, (texts.get(pla) ?? '').replace('1.24 g/cm3', '0.124 g/cm3')]]);
  const alone = (file: string) =>
    checkRegistry(demo.load(edits), { today: '2026-11-25', wants: (each) => each === file });

  it('is told what its findings follow from in another one', () => {
    expect(places(alone(fine))).toEqual([`error plausibility/density ${pla} /density/0/value`]);
    expect(places(alone(pla))).toEqual([`error plausibility/density ${pla} /density/0/value`]);
  });

  it('is told nothing of others that nothing in it rests on', () => {
    expect(alone('jobs/mask-rack.yaml')).toEqual([]);
  });
});

describe('of findings that blame each other', () => {
  const one = finding('a/one', 'a.yaml', '/one');
  const other = finding('a/other', 'a.yaml', '/other');
  const blaming = (pointer: string) => [{ file: 'a.yaml', pointer }];
  const basis = new Map([
    [one, { owner: 'a.yaml', blames: blaming('/other') }],
    [other, { owner: 'a.yaml', blames: blaming('/one') }],
  ]);
  const found = (findings: readonly Finding[]) =>
    onePerCause(
      findings.map((each) => ({ owner: 'a.yaml', blames: [], ...basis.get(each), finding: each })),
    ).map((told) => told.finding);

  it('one is left, whichever comes first', () => {
    expect(found([one, other])).toHaveLength(1);
    expect(found([other, one])).toHaveLength(1);
  });

  it('notes explain nothing and are left alone', () => {
    const note = { ...other, severity: 'note' as const };
    expect(found([one, note])).toEqual([one, note]);
  });
});
