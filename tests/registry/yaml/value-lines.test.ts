import { expect, test } from 'vitest';
import { shapes } from '../../../src/registry/generated/shapes.ts';
import { identityOfPath } from '../../../src/registry/kind.ts';
import { leavesOf } from '../../../src/registry/shape.ts';
import { lineOfValue } from '../../../src/registry/yaml/value-lines.ts';
import { locate, readYaml } from '../../../src/registry/yaml/yaml-document.ts';
import { sampleTexts } from '../../sample-texts.ts';

const documents = [...sampleTexts()].flatMap(([path, text]) => {
  const kind = identityOfPath(path)?.kind;
  const { document } = kind === undefined ? { document: null } : readYaml(text);
  return kind === undefined || document === null ? [] : [{ kind, document }];
});

test('every quantity of the sample registry stands in the line in which it is located', () => {
  const quantities = documents.flatMap(({ kind, document }) =>
    leavesOf('quantity', shapes[kind], document.value).map(({ path }) => ({ document, path })),
  );
  expect(quantities.length).toBeGreaterThan(100);
  for (const { document, path } of quantities)
    expect.soft(lineOfValue(document, path), path.join('/')).toBe(locate(document, path, 'value').line);
});

test.each([
  [['bed', 'limit', 1]],
  [['bed', 'limit', 7]],
  [['bed', 'none', 'deeper']],
  [['bed']],
  [['empty']],
  [['empty', 'inner']],
  [['twice']],
  [['other']],
  [[]],
])('so does %j, also where nothing stands, or a key stands twice', (path) => {
  const { document } = readYaml(
    'bed:\n  limit:\n    - 1\n    - {value: 2}\nempty:\nother: 1\ntwice: 1\ntwice: 2\n',
  );
  if (document === null) throw new Error('the text cannot be read');
  expect(lineOfValue(document, path)).toBe(locate(document, path, 'value').line);
});
