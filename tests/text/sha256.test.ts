import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sha256Of } from '../../src/text/sha256.ts';

test('the digest of any text is that of Node', () => {
  const text = fc.string({ unit: 'binary', maxLength: 300 });
  fc.assert(
    fc.property(
      text,
      (given) => sha256Of(given) === createHash('sha256').update(given, 'utf8').digest('hex'),
    ),
  );
});

test('half of a surrogate pair is digested as Node does', () => {
  expect(sha256Of('a\uD800b')).toBe(createHash('sha256').update('a\uD800b', 'utf8').digest('hex'));
});
