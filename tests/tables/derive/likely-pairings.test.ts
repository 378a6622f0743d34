import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { loadFolders } from '../../../src/host/load-registry.ts';
import { likelyPairings } from '../../../src/tables/derive/likely-pairings.ts';

const { registry } = loadFolders([fileURLToPath(new URL('../../fixtures/registry', import.meta.url))]);

it('every pairing of a small registry is tried', () => {
  const { requests, isCut } = likelyPairings(registry);
  expect(isCut).toBe(false);
  const filaments = [...new Set(requests.map(({ filament }) => filament))];
  expect(filaments.sort()).toEqual([...registry.filament.keys()].sort());
});

it('of a large one those alone whose machine and filament something names together', () => {
  const { requests, isCut } = likelyPairings(registry, { most: 1 });
  expect(isCut).toBe(true);
  const measured = {
    machine: 'plumstead/wren',
    nozzle: 'hs-0.6',
    filament: 'oakhollow/daisy-pla',
    policy: 'house',
  };
  expect(requests).toContainEqual(measured);
  const trials = [...registry.trial.values()].map(({ data }) => `${data.nozzle} ${data.filament}`);
  const limits = [...registry.filament.values()].flatMap(({ id, data }) =>
    (data.meltFlow ?? []).map(({ at }) => `${at?.nozzle} ${id}`),
  );
  const named = new Set([...trials, ...limits]);
  expect(requests.filter(({ nozzle, filament }) => !named.has(`${nozzle} ${filament}`))).toEqual([]);
});

it.each([{}, { most: 1 }])('those of one policy are those of all that are under it: %j', (search) => {
  const all = likelyPairings(registry, search).requests;
  const one = likelyPairings(registry, { ...search, policy: 'house' }).requests;
  expect(one).toEqual(all.filter(({ policy }) => policy === 'house'));
  expect(one.length).toBeGreaterThan(0);
});
