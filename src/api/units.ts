export type { Money, Range } from '../units/canonical.ts';
export { type Dimension, type DimensionInfo, dimensionInfo, dimensions } from '../units/dimension.ts';
export { formatNumber, formatQuantity, formatRange, type QuantityFormat } from '../units/format-quantity.ts';
export { inPrint } from '../units/in-print.ts';
export { parseMoney, parseQuantity, parseUnit, type Quantity } from '../units/parse-quantity.ts';
export { parseRange, type QuantityRange } from '../units/parse-range.ts';
export type { QuantityProblem, QuantityProblemCode } from '../units/quantity-problem.ts';
export { type Unit, unitsOf } from '../units/unit-table.ts';
