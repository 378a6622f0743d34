import { studentTDistribution } from '../../statistics/student-t.ts';

/** How often one of all readings of a sound sheet may seem doubtful by chance (common practice, no source). */
const mostFalse = 0.005;

/**
 * Probability that one of so many sound readings is that far off, in standard deviations that are known to some degrees of
 * freedom (Student's t, with Bonferroni's correction for choosing the farthest; JCGM 100:2008, G.3).
 */
export function chanceOf(deviations: number, degreesOfFreedom: number, readings: number): number {
  return 2 * readings * studentTDistribution(-Math.abs(deviations), degreesOfFreedom);
}

/** Whether chance explains it. */
export function isUnlikely(chance: number): boolean {
  return chance < mostFalse;
}
