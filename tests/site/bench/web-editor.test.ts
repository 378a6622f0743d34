import { describe, expect, it } from 'vitest';
import { editorAddress, templateProblem } from '../../../src/site/bench/web-editor.ts';

const webEditor = {
  newFile: 'https://code.example/team/new/main?filename={path}&value={text}',
  editFile: 'https://code.example/team/edit/main/{path}',
};
const file = { path: 'profiles/trials/2026/a b.yaml', text: 'kind: trial\n# 5 % & more\n', isNew: true };

describe('the address of a web editor', () => {
  it('holds the path and the text of a new file', () => {
    const { address, holdsText } = editorAddress(webEditor, file);
    expect(holdsText).toBe(true);
    const { searchParams } = new URL(address);
    expect(Object.fromEntries(searchParams)).toEqual({ filename: file.path, value: file.text });
  });

  it('leaves the text to be pasted where it is long', () => {
    const { address, holdsText } = editorAddress(webEditor, { ...file, text: 'x'.repeat(9000) });
    expect(holdsText).toBe(false);
    expect(address).toBe(
      'https://code.example/team/new/main?filename=profiles/trials/2026/a%20b.yaml&value=',
    );
  });

  it('leaves the text to be pasted where a file is there already', () => {
    expect(editorAddress(webEditor, { ...file, isNew: false })).toEqual({
      address: 'https://code.example/team/edit/main/profiles/trials/2026/a%20b.yaml',
      holdsText: false,
    });
  });
});

it.each([
  [webEditor.newFile, null],
  ['http://code.example/{path}', 'does not begin with https:// and the name of a host'],
  ['javascript:alert(1)//{path}', 'does not begin with https:// and the name of a host'],
  ['https://{path}/', 'does not begin with https:// and the name of a host'],
  ['https://code.example/new', 'has no {path}'],
  ['https://code.example/{path}?{branch}', 'has {branch}, and only {path} and {text} stand for something'],
])('the template %s has the problem %j', (template, problem) => {
  expect(templateProblem(template)).toBe(problem);
});
