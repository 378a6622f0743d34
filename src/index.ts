export type { BenchProblem } from './bench/bench-problem.ts';
export type { BenchRun, RunFact } from './bench/bench-run.ts';
export { readBenchSheet } from './bench/bench-sheet.ts';
export { fitLimitLine, type LimitLine, type LimitLineProblem, type LimitPoint } from './bench/limit-line.ts';
export {
  type BeyondTested,
  type Extrapolation,
  type LimitAnswer,
  limitAt,
  type TemperatureAnswer,
  type TemperatureSide,
  temperatureForFlow,
} from './bench/limit-line-answers.ts';
export type { Method, MethodName } from './bench/method.ts';
export { benchMethods } from './bench/methods.ts';
export type { Observations } from './bench/observations.ts';
export {
  type NoLadders,
  type PairingReduction,
  type PairingTrialsRequest,
  reducePairing,
} from './bench/pairing-reduction.ts';
export { reduceTrial } from './bench/reduce-trial.ts';
export type { ReducedResult, Reduction } from './bench/reduction.ts';
export type { BenchPlan, PlanColumn, PlanRow, PlanSection, TrialDraft } from './decisions/bench-plan.ts';
export type { Claim, ClaimedProperty } from './decisions/claim.ts';
export type {
  ClaimEvidence,
  ClaimStatus,
  ClaimVerdict,
  JudgedClaim,
  Shortfall,
} from './decisions/claim-verdict.ts';
export { writeClaimsJson } from './decisions/claims-as-json.ts';
export { writeClaimsMarkdown } from './decisions/claims-as-markdown.ts';
export { writeClaimsText } from './decisions/claims-as-text.ts';
export { type ComparisonRequest, comparePairings } from './decisions/compare-pairings.ts';
export type { ComparedEstimate, Comparison } from './decisions/comparison.ts';
export type { ProfileDiff } from './decisions/diff-profile.ts';
export { diffRegistries, type RegistryDiff } from './decisions/diff-registries.ts';
export type { CellMove, TablesDiff } from './decisions/diff-tables.ts';
export type { FeatureTime, JobEstimate, TimeHolder } from './decisions/job-estimate.ts';
export { type ClaimReport, judgeClaims } from './decisions/judge-claims.ts';
export { writeMatchJson } from './decisions/match-as-json.ts';
export { writeMatchMarkdown } from './decisions/match-as-markdown.ts';
export { writeMatchText } from './decisions/match-as-text.ts';
export { type MatchRequest, type MatchResult, matchRegistry } from './decisions/match-registry.ts';
export type { MatchFlow, MatchReason, PairingMatch, Verdict } from './decisions/match-verdict.ts';
export { writePlanCsv } from './decisions/plan-as-csv.ts';
export { writePlanJson } from './decisions/plan-as-json.ts';
export { writePlanMarkdown } from './decisions/plan-as-markdown.ts';
export { writePlanText } from './decisions/plan-as-text.ts';
export { type ReadingsPlace, writePlanTrial } from './decisions/plan-as-trial.ts';
export type { PlanRequest } from './decisions/plan-request.ts';
export { planTrial } from './decisions/plan-trial.ts';
export type { ProfileChange } from './decisions/profile-changes.ts';
export {
  coreTemperatureAtFlow,
  flowAtCoreTemperature,
  type MeltZone,
  meanTemperatureAtFlow,
  thermalDiffusivity,
} from './physics/melt-zone.ts';
export { densityOfFilledGrade, fillerMassFractionAtDensity } from './physics/mixture.ts';
export { lengthToTouchSpeed, moveDuration, peakSpeedOfMove, runUpLength } from './physics/motion.ts';
export {
  bucklingPressure,
  channelPressureDrop,
  conePressureDrop,
  pushingForce,
  wallShearRate,
} from './physics/nozzle-pressure.ts';
export {
  type PathTime,
  type PrintPath,
  type PrintPlan,
  type PrintTime,
  printTime,
} from './physics/print-time.ts';
export { dailyExposureLevel, levelAtOtherDistance, sumOfLevels } from './physics/sound.ts';
export { drawPlot } from './plots/draw-plot.ts';
export { drawTextPlot, type TextPlotSize } from './plots/draw-text-plot.ts';
export type { Plot, PlotAxis, PlotMark, PlotPoint } from './plots/plot.ts';
export type { Finding, Severity } from './registry/finding.ts';
export type {
  Addition,
  Filament,
  Job,
  Machine,
  Policy,
  Polymer,
  Source,
  Statement,
  Trial,
} from './registry/generated/documents.ts';
export type { Kind } from './registry/kind.ts';
export { type LoadedRegistry, loadRegistry } from './registry/load-registry.ts';
export { type MigratedText, migrateText } from './registry/migrations/migrate-text.ts';
export type { AnyProfile, Profile, ReadDocument } from './registry/profile.ts';
export type { Registry } from './registry/registry.ts';
export { jsonComparison } from './report/json-comparison.ts';
export { markdownComparison } from './report/markdown-comparison.ts';
export { textComparison } from './report/text-comparison.ts';
export type { Result } from './result.ts';
export { type CheckOptions, checkRegistry } from './rules/check-registry.ts';
export { answerProblem } from './scaffold/answer-problem.ts';
export type { Answers } from './scaffold/answers.ts';
export { type Field, fieldsOf } from './scaffold/field.ts';
export { type ScaffoldRequest, scaffold } from './scaffold/scaffold.ts';
export type { SchemaFiles } from './scaffold/schema-part.ts';
export { type Description, describe } from './statistics/describe.ts';
export type { Distribution } from './statistics/distributions.ts';
export { type LinearFit, type LinearFitProblem, leastSquares } from './statistics/least-squares.ts';
export { type Propagated, type Propagation, propagate } from './statistics/monte-carlo.ts';
export { nonlinearLeastSquares } from './statistics/nonlinear-least-squares.ts';
export { studentTQuantile } from './statistics/student-t.ts';
export type { Calculation, Term } from './tables/calculation.ts';
export type { ConditionRow } from './tables/condition-row.ts';
export { type DeriveOptions, deriveTables } from './tables/derive-tables.ts';
export { explainRow } from './tables/explain-row.ts';
export { fillTemplate, readTemplate, type Template } from './tables/fill-template.ts';
export type { Ground } from './tables/ground.ts';
export type { MeltLimit } from './tables/melt-limit.ts';
export type { PairingRequest } from './tables/pairing.ts';
export { findRow, rowAddress } from './tables/row-address.ts';
export type { RowFlag } from './tables/row-flag.ts';
export type { Bound, BoundName, SpeedRow, SpeedTable, TableInput } from './tables/speed-table.ts';
export { type TemplateEscape, templateEscapes } from './tables/template-escape.ts';
export { writeConditionsCsv, writeConditionsMetadata } from './tables/write-conditions-csv.ts';
export { writeCsv } from './tables/write-csv.ts';
export { writeCsvMetadata } from './tables/write-csv-metadata.ts';
export { writeHtml } from './tables/write-html.ts';
export { writeJson } from './tables/write-json.ts';
export { writeMarkdown } from './tables/write-markdown.ts';
