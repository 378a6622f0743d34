import { describe, expect, test } from 'vitest';
import { migrateText } from '../../../src/registry/migrations/migrate-text.ts';
import { presentCode, renamedRules } from '../../../src/registry/migrations/renamed-rules.ts';
import { rules } from '../../../src/rules/engine/rules.ts';

const changed = (text: string) => {
  const migrated = migrateText(text);
  return migrated.ok ? migrated.value : migrated.error.message;
};

const accepting = (...codes: readonly string[]) =>
  `kind: machine
# Both seen on the bench.
acknowledged:
${codes.map((code) => `  - {rule: ${code}, at: /topSpeed/0, reason: Seen, until: '2026-12-31'}  # by Ida\n`).join('')}`;

describe('0002', () => {
  test('gives every acknowledged rule the code of today, and leaves all else', () => {
    const old = accepting('plausibility/strand-feed', 'plausibility/run-up', '"evidence/far-below"');
    expect(changed(old)).toEqual({
      text: accepting('plausibility/filament-feed', 'plausibility/run-up', '"evidence/far-below-interval"'),
      applied: ['0002'],
    });
  });

  test('concerns every kind', () => {
    const text = accepting('plausibility/strand-feed').replace('machine', 'filament');
    expect(changed(text)).toMatchObject({ applied: ['0002'] });
  });

  test('keeps line ends', () => {
    const old = accepting('consistency/name').replaceAll('\n', '\r\n');
    expect(changed(old)).toMatchObject({
      text: accepting('consistency/name-material').replaceAll('\n', '\r\n'),
    });
  });

  test('does nothing the second time', () => {
    const text = accepting('consistency/name-material');
    expect(changed(text)).toEqual({ text, applied: [] });
  });

  test.each([
    ['an unknown code', accepting('evidence/no-such-rule')],
    ['a code that is only mentioned', 'kind: machine\nname: consistency/name\n'],
    ['acknowledgements that are no list', 'kind: machine\nacknowledged: {rule: consistency/name}\n'],
    ['entries that are no mappings', 'kind: machine\nacknowledged: [consistency/name, null]\n'],
  ])('leaves %s as it is', (_, text) => {
    expect(changed(text)).toEqual({ text, applied: [] });
  });

  test('leaves a code that is written in escapes to a person', () => {
    expect(changed(accepting('"consistency\\/name"'))).toEqual(
      expect.stringContaining('"acknowledged.0.rule" could not be changed without touching more'),
    );
  });
});

describe('renamed rules', () => {
  const codes = rules.map(({ code }) => code);

  test('lead to rules that there are', () => {
    expect(Object.values(renamedRules).filter((code) => !codes.includes(code))).toEqual([]);
  });

  test('give their old codes to no other rule', () => {
    expect(Object.keys(renamedRules).filter((code) => codes.includes(code))).toEqual([]);
  });

  test('are only those in the table', () => {
    expect(presentCode('constructor')).toBeNull();
    expect(presentCode('units/bare-number')).toBeNull();
  });
});
