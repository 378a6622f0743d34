import { formatCsv } from '../../text/csv.ts';
import { type BenchPlan, planHeading, plannedReadings } from './bench-plan.ts';

/** The bench sheet (RFC 4180) that `reduce` reads once the empty cells hold readings; one row a reading. */
export function formatPlanAsCsv(plan: BenchPlan): string {
  const header = [...plan.given, ...plan.read].map(planHeading);
  const rows = plannedReadings(plan).map((given) => [...given, ...plan.read.map(() => '')]);
  return formatCsv([header, ...rows]);
}
