import { type BenchPlan, plannedReadings } from './bench-plan.ts';

/** Version of the form of the JSON plans, see `schema/output/plan.schema.json`. */
const planFormat = 'meltbounds-plan/1';

/** A plan for programs. */
export function formatPlanAsJson(plan: BenchPlan): string {
  const document = {
    format: planFormat,
    method: plan.method,
    title: plan.title,
    date: plan.date,
    trial: plan.trial.id,
    ...plan.facts,
    columns: [...plan.given, ...plan.read],
    repeats: plan.repeats,
    readings: plannedReadings(plan).map((given) => [...given, ...plan.read.map(() => null)]),
    sections: plan.sections,
    cautions: plan.cautions,
  };
  return `${JSON.stringify(document, null, 2)}\n`;
}
