import { describe, expect, it } from 'vitest';
import { reducingOnce } from '../../src/bench/reducing-once.ts';
import { loadFolders } from '../../src/host/load-registry.ts';
import { loadFiles } from '../../src/registry/load-files.ts';
import type { Registry } from '../../src/registry/registry.ts';
import { checkRegistry } from '../../src/rules/engine/check-registry.ts';
import type { Reach } from '../../src/rules/engine/rule.ts';
import { judgingRules } from '../../src/rules/engine/rules.ts';
import { exampleRegistry } from '../example-registry.ts';
import { testDay } from '../run-command.ts';

const reaches: readonly Reach[] = ['profile', 'neighbours', 'registry'];
const farther = (one: Reach, other: Reach) => (reaches.indexOf(one) > reaches.indexOf(other) ? one : other);

/** A registry that tells how it is asked: looking an id up is a question about a neighbour, everything else about all. */
function watched(registry: Registry, tell: (reach: Reach) => void): Registry {
  const watchedMap = (map: ReadonlyMap<string, unknown>) =>
    new Proxy(map, {
      get(target, key) {
        tell(key === 'get' || key === 'has' ? 'neighbours' : 'registry');
        const value: unknown = Reflect.get(target, key);
        return typeof value === 'function' ? value.bind(target) : value;
      },
    });
  return new Proxy(registry, {
    get(target, key) {
      const value: unknown = Reflect.get(target, key);
      if (value instanceof Map) return watchedMap(value);
      tell(key === 'broken' ? 'neighbours' : 'registry');
      return value;
    },
  });
}

/** How far a rule looks when it judges everything in a registry. */
function reachIn(registry: Registry, rule: (typeof judgingRules)[number]): Reach {
  let reach: Reach = 'profile';
  const tell = (seen: Reach) => {
    reach = farther(seen, reach);
  };
  const reduce = reducingOnce(registry);
  const context = {
    registry: watched(registry, tell),
    today: testDay,
    reduce: (trial: string) => {
      tell('neighbours');
      return reduce(trial);
    },
  };
  if (rule.judges === 'document') {
    for (const document of registry.documents) for (const _ of rule.check(document, context));
    return reach;
  }
  for (const profile of registry.profiles) {
    if (rule.kinds?.includes(profile.kind) ?? true) for (const _ of rule.check(profile, context));
  }
  return reach;
}

const demo = loadFolders(['profiles']);

/** Rules that look beyond the profile in cases that neither the demo nor their examples hold. */
const seldomFar = ['consistency/foreign-condition', 'provenance/own-sheet', 'safety/unsensed-chamber'];

describe.each(judgingRules)('$code', (rule) => {
  it('looks as far as it says, and no farther', () => {
    const { texts } = exampleRegistry(rule.example, rule.example.bad);
    const sample = loadFiles([{ folder: '', texts }]).registry;
    const seen = [demo.registry, sample].map((registry) => reachIn(registry, rule)).reduce(farther);
    expect(farther(seen, rule.reach)).toBe(rule.reach);
    if (!seldomFar.includes(rule.code)) expect(seen).toBe(rule.reach);
  });
});

/** The demo with a slip here and there: what is wrong in one file must not depend on which others are judged. */
function slipped() {
  const texts = new Map(demo.texts);
  const edit = (file: string, from: string | RegExp, to: string) => {
    const text = texts.get(file) ?? '';
    const edited = text.replace(from, to);
    if (edited === text) throw new Error(`${file} does not hold ${from}`);
    texts.set(file, edited);
  };
  edit('profiles/filaments/ashgrove/stagecraft-pla.yaml', /value: 46 mm3\/s/, 'value: 64 mm3/s');
  edit('profiles/machines/brackwater/lantern.yaml', /^maker:/m, 'makr:');
  edit('profiles/trials/2026/lantern-stagecraft-pla-230.yaml', /^filament: .*$/m, 'filament: ashgrove/none');
  edit('profiles/jobs/mask-rack.yaml', /^id: .*$/m, 'id: mask-rak');
  edit('profiles/machines/brackwater/lantern.yaml', '65 W', '15 W');
  edit('profiles/filaments/ashgrove/stagecraft-petg.yaml', / g\/cm3/, '0 g/cm3');
  edit('profiles/trials/2026/lantern-stagecraft-pla-210.csv', /(\d)\.(\d+)$/gm, '$1,$2');
  const paths = [...texts].map(([path, text]) => [path.replace(/^profiles\//, ''), text] as const);
  return loadFiles([{ folder: 'profiles', texts: new Map(paths) }]);
}

describe('a file that is judged alone', { tags: 'long' }, () => {
  it.each([
    ['the demo', () => demo],
    ['the demo with slips', slipped],
  ])('has the findings that it has among all of %s', (_, load) => {
    const loaded = load();
    const all = checkRegistry(loaded, { today: testDay });
    for (const file of loaded.files) {
      const alone = checkRegistry(loaded, { today: testDay, wants: (path) => path === file });
      const own = (found: typeof all) => found.filter((finding) => finding.file === file);
      expect(own(alone)).toEqual(own(all));
    }
    if (loaded !== demo) expect(new Set(all.map(({ file }) => file)).size).toBeGreaterThan(4);
  });
});
