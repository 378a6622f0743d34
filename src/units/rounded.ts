/**
 * A number to six significant digits, unless told otherwise: more than any bench can tell, few enough that the last
 * bits in which machines differ do not show.
 */
export function rounded(value: number, digits = 6): number {
  return Number(value.toPrecision(digits));
}

/** A quantity as JSON for programs holds it. */
export interface Amount {
  readonly value: number;
  /** UCUM code, or ISO 4217 code of a currency. */
  readonly unit: string;
}

/** A quantity for programs, to six significant digits. */
export function amountOf(value: number, unit: string): Amount {
  return { value: rounded(value), unit };
}
