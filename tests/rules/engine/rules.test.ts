import { describe, expect, expectTypeOf, test } from 'vitest';
import type { FileRule } from '../../../src/registry/form/file-rule.ts';
import type { UnitsRule } from '../../../src/registry/form/quantity-rule.ts';
import type { ShapeRule } from '../../../src/registry/form/shape-message.ts';
import type { YamlProblem } from '../../../src/registry/yaml/yaml-problem.ts';
import { ruleOf, rules, rulesByClass } from '../../../src/rules/engine/rules.ts';
import type { RuleCode } from '../../../src/rules/generated/rule-files.ts';

type FormCode = Extract<RuleCode, `${'file' | 'shape' | 'syntax' | 'units'}/${string}`>;

describe('the rules', () => {
  test('explain every code that reading can give, and no other error of form', () => {
    expectTypeOf<FormCode>().toEqualTypeOf<FileRule | ShapeRule | UnitsRule | YamlProblem['rule']>();
  });

  test('are found by their code', () => {
    expect(ruleOf('units/bare-number')).toMatchObject({ code: 'units/bare-number', judges: 'form' });
  });

  test('stand in their classes, each once', () => {
    const listed = [...rulesByClass()].flatMap(([name, members]) =>
      members.map(({ code }) => [name, code.split('/')[0]]),
    );
    expect(listed).toHaveLength(rules.length);
    expect(listed.filter(([name, own]) => name !== own)).toEqual([]);
  });
});
