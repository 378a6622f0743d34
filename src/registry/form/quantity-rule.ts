import type { QuantityProblem, QuantityProblemCode } from '../../units/quantity-problem.ts';
import type { Hit } from '../hit.ts';
import type { Path } from '../shape.ts';
import { capital, placeName } from './shape-message.ts';

export type UnitsRule =
  | 'units/bare-number'
  | 'units/missing-unit'
  | 'units/unknown-unit'
  | 'units/wrong-dimension'
  | 'units/not-a-number'
  | 'units/endless-number'
  | 'units/number-form'
  | 'units/below-absolute-zero'
  | 'units/range-reversed'
  | 'units/range-expected'
  | 'units/single-expected'
  | 'units/not-text';

const ruleOfProblem: Readonly<Record<QuantityProblemCode, UnitsRule>> = {
  bareNumber: 'units/bare-number',
  missingUnit: 'units/missing-unit',
  unknownUnit: 'units/unknown-unit',
  wrongDimension: 'units/wrong-dimension',
  notANumber: 'units/not-a-number',
  endlessNumber: 'units/endless-number',
  numberForm: 'units/number-form',
  belowAbsoluteZero: 'units/below-absolute-zero',
  rangeReversed: 'units/range-reversed',
  rangeExpected: 'units/range-expected',
  singleExpected: 'units/single-expected',
  notText: 'units/not-text',
};

/** A quantity that could not be read, as a finding at its place. */
export function quantityHit(problem: QuantityProblem, path: Path): Hit & { readonly rule: UnitsRule } {
  return {
    rule: ruleOfProblem[problem.code],
    path,
    part: 'value',
    message: `${capital(placeName(path))}: ${problem.message}`,
    found: problem.found,
    allowed: problem.allowed,
    source: 'UCUM, case-sensitive codes; schema/quantity.schema.json',
    help: problem.help,
  };
}
