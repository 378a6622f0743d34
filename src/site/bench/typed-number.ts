/** A number as it is typed at a bench: a comma or a point before the decimals, nothing between thousands. */
const typed = /^[+-]?(?:\d+[.,]?\d*|[.,]\d+)$/;

/** What a cell holds: nothing yet, a number with the digits that were typed and a decimal point, or something else. */
type TypedCell =
  | { readonly kind: 'empty' }
  | { readonly kind: 'number'; readonly text: string }
  | { readonly kind: 'other' };

export function readTyped(cell: string): TypedCell {
  const text = cell.trim();
  if (text === '') return { kind: 'empty' };
  return typed.test(text) ? { kind: 'number', text: text.replace(',', '.') } : { kind: 'other' };
}
