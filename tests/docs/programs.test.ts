import { expect, test } from 'vitest';
import { blocksOf } from '../../scripts/docs/document-blocks.ts';
import { documentPaths, readDocument } from '../../scripts/docs/documents.ts';
import { compilePrograms } from '../../scripts/docs/programs.ts';
import { runDocument } from '../../scripts/docs/run-document.ts';
import { temporaryFolder } from '../sample-registry.ts';

/** The programs of the documents, by page and line; `commands-in-docs.test.ts` runs them. */
const programs = new Map(
  documentPaths().flatMap((path) =>
    blocksOf(readDocument(path))
      .filter(({ language }) => language === 'ts')
      .map(({ text, line }) => [`${path.replaceAll('/', '-')}-${line}`, text] as const),
  ),
);

test('the programs that documents show compile', { tags: 'long' }, () => {
  expect(programs.size).toBeGreaterThan(5);
  expect(compilePrograms(programs, temporaryFolder())).toBe('');
});

test('a program that does not compile is told', () => {
  const wrong = "import { beadArea } from 'meltbounds/physics';\nconsole.log(beadArea('0.2 mm', 0.4));\n";
  const said = compilePrograms(new Map([['wrong', wrong]]), temporaryFolder());
  expect(said).toMatch(/^wrong\.mts\(2,22\): error TS2345/);
});

test('there is a program for every group that the package exports', () => {
  const { exports } = JSON.parse(readDocument('package.json')) as { exports: Record<string, unknown> };
  const groups = Object.keys(exports)
    .filter((name) => typeof exports[name] === 'object')
    .map((name) => name.replace('.', 'meltbounds'));
  const texts = [...programs.values()];
  expect(groups.filter((group) => !texts.some((text) => text.includes(`from '${group}'`)))).toEqual([]);
});

test.each([
  ['throws', "throw new Error('no')"],
  ['imports what is no group', "console.log(await import('meltbounds/src/core.ts'))"],
])('a program that %s is reported with its line', async (_, text) => {
  const { failures } = await runDocument(`# Page\n\n\`\`\`ts\n${text};\n\`\`\`\n`, temporaryFolder());
  expect(failures).toEqual([expect.stringMatching(/^line 3: the program ended with 1:/)]);
});

test('an output block below a program belongs to it', async () => {
  const text = "```ts\nconsole.log('new');\n```\n\n```text\nold\n```\n";
  const { outputs } = await runDocument(text, temporaryFolder());
  expect(outputs.map(({ printed }) => printed)).toEqual(['new\n']);
});
