import { type Problem, type Result, refusal, success } from '../result.ts';
import type { Dimension } from '../units/dimension.ts';
import { parseQuantity } from '../units/parse-quantity.ts';

/** The value of an option in the canonical unit of its dimension; undefined where it is not given. */
export function measureOption(
  option: string,
  text: string | undefined,
  dimension: Dimension,
): Result<number | undefined, Problem> {
  if (text === undefined) return success(undefined);
  const parsed = parseQuantity(text, dimension);
  if (parsed.ok) return success(parsed.value.value);
  const { code, message, help } = parsed.error;
  return refusal(code, `${option}: ${message}`, help);
}
