import type { ReducedResult, Reduction } from '../../bench/reduction.ts';
import { tableCautions } from '../../knowledge/cautions.ts';
import type { Origin } from '../../knowledge/origin.ts';
import { jsonText } from '../../text/json-text.ts';
import { dimensionInfo } from '../../units/dimension.ts';
import type { SheetReading } from './sheet-facts.ts';

/** Version of the form of the JSON reductions, see `schema/output/reduction.schema.json`. */
const reductionFormat = 'meltbounds-reduction/1';

/**
 * What a reduction found, for programs: quantities in the canonical unit of their dimension. `origin` says what behind it is
 * simulated or invented; null where that is not known, as of a bare sheet. `sheet` is the sheet that was read, and stands
 * there as it was understood.
 */
export function formatReductionAsJson(
  { method, results, warnings }: Reduction,
  origin: Origin | null = null,
  sheet?: SheetReading,
): string {
  const content = {
    format: reductionFormat,
    method,
    origin,
    ...(sheet !== undefined && { sheet: jsonSheet(sheet) }),
    results: results.map(jsonResult),
    warnings,
    cautions: tableCautions,
  };
  return jsonText(content);
}

function jsonSheet({ encoding, separator, decimal, observations, columns, notes, remarks }: SheetReading) {
  return {
    encoding,
    separator,
    decimal,
    rows: observations.rows.length,
    columns: columns.map(({ head, heading }) => ({
      heading,
      name: head?.name ?? null,
      unit: head?.unit.code ?? null,
    })),
    notes: notes.map(({ row, text }) => ({ line: row, text })),
    remarks,
  };
}

function jsonResult({ quantity, dimension, value, interval, censored, at }: ReducedResult) {
  const unit = dimensionInfo[dimension].canonicalUnit;
  const { low, high, coverage } = interval;
  return {
    quantity,
    value: { value, unit },
    interval: { low, high, unit, coverage },
    censored,
    ...(at && { at: { acceleration: { value: at.acceleration, unit: 'mm/s2' } } }),
  };
}
