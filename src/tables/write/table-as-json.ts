import { tableCautions } from '../../knowledge/cautions.ts';
import { quirkFacts } from '../../knowledge/quirk-words.ts';
import { jsonText } from '../../text/json-text.ts';
import type { Dimension } from '../../units/dimension.ts';
import { dimensionInfo } from '../../units/dimension.ts';
import { clean } from '../../units/round-to-step.ts';
import { sourcedValuesIn } from '../derive/calculation.ts';
import type { ConditionRow } from '../derive/conditions/condition-row.ts';
import type { SourcedValue } from '../derive/sourced-value.ts';
import type { Bound, HouseCap, SpeedRow, SpeedTable, TableInput } from '../derive/speed-table.ts';
import { cellOf, tableColumns } from './columns.ts';

/** Version of the form of the JSON tables: it grows when a program that reads them must change. */
const tableFormat = 'meltbounds-tables/2';

/** The table as JSON, as `schema/tables.schema.json` describes it: every quantity an object of value and unit. */
export function formatTableAsJson(table: SpeedTable): string {
  return jsonText(jsonTable(table));
}

/** The same before it is written. */
export function jsonTable(table: SpeedTable): Record<string, unknown> {
  return {
    format: tableFormat,
    machine: table.machine,
    nozzle: { id: table.nozzle, diameter: { value: table.nozzleDiameter, unit: 'mm' } },
    filament: table.filament,
    policy: table.policy,
    temperatures: {
      print: quantity(table.temperatures.print, 'temperature'),
      firstLayer: quantity(table.temperatures.firstLayer, 'temperature'),
      chosenBy: table.largestFlow.chosenBy,
    },
    largestFlow: jsonLargestFlow(table.largestFlow),
    caps: table.caps.map(jsonCap),
    rows: table.rows.map(jsonRow),
    conditions: table.conditions.map(jsonCondition),
    sourcedValues: Object.fromEntries(
      table.sourcedValues.map((ground) => [ground.key, jsonSourcedValue(ground)]),
    ),
    warnings: table.warnings,
    cautions: tableCautions,
    quirks: table.quirks.map(quirkFacts),
    origin: table.origin,
    inputs: jsonInputs(table),
  };
}

function jsonLargestFlow({
  limit,
  interval,
  usable,
  basis,
  acceptedDeficit,
  trials,
  isSimulated,
  isInterpolated,
  note,
}: SpeedTable['largestFlow']): Record<string, unknown> {
  return {
    limit: quantity(limit, 'volumeFlow'),
    ...(interval !== null && {
      interval: { low: clean(interval.low), high: clean(interval.high), unit: unitOf('volumeFlow') },
    }),
    usable: quantity(usable, 'volumeFlow'),
    basis,
    ...(acceptedDeficit !== null && { acceptedDeficit: quantity(acceptedDeficit, 'ratio') }),
    isSimulated,
    isInterpolated,
    ...(note !== null && { note }),
    trials,
  };
}

function jsonCap({ feature, speed, acceleration, reason }: HouseCap): Record<string, unknown> {
  return {
    feature,
    ...(speed !== null && { speed: quantity(speed, 'speed') }),
    ...(acceleration !== null && { acceleration: quantity(acceleration, 'acceleration') }),
    reason,
  };
}

function jsonRow(row: SpeedRow): Record<string, unknown> {
  const { runnerUp, bounds, sizes, results } = row;
  const cells = tableColumns
    .map((column) => [column, column.key === 'flags' ? row.flags : cellOf(row, column)] as const)
    .filter(([, cell]) => cell !== '');
  return {
    ...Object.fromEntries(
      cells.map(([{ key, unit }, cell]) => [key, unit === null ? cell : { value: cell, unit }]),
    ),
    ...(runnerUp !== null && {
      runnerUp: { bound: runnerUp.name, slack: quantity(runnerUp.slack, 'ratio') },
    }),
    bounds: bounds.map(jsonBound),
    quirks: row.quirks,
    settings: keysOf([...sizes, ...results].flatMap(sourcedValuesIn)),
  };
}

function jsonBound(bound: Bound): Record<string, unknown> {
  const { name, speed, share, allowed, basis } = bound;
  return {
    bound: name,
    speed: quantity(speed, 'speed'),
    share: quantity(share, 'ratio'),
    allowed: quantity(allowed, 'speed'),
    ...(basis !== null && { basis }),
    sourcedValues: keysOf(sourcedValuesIn(bound)),
  };
}

function jsonCondition({
  name,
  flow,
  window,
  isStated,
  ofFamily,
  unit,
  sourcedValues,
  flags,
  note,
}: ConditionRow): Record<string, unknown> {
  return {
    condition: name,
    ...(flow !== null && { flow: quantity(flow, 'volumeFlow') }),
    isStated,
    ...(window !== null && { low: window.low, high: window.high }),
    ...(ofFamily !== null && { ofFamily }),
    unit,
    sourcedValues: keysOf(sourcedValues),
    flags,
    ...(note !== '' && { note }),
  };
}

function keysOf(sourcedValues: readonly SourcedValue[]): string[] {
  return [...new Set(sourcedValues.map(({ key }) => key))];
}

function jsonSourcedValue({
  what,
  value,
  dimension,
  interval,
  ...rest
}: SourcedValue): Record<string, unknown> {
  const { basis, source, locator, reason, evidence } = rest;
  const optional = { basis, source, locator, evidence, reason };
  return {
    what,
    ...(typeof value === 'number'
      ? quantity(value, dimension)
      : { low: value.low, high: value.high, unit: unitOf(dimension) }),
    ...(interval !== null && {
      interval: { low: interval.low, high: interval.high, unit: unitOf(dimension) },
    }),
    ...Object.fromEntries(Object.entries(optional).filter(([, text]) => text !== null)),
  };
}

function quantity(value: number, dimension: Dimension): { value: number; unit: string } {
  return { value: clean(value), unit: unitOf(dimension) };
}

/** UCUM code of the unit that the program calculates in; no table holds money, which has none. */
function unitOf(dimension: Dimension): string {
  return dimensionInfo[dimension].canonicalUnit ?? '1';
}

/** The inputs with their versions and whole digests. */
export function jsonInputs({ inputs }: Pick<SpeedTable, 'inputs'>): Record<string, unknown>[] {
  return inputs.map(({ kind, id, version, digest }: TableInput) => ({
    kind,
    id,
    ...(version !== null && { version }),
    sha256: digest,
  }));
}

/** What a table is called: the pairing and the policy. */
export function tableTitle({ machine, nozzle, filament, policy }: SpeedTable): string {
  return `${filament} on ${machine}, nozzle ${nozzle}, policy ${policy}`;
}
