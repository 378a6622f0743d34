import { tableCautions } from '../../knowledge/cautions.ts';
import type { Registry } from '../../registry/registry.ts';
import { quote } from '../../text/quote.ts';
import { type Dimension, dimensionInfo } from '../../units/dimension.ts';
import { formatNumber, formatQuantity } from '../../units/format-quantity.ts';
import { tableTitle } from '../write/table-as-json.ts';
import type { Calculation, Term } from './calculation.ts';
import { rowAddress } from './row-address.ts';
import { sourcedValueText } from './sourced-value-text.ts';
import type { Bound, SpeedRow, SpeedTable } from './speed-table.ts';

/**
 * The arithmetic of a row, line by line, as text: each formula with its numbers, where every number comes from, what
 * binds and what would bind next, and the rounding. Numbers in formulas are in the canonical units of their terms.
 */
export function formatRowExplanation(registry: Registry, table: SpeedTable, row: SpeedRow): string {
  const blocks = [
    [`${rowAddress(row)}  ${tableTitle(table)}`],
    [bindingText(row)],
    ...row.sizes.map((step) => calculation(registry, step.what, step)),
    ['What each bound allows, the least first:'],
    ...row.bounds.map((bound, index) => calculation(registry, boundTitle(bound, index), bound)),
    ...row.results.map((step) => calculation(registry, step.what, step)),
    temperature(registry, table, row),
    ...(row.flags.length > 0 ? [[`Flags: ${row.flags.join(', ')}`]] : []),
    [...table.warnings, ...tableCautions].map((sentence) => `- ${sentence}`),
  ];
  return `${blocks.map((lines) => lines.join('\n')).join('\n\n')}\n`;
}

function boundTitle(bound: Bound, index: number): string {
  const { name, what, basis, isOutright, share, allowed } = bound;
  const used = isOutright ? 'used whole' : `${value(share, 'ratio')} of it ${value(allowed, 'speed')}`;
  const role = index === 0 ? '  <- binds' : index === 1 ? '  <- next' : '';
  return `${name}: ${what}; ${basis ?? 'a house rule'}; ${used}${role}`;
}

function bindingText({ speed, bound, basis, runnerUp }: SpeedRow): string {
  const next =
    runnerUp === null
      ? 'nothing else is known to bound it'
      : `next is ${runnerUp.name}, which allows ${formatNumber(100 * runnerUp.slack, { significantDigits: 3 })} % more`;
  return `${value(speed, 'speed')}, limited by ${bound}, ${basis === null ? 'a house rule' : `on a number that is ${basis}`}; ${next}.`;
}

function calculation(registry: Registry, title: string, step: Calculation): string[] {
  const result = value(step.exact, step.dimension);
  const isBare = step.terms.some(({ symbol }) => symbol === step.formula);
  const filled = isBare ? '' : ` = ${filledIn(step.formula, step.terms)}`;
  return [
    title,
    `  ${step.symbol} = ${step.formula}${filled} = ${result}`,
    ...(step.rounded === null ? [] : [`  ${roundingText(step.rounded, step.dimension)}`]),
    ...step.terms.map((term) => termText(registry, term)),
    ...(step.fittedTo ?? []).map(
      (ground) =>
        `    fitted to ${value(Number(ground.value), ground.dimension)}: ${sourcedValueText(registry, ground)}`,
    ),
    ...(step.rounded === null ? [] : [`    step: ${sourcedValueText(registry, step.rounded.step)}`]),
  ];
}

/** The formula with its terms as numbers; names of functions and pi stay. */
function filledIn(formula: string, terms: readonly Term[]): string {
  return formula.replace(/[A-Za-z][A-Za-z0-9]*/g, (symbol) => {
    const term = terms.find((each) => each.symbol === symbol);
    return term === undefined ? symbol : formatNumber(term.value, { significantDigits: 6 });
  });
}

function roundingText(
  { direction, step, value: rounded }: NonNullable<Calculation['rounded']>,
  dimension: Dimension,
): string {
  const size = typeof step.value === 'number' ? value(step.value, dimension) : '';
  return `rounded ${direction} in steps of ${size}: ${value(rounded, dimension)}`;
}

const origins = {
  above: 'from above',
  asked: 'as asked for',
  fitted: 'as fitted',
  solved: 'such that this flow comes out',
} as const;

function termText(
  registry: Registry,
  { symbol, what, value: number, dimension, ground, origin: from = 'above' }: Term,
): string {
  const origin = ground === null ? origins[from] : sourcedValueText(registry, ground);
  return `    ${symbol} = ${value(number, dimension)}, ${what}: ${origin}`;
}

function temperature(registry: Registry, table: SpeedTable, row: SpeedRow): string[] {
  const limits = table.meltLimits.map(
    ({ nozzleTemperature, value: flow, ground }) =>
      `    ${value(nozzleTemperature, 'temperature')}: ${value(flow, 'volumeFlow')}: ${sourcedValueText(registry, ground)}`,
  );
  const title =
    row.feature === 'firstLayer'
      ? 'nozzle temperature: that of the first layer; limits are known at'
      : `nozzle temperature of the table: ${table.largestFlow.chosenBy}; limits are known at`;
  return [title, `  T = ${value(row.nozzleTemperature, 'temperature')}`, ...limits];
}

/** As people of the trade write it, to 6 digits. */
function value(number: number, dimension: Dimension | null): string {
  if (dimension === null) return formatNumber(number, { significantDigits: 6 });
  const unit = dimensionInfo[dimension].usualUnit;
  return quote(formatQuantity(number, dimension, { unit, significantDigits: 6 }));
}
