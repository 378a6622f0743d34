/** Squares of the first roots of J0 (Abramowitz and Stegun, Handbook of Mathematical Functions, table 9.5). */
const squaredRoots = [2.404825558, 5.52007811, 8.653727913, 11.791534439, 14.930917708, 18.071063968].map(
  (root) => root ** 2,
);
const [firstSquare = Number.NaN] = squaredRoots;
/** Below this Fourier number the series for short times is the better one. */
const shortTime = 0.02;

/** By the elapsed time in time constants, from the series. */
function cylinderSeries(elapsed: number): number {
  const fourier = elapsed / firstSquare;
  if (fourier < shortTime) {
    return 1 - 4 * Math.sqrt(fourier / Math.PI) + fourier + fourier ** 1.5 / (3 * Math.sqrt(Math.PI));
  }
  return squaredRoots.reduce((sum, square) => sum + (4 / square) * Math.exp(-square * fourier), 0);
}

/** Elapsed time from which the first term alone is within a millionth. */
const singleTerm = 4;
const [perRoot, cells] = [400, 800];
const table = Float64Array.from({ length: cells + 2 }, (_, cell) => cylinderSeries((cell / perRoot) ** 2));

/**
 * Share of the water that Fick's diffusion leaves in a long cylinder whose surface is dry, by the elapsed time in time
 * constants, 0 or more: a fast beginning, then one exponential (Crank, The Mathematics of Diffusion, 2nd ed. 1975,
 * section 5.3: the series over roots of J0, and for short times 1 - 4·√(Fo/π) + Fo + Fo^1.5/(3·√π); from memory). The
 * time constant is that of the last exponential, a²/(5.783·D). Within 2e-5, read off a table over the root of the time,
 * because a reduction asks for it a million times.
 */
export function cylinderLeft(elapsed: number): number {
  if (elapsed >= singleTerm) return (4 / firstSquare) * Math.exp(-elapsed);
  const place = perRoot * Math.sqrt(elapsed);
  const cell = Math.floor(place);
  const [below, above] = [table[cell] ?? Number.NaN, table[cell + 1] ?? Number.NaN];
  return below + (place - cell) * (above - below);
}
