/** @module-tag long */
import { expect, test } from 'vitest';
import { loadFolders } from '../../../src/host/load-registry.ts';
import { mostFindingsPerFile } from '../../../src/rules/engine/cap-findings.ts';
import { checkRegistry } from '../../../src/rules/engine/check-registry.ts';
import { testDay } from '../../run-command.ts';
import { sampleRegistry } from '../../sample-registry.ts';
import { house } from '../edited-sample.ts';

const petg = 'polymers/PET-G.yaml';
const broken = '  - {valeu: 1.2 g/cm3, bassi: published, sorce: nowhere}\n';

function findingsWith(edit: (registry: ReturnType<typeof sampleRegistry>) => void) {
  const registry = sampleRegistry();
  edit(registry);
  return checkRegistry(loadFolders(['profiles'], registry.cwd), { today: testDay });
}

test('of thousands of findings in one file as many are shown as anybody reads, and the others are counted', () => {
  const findings = findingsWith((registry) =>
    registry.edit(petg, 'density:\n', `density:\n${broken.repeat(8000)}`),
  ).filter(({ file }) => file.endsWith(petg));
  expect(findings).toHaveLength(mostFindingsPerFile + 1);
  expect(findings.find(({ rule }) => rule === 'file/many-findings')).toMatchObject({
    severity: 'error',
    message: expect.stringMatching(/^\d{5} more findings in this file are not shown$/),
  });
});

test('errors are shown before notes, and what is left out keeps its severity', () => {
  const findings = findingsWith((registry) => {
    registry.edit(petg, 'density:\n', `density:\n${broken.repeat(67)}`);
    registry.edit(petg, '75..85 Cel', '75..85 °C');
  }).filter(({ file }) => file.endsWith(petg));
  expect(new Set(findings.map(({ severity }) => severity))).toEqual(new Set(['error']));
});

test('few findings are left as they are', () => {
  const findings = findingsWith((registry) => registry.edit(house, 'speed: 1 mm/s', 'speed: 0 mm/s'));
  expect(findings.map(({ rule }) => rule)).toEqual(['plausibility/not-positive']);
});

test('a finding on an item stays at its line when an item before it cannot be read', () => {
  const [first, second, ...others] = findingsWith((registry) =>
    registry.edit(
      petg,
      'dryingTemperature:\n',
      'dryingTemperature:\n  - {value: 60..66 furlong, basis: published, source: invented-plastics-tables}\n  - {value: 90..96 Cel, basis: published, source: invented-plastics-tables}\n',
    ),
  );
  expect(others).toEqual([]);
  expect(first).toMatchObject({ rule: 'units/unknown-unit', pointer: '/dryingTemperature/0/value' });
  expect(second).toMatchObject({ rule: 'consistency/polymer-order', pointer: '/dryingTemperature/1/value' });
  expect(second?.line).toBe((first?.line ?? 0) + 1);
});
