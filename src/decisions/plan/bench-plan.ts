import type { PlanColumn, PlanRow, PlanSection } from '../../bench/layout/run-layout.ts';
import type { MethodName } from '../../bench/method-facts.ts';
import type { Origin } from '../../knowledge/origin.ts';
import type { Quirk } from '../../knowledge/quirks.ts';
import type { PairingWarning } from '../../knowledge/suitability/pairing-warnings.ts';

/** The empty trial of a plan: what goes into its file besides the readings. */
export interface TrialDraft {
  readonly id: string;
  /** Lines of YAML between the method and the readings. */
  readonly lines: readonly string[];
  /** Comment lines below the readings. */
  readonly afterwards: readonly string[];
}

/** What to run on the bench, and how to write down what it gives; the same form for every method. */
export interface BenchPlan {
  readonly method: MethodName;
  readonly title: string;
  /** Day of the plan, YYYY-MM-DD. */
  readonly date: string;
  /** The answer in one sentence, and what to do next, where they are others than those of a whole run. */
  readonly answer?: string;
  readonly nextStep?: string;
  readonly sections: readonly PlanSection[];
  /** Columns that the plan sets, then those that are read. */
  readonly given: readonly PlanColumn[];
  readonly read: readonly PlanColumn[];
  readonly hints: readonly string[];
  readonly rows: readonly PlanRow[];
  /** How often each row is read. */
  readonly repeats: number;
  readonly cautions: readonly string[];
  /** What to know of the pairing before it is heated up, the worst first. */
  readonly warnings: readonly PairingWarning[];
  /** What the bench has noted of the pairing, the newest first. */
  readonly quirks: readonly Quirk[];
  /** What of all that the plan rests on is simulated or invented. */
  readonly origin: Origin;
  readonly trial: TrialDraft;
  /** The numbers of the plan for programs: every quantity an object of value and unit. */
  readonly facts: Readonly<Record<string, unknown>>;
}

/** A heading as bench sheets write it: `commandedFlow [mm3/s]`. */
export function planHeading({ name, unit }: PlanColumn): string {
  return `${name} [${unit}]`;
}

/** Every reading of a plan in the order of the sheet: the values that the plan sets. */
export function plannedReadings({ rows, repeats }: BenchPlan): (readonly number[])[] {
  return rows.flatMap(({ given }) => Array.from({ length: repeats }, () => given));
}
