import { chmodSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { KeptCode } from '../../src/host/kept-code.ts';

let folder: string;
let kept: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'meltbounds-kept-'));
  kept = join(folder, 'kept');
  writeFileSync(join(folder, 'sum.cjs'), 'exports.sum = (a, b) => a + b;');
  writeFileSync(
    join(folder, 'main.cjs'),
    "const { sum } = require('./sum.cjs'); const { sep } = require('node:path'); module.exports = { three: sum(1, 2), sep };",
  );
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** Loads the program as a run does, and ends the run. */
function run(place: string | null = kept, spent = 100): unknown {
  const code = new KeptCode(place);
  const exported = code.load(join(folder, 'main.cjs'));
  code.keep(spent);
  return exported;
}

const keptFiles = () => readdirSync(kept).sort();
const writtenAt = () => keptFiles().map((name) => statSync(join(kept, name)).ino);

test('a module gets what it asks for, of the program and of Node', () => {
  expect(run()).toEqual({ three: 3, sep: expect.any(String) });
});

test('what the engine has made of every part is kept, and serves the next run', () => {
  run();
  expect(keptFiles()).toEqual(['longest', 'main.bin', 'sum.bin']);
  const before = writtenAt();
  expect(run()).toMatchObject({ three: 3 });
  expect(writtenAt()).toEqual(before);
});

test('a longer run that knows no more writes how long it was, and nothing else', () => {
  run();
  const [, ...before] = writtenAt();
  run(kept, 1000);
  expect(writtenAt().slice(1)).toEqual(before);
  expect(readFileSync(join(kept, 'longest'), 'utf8')).toBe('1000');
});

test('runs that are no longer are not asked what they know', () => {
  run(kept, 1000);
  const before = writtenAt();
  run(kept, 1200);
  expect(writtenAt()).toEqual(before);
});

test('a length that is no number counts as none', () => {
  run();
  writeFileSync(join(kept, 'longest'), 'long');
  run(kept, 50);
  expect(readFileSync(join(kept, 'longest'), 'utf8')).toBe('50');
});

test('a long run that knows much more writes it', () => {
  const many = Array.from({ length: 50 }, (_, index) => `(x) => { let y = x; y += ${index}; return y * x; }`);
  writeFileSync(join(folder, 'main.cjs'), `module.exports = [${many.join(',')}];`);
  run();
  const before = statSync(join(kept, 'main.bin')).size;
  const code = new KeptCode(kept);
  for (const each of code.load(join(folder, 'main.cjs')) as ((x: number) => number)[]) each(2);
  code.keep(1000);
  expect(statSync(join(kept, 'main.bin')).size).toBeGreaterThan(1.1 * before);
});

test.each([
  ['nothing', ''],
  ['something else', 'not what an engine makes'],
  ['half of it', null],
])('%s in its place is replaced', (what, content) => {
  const [path, program] = [join(kept, 'main.bin'), join(folder, 'main.cjs')];
  writeFileSync(program, `module.exports = '${what}';`);
  run();
  const whole = readFileSync(path);
  writeFileSync(path, content ?? whole.subarray(0, whole.length / 2));
  // Within one process the engine remembers a text that it has seen.
  writeFileSync(program, `module.exports = '${what.toUpperCase()}';`);
  expect(run()).toBe(what.toUpperCase());
  expect(readFileSync(path).length).toBe(whole.length);
});

test('a folder that nobody can write is no error', () => {
  writeFileSync(kept, 'a file where the folder would be');
  expect(run()).toMatchObject({ three: 3 });
  chmodSync(folder, 0o555);
  expect(run(join(folder, 'elsewhere'))).toMatchObject({ three: 3 });
  chmodSync(folder, 0o755);
});

test('where none is to be kept, none is', () => {
  expect(run(null)).toMatchObject({ three: 3 });
  expect(readdirSync(folder).sort()).toEqual(['main.cjs', 'sum.cjs']);
});
