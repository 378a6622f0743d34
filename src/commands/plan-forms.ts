import type { BenchPlan } from '../decisions/plan/bench-plan.ts';
import { formatPlanAsJson } from '../decisions/plan/plan-as-json.ts';
import { formatPlanAsCsv, formatPlanAsTrial } from '../decisions/plan/plan-as-trial.ts';
import { planDocument, planSheetDocument } from '../decisions/plan/plan-document.ts';
import { formatDocument } from '../units/format-document.ts';
import type { CliContext } from './cli-context.ts';
import type { PlanFormat } from './shared-options.ts';

/** A plan in each of its forms. */
export const planForms = {
  text: (plan: BenchPlan, cli: CliContext) => formatDocument(planDocument(plan), 'text', cli),
  json: formatPlanAsJson,
  markdown: planSheet,
  csv: formatPlanAsCsv,
  trial: (plan: BenchPlan) => formatPlanAsTrial(plan, { in: 'trial' }),
} as const satisfies Readonly<Record<PlanFormat, unknown>>;

/** A plan as a sheet to print and fill in. */
export function planSheet(plan: BenchPlan): string {
  return formatDocument(planSheetDocument(plan), 'markdown');
}
