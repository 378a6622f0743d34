/** @module-tag long */
import { describe, expect, it } from 'vitest';
import { reductionQuestion, resultsOf } from '../../src/bench/reduce-trial.ts';
import { filesOfFolders } from '../../src/host/load-registry.ts';
import { threadsOfMachine } from '../../src/host/threads.ts';
import { linkFiles } from '../../src/registry/load-files.ts';
import { profileOfSound, readSoundProfile } from '../../src/registry/read-profile.ts';

const worker = new URL('../../out/cli.cjs', import.meta.url);
const files = filesOfFolders(['profiles'], []);
const loaded = linkFiles(files);

describe.each([1, 2, 3])('%i threads', (count) => {
  const threads = threadsOfMachine(count, worker);

  it('reduce as one does', async () => {
    const { registry } = loaded;
    const inputs = [...registry.trial.values()]
      .filter(({ data }) => data.method !== 'flowLadder')
      .flatMap(({ id }) => {
        const question = reductionQuestion(registry, id);
        return question.ok ? [question.value.inputs] : [];
      });
    expect(inputs.length).toBeGreaterThan(8);
    const reduced = await threads.reduce(inputs);
    expect(reduced).toEqual(inputs.map((each) => JSON.stringify(resultsOf(each))));
  });

  it('parse as one does', async () => {
    const texts = files.flatMap(({ file }) =>
      file.ok ? [[file.source.text, file.source.relativePath] as const] : [],
    );
    const broken = [...texts, ['kind: machine\nid: [', 'machines/a/b.yaml'] as const];
    const parsed = await threads.parse(broken);
    expect(parsed).toEqual(broken.map(([text, path]) => readSoundProfile(text, path)));
    expect(parsed.at(-1)).toBeNull();
  });

  it('has nothing to do for nothing', async () => {
    expect(await threads.reduce([])).toEqual([]);
  });
});

it('a profile that another thread has parsed is the one that is parsed here', () => {
  const again = linkFiles(files, ({ file, readSibling }) => {
    if (!file.ok) throw new Error(file.path);
    const sound = structuredClone(readSoundProfile(file.source.text, file.source.relativePath));
    if (sound === null) throw new Error(`${file.source.path} is not sound`);
    return profileOfSound(file.source, sound, (name) => readSibling(`trials/2026/${name}`));
  });
  const shown = ({ registry }: typeof loaded) =>
    registry.profiles.map(({ kind, id, data, written, attachment }) => [
      kind,
      id,
      data,
      written,
      attachment?.ok,
    ]);
  expect(shown(again)).toEqual(shown(loaded));
});
