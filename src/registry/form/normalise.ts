import type { Result } from '../../result.ts';
import { failure, success } from '../../result.ts';
import { parseMoney, parseQuantity, parseRange, parseUnit } from '../../units/parse-quantity.ts';
import type { QuantityProblem } from '../../units/quantity-problem.ts';
import { isObject, propertyShape, type QuantityShape, type Shape } from '../shape.ts';

/** Reads what is written where the schema wants a quantity: a canonical number, a range, a price or a unit code. */
export function readQuantity(written: unknown, shape: QuantityShape): Result<unknown, QuantityProblem> {
  if (shape.form === 'range') {
    const range = parseRange(written, shape.dimension);
    return range.ok ? success({ low: range.value.low, high: range.value.high }) : range;
  }
  if (shape.form === 'unit') {
    const unit = parseUnit(written, shape.dimension);
    return unit.ok ? success(unit.value.code) : unit;
  }
  if (shape.dimension === 'money') return parseMoney(written);
  const quantity = parseQuantity(written, shape.dimension);
  return quantity.ok ? success(quantity.value.value) : failure(quantity.error);
}

/**
 * Replaces every quantity of a document that its schema accepts by its value in canonical units, and tells of each that
 * cannot be read. What the schema does not know keeps out of the result.
 */
export function normalise(
  value: unknown,
  shape: Shape,
  tellUnreadable: (problem: QuantityProblem) => void,
): unknown {
  if (shape.type === 'quantity') {
    const read = readQuantity(value, shape);
    if (read.ok) return read.value;
    tellUnreadable(read.error);
    return undefined;
  }
  if (shape.type === 'list' && Array.isArray(value)) {
    return value.map((item) => normalise(item, shape.items, tellUnreadable));
  }
  if (shape.type === 'object' && isObject(value)) {
    const normalised: Record<string, unknown> = {};
    for (const key of Object.keys(value)) {
      const inner = propertyShape(shape, key);
      if (inner !== null) normalised[key] = normalise(value[key], inner, tellUnreadable);
    }
    return normalised;
  }
  return value;
}
