/** Terms of a series or continued fraction at most; both converge within the square root of their argument or so. */
const mostTerms = 10_000;
const precision = 1e-15;

/**
 * Probability that chi-squared with whole degrees of freedom exceeds a value: the regularised upper incomplete gamma
 * function Q(ν/2, x/2), by its series below ν/2 + 1 and its continued fraction above (Abramowitz and Stegun, Handbook of
 * Mathematical Functions, 6.5.29, 6.5.31 and 26.4.19). NaN for a negative value or fewer than one degree of freedom.
 */
export function chiSquaredTail(value: number, degreesOfFreedom: number): number {
  const [a, x] = [degreesOfFreedom / 2, value / 2];
  if (!(value >= 0 && Number.isInteger(degreesOfFreedom) && degreesOfFreedom >= 1)) return Number.NaN;
  const front = Math.exp(-x + a * Math.log(x) - logGammaOfHalves(degreesOfFreedom));
  return x < a + 1 ? 1 - front * lowerSeries(a, x) : front * upperFraction(a, x);
}

/**
 * The value that chi-squared with whole degrees of freedom stays below with a probability strictly between 0 and 1, by
 * bisection to the last bits.
 */
export function chiSquaredQuantile(probability: number, degreesOfFreedom: number): number {
  let [low, high] = [0, 1];
  while (chiSquaredTail(high, degreesOfFreedom) > 1 - probability) high *= 2;
  while (high - low > 1e-13 * high) {
    const middle = (low + high) / 2;
    if (chiSquaredTail(middle, degreesOfFreedom) > 1 - probability) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Logarithm of Γ(n/2) for a whole n, from Γ(1/2) = √π or Γ(1) = 1 upwards. */
function logGammaOfHalves(n: number): number {
  let sum = n % 2 === 0 ? 0 : Math.log(Math.PI) / 2;
  for (let half = n % 2 === 0 ? 1 : 0.5; half < n / 2; half++) sum += Math.log(half);
  return sum;
}

function lowerSeries(a: number, x: number): number {
  let term = 1 / a;
  let sum = term;
  for (let n = 1; n < mostTerms && term > precision * sum; n++) {
    term *= x / (a + n);
    sum += term;
  }
  return sum;
}

/** By the modified method of Lentz. */
function upperFraction(a: number, x: number): number {
  const tiny = 1e-300;
  let b = x + 1 - a;
  let c = 1 / tiny;
  let d = 1 / b;
  let fraction = d;
  for (let n = 1; n < mostTerms; n++) {
    const factor = -n * (n - a);
    b += 2;
    d = 1 / (factor * d + b || tiny);
    c = b + factor / c || tiny;
    fraction *= d * c;
    if (Math.abs(d * c - 1) < precision) break;
  }
  return fraction;
}
