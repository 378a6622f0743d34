import { describe, expect, test } from 'vitest';
import { documentPaths, projectFolder, readDocument } from '../../scripts/docs/documents.ts';
import { runCommand } from '../run-command.ts';

const cwd = projectFolder;
const help = async (...args: string[]) => (await runCommand(cwd, [...args, '--help'])).out;
const [, commandList = ''] = /^Commands:\n(.*?)\n\n/ms.exec(await help()) ?? [];
const commands = [...commandList.matchAll(/^ {2}([a-z]+)/gm)].flatMap(([, name = '']) =>
  name === 'help' ? [] : [name],
);
const optionsOf = new Map<string, Set<string>>();
for (const name of commands) optionsOf.set(name, optionNames(await help(name)));
const allOptions = new Set([
  '--help',
  '--version',
  ...[...optionsOf.values()].flatMap((names) => [...names]),
]);

test("the README's table names every command of the help, and no other", () => {
  const rows = [...readDocument('README.md').matchAll(/^\| `([a-z]+)[ `]/gm)].map(([, name = '']) => name);
  expect(commands).toContain('check');
  expect(rows.filter((name, index) => rows.indexOf(name) === index).sort()).toEqual(commands.toSorted());
});

describe('every option that a document names exists:', () => {
  test.each(documentPaths())('%s', (path) => {
    expect(unknownOptions(readDocument(path))).toEqual([]);
  });
});

test.each([
  ['`--nonsense`', ['--nonsense']],
  ['`diff main --fix`', ['diff --fix']],
  ['```sh\nnpx meltbounds reduce x --adopt --all\n```', ['reduce --all']],
  ['`git switch --create`, `--adopt`', []],
])('finds in %s %j', (text, unknown) => {
  expect(unknownOptions(text)).toEqual(unknown);
});

/** Options of ours that no command has: in command lines those of their command, by themselves those of any. */
function unknownOptions(markdown: string): string[] {
  const spans = [...markdown.matchAll(/`([^`\n]+)`/g)].map(([, span = '']) => span);
  const lines = [...markdown.matchAll(/^ *npx meltbounds [^\n]*$/gm)].map(([line]) => line.trim());
  // Those of a script of this project, as a command line above shows it.
  const others = optionNames((markdown.match(/^npm run .*$/gm) ?? []).join('\n'));
  return [...spans, ...lines].flatMap((text) => {
    const [first = '', ...rest] = text.replace(/^(?:npx )?meltbounds /, '').split(' ');
    const known =
      optionsOf.get(first) ?? (first.startsWith('--') ? new Set([...allOptions, ...others]) : undefined);
    if (known === undefined) return [];
    const named = optionNames([first, ...rest].join(' '));
    return [...named]
      .filter((option) => !known.has(option))
      .map((option) => (optionsOf.has(first) ? `${first} ${option}` : option));
  });
}

function optionNames(text: string): Set<string> {
  return new Set([...text.matchAll(/(?<![\w-])--[a-z][a-z-]*/g)].map(([name]) => name));
}
