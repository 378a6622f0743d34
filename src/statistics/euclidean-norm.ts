/**
 * Length of a vector, √(Σ x²): scaled by its largest entry, so that no square leaves what a number can hold, and with a
 * compensated sum (Kahan, Communications of the ACM 8 (1965) 40). `Math.hypot` leaves its last digits to each engine, and
 * takes ten times as long.
 */
export function euclideanNorm(vector: readonly number[]): number {
  let largest = 0;
  for (const entry of vector) {
    const size = Math.abs(entry);
    if (!(size <= largest)) largest = size;
  }
  if (largest === 0 || !Number.isFinite(largest)) return largest;
  let sum = 0;
  let lost = 0;
  for (const entry of vector) {
    const share = Math.abs(entry) / largest;
    const term = share * share - lost;
    const next = sum + term;
    lost = next - sum - term;
    sum = next;
  }
  return Math.sqrt(sum) * largest;
}
