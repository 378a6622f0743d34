import type { Method } from '../bench/method.ts';
import { type MethodName, methodNames } from '../bench/method-facts.ts';
import { dimensionInfo } from '../units/dimension.ts';
import type { Field } from './field.ts';

/** Keys of a trial of any method; what is only written later, such as acknowledged findings, is none of them. */
const always = [
  'kind',
  'id',
  'method',
  'origin',
  'date',
  'operator',
  'filament',
  'batch',
  'observations',
  'notice',
];

const room = ['conditions.ambientTemperature', 'conditions.relativeHumidity'];
const printed = [
  ...room,
  'conditions.bedTemperature',
  'conditions.chamberTemperature',
  'conditions.layerHeight',
  'conditions.printSpeed',
  'conditions.fan',
];

/** What else trials of a method may say that helps to read them later. */
const worthNoting: Readonly<Record<MethodName, readonly string[]>> = {
  flowLadder: [...room, 'conditions.bedTemperature', 'conditions.chamberTemperature', 'firmware'],
  diameterSurvey: room,
  temperatureSweep: [...printed, 'firmware'],
  contourLadder: [...printed, 'conditions.acceleration', 'firmware'],
  layerTime: [...printed, 'firmware'],
  dryingCurve: [...room, 'machine'],
  soundLevel: [
    'conditions.printSpeed',
    'conditions.fan',
    'conditions.nozzleTemperature',
    'nozzle',
    'firmware',
  ],
  referencePrint: [...printed, 'settings', 'scale', 'firmware'],
  motionTiming: ['conditions.ambientTemperature', 'firmware'],
  settingLadder: [...printed, 'conditions.acceleration', 'firmware'],
  setPointCheck: ['conditions.ambientTemperature', 'nozzle', 'firmware'],
};

/**
 * The fields of a trial of one method: its own keys alone, what it must name mandatory, and the columns that it reads. The
 * batch and the instruments are asked for, too: what a limit is worth depends on them.
 */
export function trialFields(fields: readonly Field[], method: Method): readonly Field[] {
  const stated = Object.entries(method.facts).filter(([, { statedIn }]) => statedIn === 'trial');
  const needed = stated.filter(([name]) => method.requiredFacts.includes(name));
  const demanded = [
    ...method.requiredKeys.map(({ path }) => path),
    ...needed.map(([, fact]) => wayOf(fact.place)),
  ];
  const ways = [
    ...demanded.map((path) => path.join('.')),
    ...stated.map(([, { place }]) => wayOf(place).join('.')),
    ...worthNoting[method.method],
  ];
  const own = ownFields(fields, [...always, ...ways]);
  return demanded
    .reduce((known, path) => withMandatory(known, path), own)
    .map((field) => (field.key === 'observations' ? withColumns(field, method) : field))
    .map((field) => (isAsked(field) ? { ...field, isAsked: true as const } : field))
    .map((field) => withoutOtherMethods(field, method.method));
}

/** Keys to a place such as `scale: {resolution}`. */
function wayOf(place: string): string[] {
  return place.split(/[^a-zA-Z]+/).filter((key) => key !== '');
}

/** The fields that ways lead to; a field that a way goes through keeps what is on some way only, or what it cannot do without. */
function ownFields(fields: readonly Field[], ways: readonly string[]): readonly Field[] {
  return fields.flatMap((field) => {
    const inner = ways.filter((way) => way.startsWith(`${field.key}.`));
    if (ways.includes(field.key)) return [field];
    if (inner.length === 0) return [];
    if (field.key !== 'conditions') return [field];
    return [
      {
        ...field,
        fields: ownFields(
          field.fields,
          inner.map((way) => way.slice(field.key.length + 1)),
        ),
      },
    ];
  });
}

/** Instruments, and the batch. */
function isAsked({ key, fields }: Field): boolean {
  return key === 'batch' || fields.some((inner) => inner.key === 'resolution');
}

/** Descriptions without what they say of other methods. */
function withoutOtherMethods(field: Field, method: MethodName): Field {
  const others = methodNames.filter((name) => name !== method);
  const clauses = field.description.split(/(?<=[.;,]) /);
  const kept = clauses.filter((clause) => !others.some((name) => clause.includes(name))).join(' ');
  return {
    ...field,
    description: kept === '' ? field.description : kept.replace(/[.;,:]$/, '.'),
    allowed: field.key === 'method' ? '' : field.allowed,
    fields: field.fields.map((inner) => withoutOtherMethods(inner, method)),
  };
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
      const description = field.description.replace(/(?<=\.) .*$/s, '');
      return { ...field, description, example: example.columns, fields: known };
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
