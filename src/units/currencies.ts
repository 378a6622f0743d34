/** A currency: its ISO 4217:2015 alphabetic code and the symbols that belong to it alone. */
interface Currency {
  readonly code: string;
  readonly symbols: readonly string[];
}

// `$`, `¥` and `kr` stand for several currencies each, so they are not read.
const symbols: Readonly<Record<string, readonly string[]>> = {
  EUR: ['€'],
  GBP: ['£'],
  PLN: ['zł'],
  CZK: ['Kč'],
  INR: ['₹'],
  KRW: ['₩'],
};

const codes =
  'EUR USD GBP CHF JPY CAD AUD NZD SEK NOK DKK ISK PLN CZK HUF RON BGN TRY UAH ILS CNY HKD TWD KRW SGD INR THB MYR IDR PHP BRL MXN ARS CLP COP ZAR AED SAR EGP';

/** The closed list of currencies that a price may be in. */
export const currencies: readonly Currency[] = codes
  .split(' ')
  .map((code) => ({ code, symbols: symbols[code] ?? [] }));
