import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { fuzzAreas } from '../../scripts/fuzz/areas.ts';
import { type FuzzArea, fuzzArea, tried } from '../../scripts/fuzz/fuzz-area.ts';

/** Texts that have crashed something once, one file each, by the folder of their area. */
function keptTexts(area: string): (readonly [name: string, text: string])[] {
  const folder = fileURLToPath(new URL(`./${area.replaceAll(' ', '-')}/`, import.meta.url));
  if (!existsSync(folder)) return [];
  return readdirSync(folder).map((name) => [name, readFileSync(folder + name, 'utf8')] as const);
}

describe.each(fuzzAreas.map((area) => [area.name, area] as const))('%s of strangers', (name, area) => {
  test('that have crashed something once do so no longer', () => {
    const crashes = keptTexts(name).filter(([, text]) => typeof tried(area, text) !== 'boolean');
    expect(crashes.map(([file]) => file)).toEqual([]);
  });

  test('are taken as long as there is no slip in them', () => {
    expect(area.seeds.map((text) => tried(area, text))).toEqual(area.seeds.map(() => true));
  });

  test('crash nothing', { tags: 'long' }, () => {
    const { accepted, crashes } = fuzzArea(area, Math.ceil(5000 * area.share), 'test');
    expect(crashes).toEqual([]);
    expect(accepted).toBeGreaterThan(0);
  });
});

test('what crashes is caught, with the text that did it', () => {
  const area: FuzzArea = {
    name: 'letters',
    share: 1,
    seeds: ['abc'],
    take: (text) => {
      if (text.includes('b')) return true;
      throw new Error('there is no b');
    },
  };
  const { cases, accepted, crashes } = fuzzArea(area, 200, 'letters');
  expect(cases).toBe(200);
  expect(accepted).toBeGreaterThan(0);
  expect(crashes.length).toBeGreaterThan(0);
  expect(crashes.filter(({ text }) => text.includes('b'))).toEqual([]);
  const again = fuzzArea(area, 200, 'letters');
  expect(again.crashes.map(({ text }) => text)).toEqual(crashes.map(({ text }) => text));
});
