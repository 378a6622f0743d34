/** @module-tag long */
import { describe, expect, it, vi } from 'vitest';
import { filesOfFolders } from '../../src/host/load-registry.ts';
import { type FileWithSiblings, linkFiles, parseFile } from '../../src/registry/load-files.ts';
import { profileMemory } from '../../src/registry/profile-memory.ts';
import { pathOfFile } from '../../src/registry/registry-file.ts';
import { resultMemory } from '../../src/registry/result-memory.ts';
import { sourceText } from '../../src/registry/source-text.ts';
import { sha256Of } from '../../src/text/sha256.ts';
import { mapStore } from '../map-store.ts';

const demo = filesOfFolders(['profiles'], []);
const machine = 'profiles/machines/brackwater/lantern.yaml';
const ladder = 'profiles/trials/2026/lantern-stagecraft-pla-230.yaml';

/** The demo with a file whose text is another one. */
function edited(path: string, edit: (text: string) => string): FileWithSiblings[] {
  return demo.map((each) => {
    if (!each.file.ok || each.file.source.path !== path) return each;
    const { relativePath, text } = each.file.source;
    expect(edit(text)).not.toBe(text);
    return { ...each, file: { ok: true, source: sourceText(path, relativePath, edit(text)) } };
  });
}

/** Reads files as a run does, and tells which of them it has parsed. */
function run(store: ReturnType<typeof mapStore>, files: readonly FileWithSiblings[]) {
  const profiles = profileMemory(files, resultMemory(store, 'p1'));
  const parse = vi.fn(parseFile);
  const loaded = linkFiles(files, profiles.recalling(parse));
  profiles.keep();
  return { profiles, loaded, parsed: parse.mock.calls.map(([{ file }]) => pathOfFile(file)) };
}

const contents = ({ registry, findings }: ReturnType<typeof linkFiles>) => ({
  written: registry.documents.map(({ kind, id, written, source }) => ({ kind, id, written, source })),
  data: registry.profiles.map(({ data, attachment }) => ({ data, attachment })),
  findings,
});

/** Changes what is remembered, and its digests so that they fit. */
function falsify(store: ReturnType<typeof mapStore>, change: (text: string) => string): void {
  for (const [key, entry] of store.entries) {
    const [, text = ''] = entry.split('\n');
    const other = change(text);
    store.entries.set(key, `${JSON.stringify({ program: 'p1', digest: sha256Of(other) })}\n${other}\n`);
  }
}

describe('a memory of profiles', () => {
  it('gives the registry that parsing all of it gives, and parses nothing', () => {
    const store = mapStore();
    expect(run(store, demo).parsed).toHaveLength(demo.length);
    const again = run(store, demo);
    expect(again.parsed).toEqual([]);
    expect(contents(again.loaded)).toEqual(contents(linkFiles(demo)));
    expect(again.profiles.differing('2026-06-01')).toEqual([]);
  });

  it('parses the one file that has changed, and remembers it too', () => {
    const store = mapStore();
    run(store, demo);
    const files = edited(machine, (text) => text.replace('maker: Brackwater', 'maker: Brackwaters'));
    const changed = run(store, files);
    expect(changed.parsed).toEqual([machine]);
    expect(contents(changed.loaded)).toEqual(contents(linkFiles(files)));
    expect(run(store, files).parsed).toEqual([]);
  });

  it.each([
    ['is found fault with', machine, (text: string) => text.replace('maker:', 'makr:')],
    ['is no YAML', machine, (text: string) => `${text}\n: [`],
    ['holds what JSON cannot write', ladder, (text: string) => text.replace(/- \[\d+,/, '- [-0,')],
  ])('parses a file again that %s', (_, path, edit) => {
    const store = mapStore();
    const files = edited(path, edit);
    run(store, files);
    const again = run(store, files);
    expect(again.parsed).toEqual([path]);
    expect(contents(again.loaded)).toEqual(contents(linkFiles(files)));
  });

  it('names a profile that somebody has changed with its digest, and recalls nothing any longer', () => {
    const store = mapStore();
    run(store, demo);
    falsify(store, (text) => text.replaceAll('"data":{', '"data":{"maker":"nobody",'));
    const { profiles } = run(store, demo);
    const [wrong] = profiles.differing('2026-06-01');
    expect(demo.map(({ file }) => pathOfFile(file))).toContain(wrong);
    expect(contents(linkFiles(demo, profiles.recalling()))).toEqual(contents(linkFiles(demo)));
    profiles.keep();
    expect(run(store, demo).profiles.differing('2026-06-01')).toEqual([]);
  });

  it.each([
    ['a list', () => '[]'],
    ['no profiles', (text: string) => text.replaceAll('"value":{', '"values":{')],
    ['profiles of no kind', (text: string) => text.replaceAll(/\{"kind":"\w+","id"/g, '{"kind":"oven","id"')],
  ])('takes nothing from an entry that holds %s', (_, change) => {
    const store = mapStore();
    run(store, demo);
    falsify(store, change);
    const again = run(store, demo);
    expect(again.parsed).toHaveLength(demo.length);
    expect(contents(again.loaded)).toEqual(contents(linkFiles(demo)));
  });
});
