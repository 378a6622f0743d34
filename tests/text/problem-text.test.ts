import { expect, test } from 'vitest';
import { problemLine, problemText } from '../../src/text/problem-text.ts';

test('a problem is what is wrong, then what to do', () => {
  const problem = { message: 'There is no machine "a"', help: 'Did you mean "b"?' };
  expect(problemText(problem)).toBe('There is no machine "a".\nDid you mean "b"?');
  expect(problemLine(problem)).toBe('There is no machine "a". Did you mean "b"?');
});

test('help in lower case is capitalised, and an example of a command stays as it is', () => {
  const problem = { message: 'a/b is no file', help: 'write, for instance: --out made' };
  expect(problemText(problem)).toBe('a/b is no file.\nWrite, for instance: --out made');
});

test('a message of several sentences gets no second full stop, and help may be empty', () => {
  expect(problemText({ message: 'Stopped. Nothing was written.', help: '' })).toBe(
    'Stopped. Nothing was written.',
  );
});
