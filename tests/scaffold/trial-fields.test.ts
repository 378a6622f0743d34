import { describe, expect, it, test } from 'vitest';
import { methodNames } from '../../src/bench/method-facts.ts';
import { benchMethods } from '../../src/bench/methods.ts';
import { loadFolders } from '../../src/host/load-registry.ts';
import { type Field, fieldsOf } from '../../src/scaffold/field.ts';
import { formatNewProfile } from '../../src/scaffold/scaffold.ts';
import { trialFields } from '../../src/scaffold/trial-fields.ts';
import { schemas } from './schemas.ts';

const every = fieldsOf('trial.schema.json', schemas);
const fieldsFor = (method: (typeof methodNames)[number]) => trialFields(every, benchMethods[method]);
const keysOf = (fields: readonly Field[]) => fields.map(({ key }) => key);
const inside = (fields: readonly Field[], key: string) =>
  fields.find((field) => field.key === key)?.fields ?? [];

const { registry } = loadFolders(['profiles']);

describe('a new trial of a method', () => {
  test.each(methodNames)('%s has every key that trials of the demo give', (method) => {
    const fields = fieldsFor(method);
    const later = ['acknowledged', 'fieldNotes'];
    for (const { data, id } of registry.trial.values()) {
      if (data.method !== method) continue;
      const missing = Object.keys(data).filter((key) => ![...keysOf(fields), ...later].includes(key));
      expect({ id, missing }).toEqual({ id, missing: [] });
      const conditions = keysOf(inside(fields, 'conditions'));
      expect({
        id,
        unknown: Object.keys(data.conditions).filter((key) => !conditions.includes(key)),
      }).toEqual({
        id,
        unknown: [],
      });
    }
  });

  test.each(methodNames)('%s has nothing of the other methods', (method) => {
    const others = methodNames.filter((name) => name !== method);
    const text = formatNewProfile(
      { kind: 'trial', fields: fieldsFor(method), answers: { kind: 'trial', method }, schemaPath: 'x' },
      schemas,
    );
    expect(
      others.filter((name) => new RegExp(`\\b${name} \\(|\\b(?:a|of a|of an) ${name}\\b`).test(text)),
    ).toEqual([]);
    expect(text.split('\n').length).toBeLessThan(220);
  });

  it('of a flow ladder is a page, with its scale and without a clock', () => {
    const fields = fieldsFor('flowLadder');
    expect(keysOf(fields)).toContain('scale');
    for (const key of ['clock', 'gauge', 'checkedPart', 'residualMoisture'])
      expect(keysOf(fields)).not.toContain(key);
  });

  it('must name what its method cannot reduce without', () => {
    const isMandatory = (fields: readonly Field[], key: string) =>
      fields.find((field) => field.key === key)?.isMandatory;
    expect(isMandatory(fieldsFor('setPointCheck'), 'checkedPart')).toBe(true);
    expect(isMandatory(fieldsFor('dryingCurve'), 'residualMoisture')).toBe(true);
    expect(isMandatory(inside(fieldsFor('flowLadder'), 'conditions'), 'nozzleTemperature')).toBe(true);
    expect(isMandatory(fieldsFor('flowLadder'), 'batch')).toBe(false);
  });
});
