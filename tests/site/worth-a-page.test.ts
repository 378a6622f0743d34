import { expect, it } from 'vitest';
import { loadFiles } from '../../src/registry/load-files.ts';
import { worthAPage } from '../../src/site/worth-a-page.ts';
import { likelyPairings } from '../../src/tables/derive/likely-pairings.ts';
import { sampleTexts } from '../sample-texts.ts';

/** The sample registry with the one machine, the filaments of one maker and the house rules so many times each. */
function copied(machines: number, filaments: number, policies = 1) {
  const texts = sampleTexts();
  const copy = (path: string, id: string, count: number, folder: string) => {
    const text = texts.get(path) ?? '';
    for (let number = 1; number < count; number++)
      texts.set(
        path.replace(id, `${id}-${number}`),
        text.replace(`id: ${folder}${id}`, `id: ${folder}${id}-${number}`),
      );
  };
  copy('machines/plumstead/wren.yaml', 'wren', machines, 'plumstead/');
  copy('filaments/oakhollow/clover-petg.yaml', 'clover-petg', filaments, 'oakhollow/');
  copy('policies/house.yaml', 'house', policies, '');
  return loadFiles([{ folder: 'profiles', texts }]).registry;
}

it('each pairing of a small registry is, under all house rules', () => {
  const registry = copied(1, 1, 2);
  const { fitted, isCut, policies } = worthAPage(registry);
  expect(isCut).toBe(false);
  expect(policies).toEqual(['house', 'house-1']);
  expect(fitted.length * 2).toBe(likelyPairings(registry).requests.length);
});

it('in a large one there are as many as something names together, not as many as machines times filaments', () => {
  const few = worthAPage(copied(40, 40));
  const many = worthAPage(copied(80, 80));
  expect(few.isCut).toBe(true);
  expect(many.fitted.length).toBeLessThanOrEqual(2 * few.fitted.length);
  expect(many.fitted).toContainEqual({
    ...{ machine: 'plumstead/wren', nozzle: 'hs-0.6', filament: 'oakhollow/daisy-pla' },
  });
});

it('with so many house rules that there is no room for all, the first have pages, or those that are asked for', () => {
  const registry = copied(30, 30, 1);
  const count = worthAPage(registry).fitted.length;
  const crowded = copied(30, 30, Math.ceil(20_000 / count) + 5);
  const { policies } = worthAPage(crowded);
  expect(policies.length).toBe(Math.floor(20_000 / count));
  expect(worthAPage(crowded, ['house-3']).policies).toEqual(['house-3']);
});
