/** From here on the asymptotic expansion is exact to double precision; below it the quadrature is. */
const ASYMPTOTIC_FROM = 25;
/** Points of the quadrature over half a period: its error is J_64(25), about 1e-19. */
const QUADRATURE_POINTS = 16;
const NEWTON_STEPS = 8;

/**
 * Bessel function of the first kind and order 0, for x >= 0 (dimensionless), to about 1e-15 absolute.
 * Source: NIST Digital Library of Mathematical Functions, 10.9.1 with the midpoint rule of 3.5(i), which converges
 * geometrically on a periodic integrand; Hankel's expansion 10.17.3 from x = 25.
 */
export function besselJ0(x: number): number {
  return x < ASYMPTOTIC_FROM
    ? meanOverQuarterTurn((sine) => Math.cos(x * sine))
    : hankelExpansion(0, x, x - Math.PI / 4);
}

/** Bessel function of the first kind and order 1, for x >= 0 (dimensionless), to about 1e-15 absolute. Source: as `besselJ0`. */
export function besselJ1(x: number): number {
  return x < ASYMPTOTIC_FROM
    ? meanOverQuarterTurn((sine) => sine * Math.sin(x * sine))
    : hankelExpansion(1, x, x - (3 * Math.PI) / 4);
}

/**
 * The first positive zeros of J0, ascending.
 * Source: McMahon's expansion (NIST DLMF 10.21(vi)) as the start, then Newton's method with J0' = -J1 (10.6.3).
 */
export function zerosOfBesselJ0(count: number): number[] {
  while (zerosOfJ0.length < count) {
    const start = mcMahonZero(0, zerosOfJ0.length);
    zerosOfJ0.push(newton(start, (x) => besselJ0(x) / -besselJ1(x)));
  }
  return zerosOfJ0.slice(0, count);
}

/** Each is found once: every temperature of a filament asks for the same ones. */
const zerosOfJ0: number[] = [];

/**
 * The first positive zeros of J1, ascending.
 * Source: as `zerosOfBesselJ0`, with J1' = J0 - J1/x (NIST DLMF 10.6.2).
 */
export function zerosOfBesselJ1(count: number): number[] {
  return Array.from({ length: count }, (_, index) => {
    const start = mcMahonZero(1, index);
    return newton(start, (x) => besselJ1(x) / (besselJ0(x) - besselJ1(x) / x));
  });
}

const SINES = Array.from({ length: QUADRATURE_POINTS }, (_, index) =>
  Math.sin(((index + 0.5) * Math.PI) / (2 * QUADRATURE_POINTS)),
);

function meanOverQuarterTurn(integrand: (sine: number) => number): number {
  let sum = 0;
  for (const sine of SINES) sum += integrand(sine);
  return sum / QUADRATURE_POINTS;
}

function hankelExpansion(order: 0 | 1, x: number, phase: number): number {
  const mu = 4 * order ** 2;
  let term = 1;
  const parts: [even: number, odd: number] = [1, 0];
  for (let k = 1; Math.abs(term) > Number.EPSILON / 8; k += 1) {
    term *= (mu - (2 * k - 1) ** 2) / (8 * k * x);
    const sign = k % 4 < 2 ? 1 : -1;
    parts[k % 2 === 0 ? 0 : 1] += sign * term;
  }
  return Math.sqrt(2 / (Math.PI * x)) * (parts[0] * Math.cos(phase) - parts[1] * Math.sin(phase));
}

function mcMahonZero(order: 0 | 1, index: number): number {
  const beta = Math.PI * (index + 0.75 + order / 2);
  return beta - (4 * order ** 2 - 1) / (8 * beta);
}

function newton(start: number, step: (x: number) => number): number {
  let x = start;
  for (let i = 0; i < NEWTON_STEPS; i += 1) {
    x -= step(x);
  }
  return x;
}
