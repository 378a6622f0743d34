import type { Method } from '../bench/method.ts';
import { dimensionInfo } from '../units/dimension.ts';
import type { Field } from './field.ts';

/** The fields of a trial of one method: what it must name is mandatory, and its readings have its columns only. */
export function trialFields(fields: readonly Field[], method: Method): readonly Field[] {
  const demanded = method.requiredKeys.reduce((known, { path }) => withMandatory(known, path), fields);
  return demanded.map((field) => (field.key === 'observations' ? withColumns(field, method) : field));
}

function withMandatory(fields: readonly Field[], [key, ...rest]: readonly string[]): readonly Field[] {
  return fields.map((field) => {
    if (field.key !== key) return field;
    if (rest.length === 0) return { ...field, isMandatory: true };
    const inner = withMandatory(field.fields, rest);
    return { ...field, isMandatory: true, fields: inner, example: mandatoryExamples(inner) };
  });
}

function mandatoryExamples(fields: readonly Field[]): Record<string, unknown> {
  const mandatory = fields.filter(({ isMandatory }) => isMandatory);
  return Object.fromEntries(mandatory.map(({ key, example }) => [key, example]));
}

function withColumns(observations: Field, { columns, optional = [], eitherOf = [] }: Method): Field {
  const others = eitherOf.flatMap((group) => group.slice(1));
  const names = Object.keys(columns).filter((name) => !optional.includes(name) && !others.includes(name));
  const isNeeded = (name: string) => !optional.includes(name) && !eitherOf.flat().includes(name);
  const example = {
    columns: Object.fromEntries(names.map((name) => [name, unitOf(columns[name])])),
    rows: [names.map((name) => numberOf(columns[name]))],
  };
  return {
    ...observations,
    example,
    fields: observations.fields.map((field) => {
      if (field.key === 'rows') return { ...field, example: example.rows };
      if (field.key !== 'columns') return field;
      const known = field.fields
        .filter(({ key }) => Object.hasOwn(columns, key))
        .map((column) => ({ ...column, isMandatory: isNeeded(column.key) }));
      return { ...field, example: example.columns, fields: known };
    }),
  };
}

type ColumnDimension = Method['columns'][string] | undefined;

function unitOf(dimension: ColumnDimension): string {
  return dimension === undefined ? '1' : dimensionInfo[dimension].usualUnit;
}

function numberOf(dimension: ColumnDimension): number {
  return dimension === undefined ? 0 : Number.parseFloat(dimensionInfo[dimension].example);
}
