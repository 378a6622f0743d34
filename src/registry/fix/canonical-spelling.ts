import { looseNumber, rewriteNumber } from '../../units/number-problem.ts';
import { parseQuantity, parseRange, parseUnit } from '../../units/parse-quantity.ts';
import type { QuantityProblemCode } from '../../units/quantity-problem.ts';
import { cutAtDots } from '../../units/range-form.ts';
import type { QuantityShape } from '../shape.ts';

/** How a quantity should be spelled, and whether it is understood as it is. */
export interface Spelling {
  readonly canonical: string;
  readonly isReadable: boolean;
}

/**
 * The canonical spelling of a text that can mean one quantity only: `75 mm3/s` for `75mm³/s`, and for `+75. mm3/s`,
 * whose number is not read but leaves no doubt. Null for any other text.
 */
export function canonicalSpelling(written: string, shape: QuantityShape): Spelling | null {
  const read = spell(written, shape);
  if ('canonical' in read) return { canonical: read.canonical, isReadable: true };
  if (read.problem !== 'numberForm') return null;
  const again = spell(withPlainNumbers(written, shape), shape);
  return 'canonical' in again ? { canonical: again.canonical, isReadable: false } : null;
}

function spell(
  written: string,
  { form, dimension }: QuantityShape,
): { readonly canonical: string } | { readonly problem: QuantityProblemCode } {
  if (form === 'unit') {
    const unit = parseUnit(written, dimension);
    return unit.ok ? { canonical: unit.value.code } : { problem: unit.error.code };
  }
  const read = form === 'range' ? parseRange(written, dimension) : parseQuantity(written, dimension);
  return read.ok ? { canonical: read.value.canonicalSpelling } : { problem: read.error.code };
}

function withPlainNumbers(written: string, { form }: QuantityShape): string {
  const parts = form === 'range' ? cutAtDots(written) : undefined;
  return parts === undefined
    ? withPlainNumber(written)
    : `${withPlainNumber(parts.left)}..${withPlainNumber(parts.right)}`;
}

/** A sign, digits and at most one point: nothing that reads differently in another country. */
const undoubted = /^[+\-\u2212]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/;

/** The text with the number at its start in the form that is read, if no doubt is left about its value. */
function withPlainNumber(written: string): string {
  const text = written.trim();
  const number = looseNumber(text);
  const [plain, other] = undoubted.test(number) ? rewriteNumber(number) : [];
  const isSame =
    plain !== undefined && other === undefined && Number(plain) === Number(number.replace('\u2212', '-'));
  return isSame ? plain + text.slice(number.length) : text;
}
