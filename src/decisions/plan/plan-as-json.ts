import { quirkFacts } from '../../knowledge/quirk-words.ts';
import { jsonText } from '../../text/json-text.ts';
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
    origin: plan.origin,
    ...plan.facts,
    columns: [...plan.given, ...plan.read],
    repeats: plan.repeats,
    readings: plannedReadings(plan).map((given) => [...given, ...plan.read.map(() => null)]),
    sections: plan.sections,
    warnings: plan.warnings.map(({ code, text }) => ({ warning: code, text })),
    quirks: plan.quirks.map(quirkFacts),
    cautions: plan.cautions,
  };
  return jsonText(document);
}
