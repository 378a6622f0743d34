export type { BenchProblem } from './bench/bench-problem.ts';
export type { BenchRun, Fact } from './bench/facts/fact.ts';
export type { PlanColumn, PlanRow, PlanSection } from './bench/layout/run-layout.ts';
export {
  fitLimitLine,
  type LimitLine,
  type LimitLineProblem,
  type LimitPoint,
} from './bench/limit-line/limit-line.ts';
export {
  type BeyondTested,
  type Extrapolation,
  type LimitAnswer,
  limitAt,
  type TemperatureAnswer,
  type TemperatureSide,
  temperatureForFlow,
} from './bench/limit-line/limit-line-answers.ts';
export {
  type NoLadders,
  type PairingReduction,
  type PairingTrialsRequest,
  reducePairing,
} from './bench/limit-line/pairing-reduction.ts';
export type { Method, MethodName } from './bench/method.ts';
export { benchMethods, methodOf } from './bench/methods.ts';
export { reduceTrial } from './bench/reduce-trial.ts';
export type { ReducedResult, Reduction } from './bench/reduction.ts';
export { readBenchSheet } from './bench/sheet/bench-sheet.ts';
export type { Observations } from './bench/sheet/observations.ts';
export type { Claim } from './decisions/claims/claim.ts';
export type {
  ClaimEvidence,
  ClaimStatus,
  ClaimVerdict,
  JudgedClaim,
  Shortfall,
} from './decisions/claims/claim-verdict.ts';
export { formatClaimsAsJson } from './decisions/claims/claims-as-json.ts';
export { claimsDocument } from './decisions/claims/claims-document.ts';
export { type ClaimReport, judgeClaims } from './decisions/claims/judge-claims.ts';
export { type ComparisonRequest, comparePairings } from './decisions/compare/compare-pairings.ts';
export type { ComparedEstimate, Comparison } from './decisions/compare/comparison.ts';
export { formatComparisonAsJson } from './decisions/compare/comparison-as-json.ts';
export { comparisonDocument } from './decisions/compare/comparison-document.ts';
export type { FeatureTime, JobEstimate, TimeHolder } from './decisions/compare/job-estimate.ts';
export type { ProfileDiff } from './decisions/diff/diff-profile.ts';
export { diffRegistries, type RegistryDiff } from './decisions/diff/diff-registries.ts';
export type { CellMove, TablesDiff } from './decisions/diff/diff-tables.ts';
export type { ProfileChange } from './decisions/diff/profile-changes.ts';
export { formatMatchAsJson } from './decisions/match/match-as-json.ts';
export { matchDocument } from './decisions/match/match-document.ts';
export { type MatchRequest, type MatchResult, matchRegistry } from './decisions/match/match-registry.ts';
export type { MatchFlow, MatchReason, PairingMatch, Verdict } from './decisions/match/match-verdict.ts';
export type { BenchPlan, TrialDraft } from './decisions/plan/bench-plan.ts';
export { writePlanCsv } from './decisions/plan/plan-as-csv.ts';
export { writePlanJson } from './decisions/plan/plan-as-json.ts';
export { writePlanMarkdown } from './decisions/plan/plan-as-markdown.ts';
export { writePlanText } from './decisions/plan/plan-as-text.ts';
export { type ReadingsPlace, writePlanTrial } from './decisions/plan/plan-as-trial.ts';
export type { PlanRequest } from './decisions/plan/plan-request.ts';
export { planTrial } from './decisions/plan/plan-trial.ts';
export { loadRegistry } from './host/load-registry.ts';
export type { PairingRequest } from './knowledge/pairing.ts';
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
export type { LoadedRegistry } from './registry/load-files.ts';
export { type MigratedText, migrateText } from './registry/migrations/migrate-text.ts';
export type { AnyProfile, Profile, ReadDocument } from './registry/profile.ts';
export type { Registry } from './registry/registry.ts';
export type { Result } from './result.ts';
export { type CheckOptions, checkRegistry } from './rules/engine/check-registry.ts';
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
export { formatTableAsHtml } from './tables/card/table-as-html.ts';
export type { Calculation, Term } from './tables/derive/calculation.ts';
export type { ConditionRow } from './tables/derive/condition-row.ts';
export { type DeriveOptions, deriveTables } from './tables/derive/derive-tables.ts';
export { explainRow } from './tables/derive/explain-row.ts';
export type { MeltLimit } from './tables/derive/melt-limit.ts';
export { findRow, rowAddress } from './tables/derive/row-address.ts';
export type { RowFlag } from './tables/derive/row-flag.ts';
export type { SourcedValue } from './tables/derive/sourced-value.ts';
export type { Bound, BoundName, SpeedRow, SpeedTable, TableInput } from './tables/derive/speed-table.ts';
export { fillTemplate, readTemplate, type Template } from './tables/template/fill-template.ts';
export { type TemplateEscape, templateEscapes } from './tables/template/template-escape.ts';
export { formatConditionsAsCsv, formatConditionsCsvMetadata } from './tables/write/conditions-as-csv.ts';
export { formatTableAsCsv } from './tables/write/table-as-csv.ts';
export { formatTableAsJson } from './tables/write/table-as-json.ts';
export { formatTableAsMarkdown } from './tables/write/table-as-markdown.ts';
export { formatTableCsvMetadata } from './tables/write/table-csv-metadata.ts';
export type { Block, Cell, Column, Document } from './text/document.ts';
export { formatHtml } from './text/format-html.ts';
export type { TextFormat } from './text/format-text.ts';
export type { Piece, Style, Text } from './text/inline.ts';
export { type DocumentForm, formatDocument } from './units/format-document.ts';
