import { describe, expect, it } from 'vitest';
import { loadFiles } from '../../src/registry/load-files.ts';
import { resultMemory } from '../../src/registry/result-memory.ts';
import { formatSite, siteEntries } from '../../src/site/format-site.ts';
import { folderSiteMemory } from '../../src/site/site-memory.ts';
import { sha256Of } from '../../src/text/sha256.ts';
import { mapStore } from '../map-store.ts';
import { testDay } from '../run-command.ts';
import { replacedOnce, sampleTexts } from '../sample-texts.ts';

type Texts = ReadonlyMap<string, string>;

/** A folder with a catalogue, and the memory of its runs. */
function catalogueFolder() {
  const store = mapStore();
  let folder: Texts = new Map();
  const run = (texts: Texts, today = testDay) => {
    const before = folder;
    const known = folderSiteMemory(resultMemory(store, 'this program'), '/site', ({ path, digest }) => {
      const text = before.get(path);
      return text !== undefined && sha256Of(text) === digest;
    });
    let made = 0;
    const after = new Map<string, string>();
    for (const entry of siteEntries(registryOf(texts), today, {}, known)) {
      if ('text' in entry && isOfUnit(entry.path)) made += 1;
      after.set(entry.path, 'text' in entry ? entry.text : (before.get(entry.path) ?? 'not there'));
    }
    const wrong = known.differing(today);
    known.keep();
    folder = after;
    return { made, wrong };
  };
  return {
    run,
    files: () => folder,
    spoil: (path: string) => {
      folder = new Map([...folder, [path, 'spoilt']]);
    },
    store,
  };
}

/** Whether a file belongs to a trial or a pairing, and not to what is made each time. */
function isOfUnit(path: string): boolean {
  return /^(?:trials|pairings)\/(?!.*--find\.js$)/.test(path);
}

function registryOf(texts: Texts) {
  return loadFiles([{ folder: 'profiles', texts }]).registry;
}

function fromNothing(texts: Texts, today = testDay): Texts {
  return new Map([...formatSite(registryOf(texts), today)].map(({ path, text }) => [path, text]));
}

/** Every line moved, every name and every figure a little different. */
function changedText(text: string): string {
  const figures = text.replace(/\b(\d+\.\d+)(?= ?(?:[a-zA-Z%/]|$))/gm, '$11');
  return `# moved\n${figures.replace(/^(name|title): .*$/m, '$1: Another name')}`;
}

const sample = sampleTexts();
const profiles = [...sample.keys()].filter((path) => path.endsWith('.yaml'));

describe('a catalogue that is written again', () => {
  it('makes no page of a trial or a pairing again where nothing has changed', () => {
    const { run, files } = catalogueFolder();
    expect(run(sample).made).toBeGreaterThan(20);
    const before = files();
    expect(run(sample)).toEqual({ made: 0, wrong: [] });
    expect(files()).toEqual(before);
    expect(files()).toEqual(fromNothing(sample));
  });

  it('makes again what somebody has changed in the folder, and what another program has left', () => {
    const { run, files, spoil, store } = catalogueFolder();
    run(sample);
    const [page = ''] = [...files().keys()].filter((path) => /^trials\/.*\.html$/.test(path));
    spoil(page);
    const { made } = run(sample);
    expect(made).toBeGreaterThan(0);
    expect(files()).toEqual(fromNothing(sample));
    for (const key of store.entries.keys()) store.entries.set(key, 'another program');
    expect(run(sample).made).toBeGreaterThan(made);
  });

  it('finds out that what was left is not what the registry gives', () => {
    const { run, files, store } = catalogueFolder();
    run(sample);
    const lie = files();
    const other = catalogueFolder();
    other.run(sample);
    // Somebody who may write into both folders has put a page there with its digest.
    const [path = ''] = [...lie.keys()].filter((each) => /^trials\/.*\.html$/.test(each));
    const digest = sha256Of(lie.get(path) ?? '');
    for (const [key, entry] of store.entries) {
      const [, text = ''] = entry.split('\n');
      const changed = text.replaceAll(digest, sha256Of('spoilt'));
      store.entries.set(
        key,
        `${JSON.stringify({ program: 'this program', digest: sha256Of(changed) })}\n${changed}\n`,
      );
    }
    const days = Array.from({ length: 40 }, (_, day) => `2026-07-${String(1 + (day % 31)).padStart(2, '0')}`);
    const found = days.some((day) => {
      for (const [key, entry] of store.entries) other.store.entries.set(key, entry);
      other.spoil(path);
      return other.run(sample, day).wrong.length > 0;
    });
    expect(found).toBe(true);
  });

  it('judges by the day: an acknowledgement that has run out changes the page', () => {
    const { run, files } = catalogueFolder();
    const path = 'trials/2026/wren-daisy-pla-230.yaml';
    const stale = replacedOnce(sample.get(path) ?? '', 'firmware: 1.3.0', 'firmware: 1.1.0');
    const accepted =
      "{rule: evidence/stale-firmware, at: /firmware, found: 1.1.0, reason: Only the screen changed, until: '2026-12-31'}";
    const texts = new Map([...sample, [path, `${stale}acknowledged:\n  - ${accepted}\n`]]);
    run(texts, '2026-12-30');
    const before = files();
    expect(run(texts, '2026-12-31').made).toBe(0);
    expect(run(texts, '2027-01-01').made).toBeGreaterThan(0);
    expect(files()).toEqual(fromNothing(texts, '2027-01-01'));
    expect(files()).not.toEqual(before);
  });

  it.each(profiles)(
    'is the same as from nothing after %s has changed, or has gone',
    { tags: 'long' },
    (path) => {
      const { run, files } = catalogueFolder();
      run(sample);
      const changed = new Map([...sample, [path, changedText(sample.get(path) ?? '')]]);
      expect(changed.get(path)).not.toBe(sample.get(path));
      run(changed);
      expect(files()).toEqual(fromNothing(changed));
      const less = new Map([...sample].filter(([each]) => each !== path));
      run(less);
      expect(files()).toEqual(fromNothing(less));
      run(sample);
      expect(files()).toEqual(fromNothing(sample));
    },
  );
});
