import { readFileSync } from 'node:fs';
import { Ajv } from 'ajv';
import formatsPlugin from 'ajv-formats';
import { describe, expect, it } from 'vitest';
import { methodNames } from '../../src/bench/method-facts.ts';
import { runCommand } from '../run-command.ts';
import { sampleRegistry } from '../sample-registry.ts';
import { staleEvidence } from '../stale-evidence.ts';

const ajv = new Ajv({ strict: true, allErrors: true, allowUnionTypes: true });
formatsPlugin.default(ajv);

function validatorOf(output: string) {
  const path = new URL(`../../schema/output/${output}.schema.json`, import.meta.url);
  return ajv.compile(JSON.parse(readFileSync(path, 'utf8')));
}

const validators = {
  plan: validatorOf('plan'),
  match: validatorOf('match'),
  claims: validatorOf('claims'),
} as const;

const pairing = ['plumstead/wren', 'oakhollow/daisy-pla'];

describe('the JSON of each decision fits its published schema:', () => {
  it.each([
    ...methodNames.map((method) => ['plan', ...pairing, '--method', method]),
    ['plan', 'plumstead/wren', 'oakhollow/clover-petg', '--nozzle', 'hs-0.4'],
    ['plan', ...pairing, '--after', 'wren-daisy-pla-215', '--width', '1 %'],
    ['plan', ...pairing, '--after', 'wren-daisy-pla-215', '--width', '30 %'],
    ['match'],
    ['match', 'oakhollow/daisy-pla'],
    ['claims', 'plumstead/wren'],
  ])('%s %s %s %s %s', async (...args) => {
    const words = args.filter((word) => word !== undefined);
    const { status, out } = await runCommand(sampleRegistry().cwd, [...words, '--format', 'json']);
    expect(status).toBe(0);
    const validate = validators[words[0] as keyof typeof validators];
    validate(JSON.parse(out));
    expect(validate.errors).toBeNull();
  });

  it.each([true, false])('with old evidence (acknowledged: %s)', async (acknowledged) => {
    for (const words of [['match'], ['claims', 'plumstead/wren']] as const) {
      const { out } = await runCommand(staleEvidence({ acknowledged }).cwd, [...words, '--format', 'json']);
      expect(out).toContain('"evidence/stale-firmware"');
      validators[words[0]](JSON.parse(out));
      expect(validators[words[0]].errors).toBeNull();
    }
  });

  it.each(Object.entries(validators))('an empty object is no %s', (_, validate) => {
    expect(validate({})).toBe(false);
  });
});
