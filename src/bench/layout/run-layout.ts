import type { Result } from '../../result.ts';
import type { LayoutRequest } from './layout-request.ts';
import type { PlanProblem } from './plan-problem.ts';

/** A column of a bench sheet. */
export interface PlanColumn {
  /** As bench sheets and trials name it. */
  readonly name: string;
  /** Unit code of its numbers. */
  readonly unit: string;
}

/** One row of the plan: a setting to make, which is read as often as the plan repeats it. */
export interface PlanRow {
  /** Values of the columns that the plan sets, in their units. */
  readonly given: readonly number[];
  /** What helps to set it, one text a hint column. */
  readonly hints: readonly string[];
}

/** A list under its heading. */
export interface PlanSection {
  readonly heading: string;
  readonly items: readonly string[];
}

/** What a method puts into a plan; title, pairing, date and cautions are the same for all. */
export interface RunLayout {
  /** `Temperature sweep`. */
  readonly name: string;
  /** What the title says besides the pairing: `230 Cel`. */
  readonly detail?: string;
  /** Last word of the id of the trial: `sweep`. */
  readonly idWord: string;
  /** The answer in one sentence, where it is another than how many rows there are; and what to do next. */
  readonly answer?: string;
  readonly nextStep?: string;
  readonly job?: string;
  readonly sections: readonly PlanSection[];
  /** Columns that the plan sets, then those that are read. */
  readonly given: readonly PlanColumn[];
  readonly read: readonly PlanColumn[];
  /** Headings of the columns of hints. */
  readonly hints?: readonly string[];
  readonly rows: readonly PlanRow[];
  /** How often each row is read. */
  readonly repeats: number;
  /** Lines of YAML: the conditions of the trial, such as `nozzleTemperature: 230 Cel`, and the keys that follow them. */
  readonly conditions: readonly string[];
  readonly keys: readonly string[];
  /** Comment lines below the readings of the trial. */
  readonly afterwards?: readonly string[];
  /** Numbers for programs: every quantity an object of value and unit. */
  readonly facts?: Readonly<Record<string, unknown>>;
}

/** Lays out a run of one method for a pairing. The error is a sentence for the user. */
export type LayOut = (request: LayoutRequest) => Result<RunLayout, PlanProblem>;
