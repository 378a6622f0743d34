import { describe, expect, it, test } from 'vitest';
import { kinds } from '../../src/registry/kind.ts';
import { type Field, fieldAt, fieldsOf } from '../../src/scaffold/field.ts';
import { schemas } from './schemas.ts';

const filament = fieldsOf('filament.schema.json', schemas);
const machine = fieldsOf('machine.schema.json', schemas);

describe('a field', () => {
  it('has the key, duty and meaning that the schema gives it', () => {
    expect(fieldAt(filament, ['diameter'])).toMatchObject({
      isMandatory: true,
      form: 'text',
      description: 'Nominal diameter of the filament.',
      example: '1.75 mm',
    });
  });

  it('says which units do, from the definition that the schema points at', () => {
    expect(fieldAt(filament, ['diameter'])?.allowed).toContain('Units: mm, um, cm, m');
  });

  it('lists the choices of a closed list, alone or as entries', () => {
    expect(fieldAt(machine, ['layout'])?.choices).toEqual(['movingBed', 'gantry', 'parallelArm', 'belt']);
    expect(fieldAt(machine, ['sensors'])?.choices).toContain('doorOpen');
  });

  it('is found by a way of keys through groups and lists', () => {
    expect(fieldAt(machine, ['hotEnds', '0', 'nozzles', 'material'])?.choices).toContain('brass');
    expect(fieldAt(machine, ['hotEnds', 'nozzle'])).toBeNull();
  });
});

const walk = (fields: readonly Field[]): Field[] => fields.flatMap((field) => [field, ...walk(field.fields)]);

test.each(kinds)('every field of a %s has a meaning and an example', (kind) => {
  const fields = walk(fieldsOf(`${kind}.schema.json`, schemas));
  expect(fields.filter(({ description, example }) => description === '' || example === undefined)).toEqual(
    [],
  );
});
