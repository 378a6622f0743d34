/** How the water left falls with time, as a share of the water at the start; `elapsed` is in time constants. */
export interface DryingShape {
  readonly left: (elapsed: number) => number;
  /** The elapsed time, in time constants, at which a share above 0 and below 1 is left. */
  readonly elapsedAt: (left: number) => number;
}

/** One exponential from the start: what a spool follows whose windings dry one another. */
export const exponentialShape: DryingShape = {
  left: (elapsed) => Math.exp(-elapsed),
  elapsedAt: (left) => -Math.log(left),
};

/** Squares of the first roots of J0 (Abramowitz and Stegun, Handbook of Mathematical Functions, table 9.5). */
const squaredRoots = [2.404825558, 5.52007811, 8.653727913, 11.791534439, 14.930917708, 18.071063968].map(
  (root) => root ** 2,
);
const [firstSquare = Number.NaN] = squaredRoots;
/** Below this Fourier number the series for short times is the better one. */
const shortTime = 0.02;

/**
 * Fick's diffusion out of a long cylinder whose surface is dry: a fast beginning, then the same exponential
 * (Crank, The Mathematics of Diffusion, 2nd ed. 1975, section 5.3: the series over roots of J0, and for short times
 * 1 - 4·√(Fo/π) + Fo + Fo^1.5/(3·√π); from memory). The time constant is that of the last exponential, a²/(5.783·D).
 */
export const cylinderShape: DryingShape = { left: cylinderLeft, elapsedAt: cylinderElapsedAt };

function cylinderLeft(elapsed: number): number {
  if (elapsed <= 0) return 1;
  const fourier = elapsed / firstSquare;
  if (fourier < shortTime) {
    return 1 - 4 * Math.sqrt(fourier / Math.PI) + fourier + fourier ** 1.5 / (3 * Math.sqrt(Math.PI));
  }
  return squaredRoots.reduce((sum, square) => sum + (4 / square) * Math.exp(-square * fourier), 0);
}

function cylinderElapsedAt(left: number): number {
  // The cylinder is never wetter than one exponential from the start, so that its time lies below that of the latter.
  let [low, high] = [0, -Math.log(left)];
  for (let halving = 0; halving < 45; halving++) {
    const middle = (low + high) / 2;
    if (cylinderLeft(middle) > left) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
