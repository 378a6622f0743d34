/**
 * The Student t quantile: P(T <= t) = probability for real degrees of freedom > 0, probability strictly between 0 and 1.
 * A two-sided factor t_p as in GUM table G.2 is the quantile at (1 + p)/2. Found by bisection on the distribution
 * function, to about 1e-11 relative (1e-8 for
 * infinitely many degrees of freedom, the normal distribution).
 */
export function studentTQuantile(probability: number, degreesOfFreedom: number): number {
  if (!(probability > 0 && probability < 1 && degreesOfFreedom > 0))
    throw new RangeError('outside of the distribution');
  if (probability < 0.5) return -studentTQuantile(1 - probability, degreesOfFreedom);
  let low = 0;
  let high = 1;
  while (studentTDistribution(high, degreesOfFreedom) < probability) high *= 2;
  while (high - low > 1e-13 * high) {
    const middle = (low + high) / 2;
    if (studentTDistribution(middle, degreesOfFreedom) < probability) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Beyond this the t and the normal distribution agree to 1e-8 and rounding would cost more. */
const LARGEST = 1e8;

/** P(T <= t) for Student's t (NIST Digital Library of Mathematical Functions, 8.17; Abramowitz and Stegun, 26.7.1). */
export function studentTDistribution(t: number, degreesOfFreedom: number): number {
  if (degreesOfFreedom > LARGEST) return studentTDistribution(t, LARGEST);
  const square = t * t;
  const tail =
    square < degreesOfFreedom
      ? 0.5 - 0.5 * incompleteBeta(square / (degreesOfFreedom + square), 0.5, degreesOfFreedom / 2)
      : 0.5 * incompleteBeta(degreesOfFreedom / (degreesOfFreedom + square), degreesOfFreedom / 2, 0.5);
  return t < 0 ? tail : 1 - tail;
}

/** The regularised incomplete beta function I_x(a, b), one of a and b being 1/2, by DLMF 8.17.22 and 8.17.4. */
function incompleteBeta(x: number, a: number, b: number): number {
  if (x > (a + 1) / (a + b + 2)) return 1 - incompleteBeta(1 - x, b, a);
  const front = Math.exp(a * Math.log(x) + b * Math.log1p(-x)) / betaOfHalf(a === 0.5 ? b : a);
  return front / (a * betaFraction(x, a, b));
}

/** Lentz's evaluation of the continued fraction (Thompson and Barnett, J. Comput. Phys. 64 (1986) 490). */
function betaFraction(x: number, a: number, b: number): number {
  const tiny = 1e-300;
  let value = 1;
  let front = 1;
  let back = 0;
  for (let index = 1; index <= 1000; index++) {
    const half = Math.floor(index / 2);
    const term =
      index % 2 === 1
        ? (-(a + half) * (a + b + half) * x) / ((a + 2 * half) * (a + 2 * half + 1))
        : (half * (b - half) * x) / ((a + 2 * half - 1) * (a + 2 * half));
    back = 1 / (1 + term * back || tiny);
    front = 1 + term / front || tiny;
    const change = front * back;
    value *= change;
    if (Math.abs(change - 1) < 1e-15) break;
  }
  return value;
}

/**
 * The beta function of a and 1/2 as √π divided by Γ(a + 1/2)/Γ(a): the ratio's asymptotic series
 * (DLMF 5.11.13) after raising a above 200 by the recurrence of Γ, so that no large logarithms cancel.
 */
function betaOfHalf(a: number): number {
  let factor = 1;
  let argument = a;
  while (argument < 200) {
    factor *= argument / (argument + 0.5);
    argument += 1;
  }
  const inverse = 1 / argument;
  const series = 1 - inverse * (1 / 8 - inverse * (1 / 128 + inverse * (5 / 1024 - (21 / 32768) * inverse)));
  return Math.sqrt(Math.PI) / (factor * Math.sqrt(argument) * series);
}
