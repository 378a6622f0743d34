/** Coefficients of a quotient of two polynomials, lowest power first. */
interface Quotient {
  readonly above: readonly number[];
  readonly below: readonly number[];
}

const centre: Quotient = {
  above: [3.3871327179, 50.434271938, 159.29113202, 59.10937472],
  below: [1, 17.895169469, 78.757757664, 67.1875636],
};
const tail: Quotient = {
  above: [1.4234372777, 2.75681539, 1.3067284816, 0.17023821103],
  below: [1, 0.7370016425, 0.12021132975],
};
const farTail: Quotient = {
  above: [6.657905115, 3.081226386, 0.42868294337, 0.017337203997],
  below: [1, 0.24197894225, 0.012258202635],
};

/**
 * The quantile of the standard normal distribution at a probability between 0 and 1, to about seven digits
 * (Wichura, "Algorithm AS 241: The percentage points of the normal distribution", Applied Statistics 37 (1988)
 * 477-484, PPND7).
 */
export function normalQuantile(probability: number): number {
  const away = probability - 0.5;
  if (Math.abs(away) <= 0.425) return away * quotientAt(centre, 0.180625 - away * away);
  const root = Math.sqrt(-Math.log(away < 0 ? probability : 1 - probability));
  const size = root <= 5 ? quotientAt(tail, root - 1.6) : quotientAt(farTail, root - 5);
  return away < 0 ? -size : size;
}

function quotientAt({ above, below }: Quotient, argument: number): number {
  return polynomial(above, argument) / polynomial(below, argument);
}

function polynomial(coefficients: readonly number[], argument: number): number {
  let value = 0;
  for (let power = coefficients.length - 1; power >= 0; power--) {
    value = value * argument + (coefficients[power] ?? 0);
  }
  return value;
}
