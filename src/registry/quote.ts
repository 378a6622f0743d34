import { quote as quoteText } from '../units/quantity-problem.ts';

/** Any value of a document as messages quote it: short, on one line, invisible characters escaped. */
export function quote(value: unknown): string {
  return quoteText(typeof value === 'string' ? value : (JSON.stringify(value) ?? String(value)));
}
