import { type Dimension, dimensionInfo, dimensions } from '../../src/units/dimension.ts';

const common = (definition: string) => ({ $ref: `common.schema.json#/definitions/${definition}` });
const quantity = (definition: string) => ({ $ref: `quantity.schema.json#/definitions/${definition}` });

const conditions = {
  type: 'object',
  additionalProperties: false,
  minProperties: 1,
  description: 'Conditions under which the value holds; absent means that it holds in general.',
  examples: [{ machine: 'brackwater/lantern', nozzle: 'hs-0.6', nozzleTemperature: '230 Cel' }],
  properties: {
    machine: { ...common('machineRef'), description: 'On this machine.', examples: ['brackwater/lantern'] },
    nozzle: {
      ...common('nozzleRef'),
      description: 'With this nozzle of the machine.',
      examples: ['hs-0.6'],
    },
    filament: {
      ...common('filamentRef'),
      description: 'With this filament.',
      examples: ['ashgrove/stagecraft-pla'],
    },
    polymer: {
      ...common('polymerRef'),
      description: 'With filaments of this family.',
      examples: ['PLA'],
    },
    nozzleTemperature: {
      ...quantity('temperature'),
      description: 'At this nozzle temperature.',
      examples: ['230 Cel'],
      meltbounds: { label: 'nozzle temperature', plausible: 'nozzleTemperature' },
    },
    layerHeight: {
      ...quantity('length'),
      description: 'At this layer height.',
      examples: ['0.2 mm'],
      meltbounds: { label: 'layer height', plausible: 'layerHeight' },
    },
    acceleration: {
      ...quantity('acceleration'),
      description: 'At this acceleration.',
      examples: ['8000 mm/s2'],
      meltbounds: { label: 'acceleration', plausible: 'acceleration' },
    },
    batch: {
      $ref: 'common.schema.json#/definitions/shortText',
      description:
        'With filament of this batch; where it is not known which batch is printed, every one counts.',
      examples: ['26-0117'],
    },
  },
};

function statement(
  dimension: Dimension,
  form: 'single' | 'range',
): Record<string, unknown> & { readonly properties: object } {
  const valueDefinition = form === 'range' ? `${dimension}Range` : dimension;
  const example = form === 'range' ? dimensionInfo[dimension].exampleRange : dimensionInfo[dimension].example;
  return {
    type: 'object',
    additionalProperties: false,
    required: ['value', 'basis'],
    description: `A ${dimensionInfo[dimension].description} with its provenance.`,
    examples: [{ value: example, basis: 'claimed', source: 'brackwater-lantern-sheet' }],
    properties: {
      value: { ...quantity(valueDefinition), description: 'The value.', examples: [example] },
      ...(form === 'single' && {
        interval: {
          ...quantity(`${dimension}Range`),
          description: '95 % coverage interval of the value (JCGM 101).',
          examples: [dimensionInfo[dimension].exampleRange],
        },
      }),
      basis: {
        ...common('basis'),
        description:
          'What the value rests on. measured needs evidence, published and claimed a source, derived and assumed a reason.',
        examples: ['claimed'],
      },
      source: {
        ...common('sourceRef'),
        description: 'The source that states it.',
        examples: ['brackwater-lantern-sheet'],
      },
      evidence: {
        ...common('trialRef'),
        description: 'The trial whose readings show it.',
        examples: ['lantern-stagecraft-pla-230'],
      },
      readings: {
        type: 'string',
        pattern: '^[0-9a-f]{16}$',
        description:
          'Digest of the readings that the value was adopted from; `reduce --adopt` writes it, and a trial that is changed later is found.',
        examples: ['1449883bec4f859c'],
      },
      reason: {
        ...common('longText'),
        description:
          'How a derived value was calculated, why an assumed one is reasonable, or why a measured one is kept on the safe side of its interval.',
        examples: ['Shop habit for a 0.4 mm nozzle'],
      },
      locator: {
        ...common('shortText'),
        description: 'Where in the source it stands: table, section, page.',
        examples: ['Table 1.8'],
      },
      fromMemory: {
        type: 'boolean',
        const: true,
        description: 'The figure is remembered; the source named is where it should be looked up.',
        examples: [true],
      },
      at: {
        $ref: '#/definitions/conditions',
        description: conditions.description,
        examples: conditions.examples,
      },
      date: {
        ...common('date'),
        description: 'Day on which it was measured or read.',
        examples: ['2026-03-12'],
      },
      note: {
        ...common('longText'),
        description: 'More about it.',
        examples: ['Second reading with a fresh spool'],
      },
    },
  };
}

/** Dimensions of the measurements that an addition may hold. */
const addedDimensions: readonly Dimension[] = ['volumeFlow', 'speed', 'time', 'length'];

/** A statement that a trial shows, and no other. */
function measuredStatement(dimension: Dimension): object {
  const plain = statement(dimension, 'single');
  return {
    ...plain,
    required: ['value', 'basis', 'evidence'],
    properties: {
      ...plain.properties,
      basis: {
        type: 'string',
        const: 'measured',
        description: 'Only what a trial has shown may be added.',
        examples: ['measured'],
      },
    },
    examples: [
      {
        value: dimensionInfo[dimension].example,
        basis: 'measured',
        evidence: 'lantern-stagecraft-pla-230',
      },
    ],
  };
}

function measuredStatements(dimension: Dimension): object {
  return {
    ...statements(dimension, 'single'),
    description: `Measured statements of one ${dimensionInfo[dimension].description}, one entry a trial and condition.`,
    examples: [
      [
        {
          value: dimensionInfo[dimension].example,
          basis: 'measured',
          evidence: 'lantern-stagecraft-pla-230',
        },
      ],
    ],
    items: { $ref: `#/definitions/${dimension}MeasuredStatement` },
  };
}

function statements(dimension: Dimension, form: 'single' | 'range'): object {
  return {
    type: 'array',
    minItems: 1,
    maxItems: 200,
    description: `Statements of one ${dimensionInfo[dimension].description}, one entry a source and condition; different sources are compared, never averaged.`,
    examples: [
      [
        {
          value: form === 'range' ? dimensionInfo[dimension].exampleRange : dimensionInfo[dimension].example,
          basis: 'claimed',
          source: 'brackwater-lantern-sheet',
        },
      ],
    ],
    items: {
      $ref: `#/definitions/${dimension}${form === 'range' ? 'Range' : ''}Statement`,
    },
  };
}

/** The schema of statements: for each dimension a single value and a range, alone and as a list. */
export function statementSchema(): object {
  const definitions: Record<string, object> = { conditions };
  for (const dimension of dimensions) {
    for (const form of ['single', 'range'] as const) {
      const name = form === 'range' ? `${dimension}Range` : dimension;
      definitions[`${name}Statement`] = statement(dimension, form);
      definitions[`${name}Statements`] = statements(dimension, form);
    }
  }
  for (const dimension of addedDimensions) {
    definitions[`${dimension}MeasuredStatement`] = measuredStatement(dimension);
    definitions[`${dimension}MeasuredStatements`] = measuredStatements(dimension);
  }
  return {
    $schema: 'http://json-schema.org/draft-07/schema#',
    $id: 'https://meltbounds.example/schema/statement.schema.json',
    title: 'Statements',
    description: 'Quantities with their provenance. Generated from the table of dimensions; do not edit.',
    definitions,
  };
}
