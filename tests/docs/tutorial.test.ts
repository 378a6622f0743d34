import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { readDocument } from '../../scripts/docs/documents.ts';
import { checkShape } from '../../src/registry/form/check-shape.ts';

test('the trial that the tutorial types in a web editor fits the schema', () => {
  const [, indented = ''] = /^ {3}```yaml\n([\s\S]*?)^ {3}```/m.exec(readDocument('docs/tutorial.md')) ?? [];
  const trial: unknown = parse(indented);
  expect(trial).toMatchObject({ kind: 'trial', method: 'flowLadder' });
  expect(checkShape('trial', trial).hits).toEqual([]);
});
