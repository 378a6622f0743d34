// What runs anywhere: texts in, values out. Nothing behind this file reads files, the clock or the network.

export type { BenchProblem } from './bench/bench-problem.ts';
export type {
  FeedNext,
  LadderOutlook,
  LadderSoFar,
  NextPiece,
  StopFeeding,
} from './bench/flow-ladder/next-piece/feeding-advice.ts';
export type { FedPieces } from './bench/flow-ladder/next-piece/lay-out-next-piece.ts';
export { nextPiece } from './bench/flow-ladder/next-piece/next-piece.ts';
export type { PlanColumn, PlanRow, PlanSection } from './bench/layout/run-layout.ts';
export { reduceTrial } from './bench/reduce-trial.ts';
export type { ReducedResult, Reduction } from './bench/reduction.ts';
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
export { type ClaimReport, type ClaimsOptions, judgeClaims } from './decisions/claims/judge-claims.ts';
export {
  type ComparisonProblem,
  type ComparisonRequest,
  comparePairings,
} from './decisions/compare/compare-pairings.ts';
export type { ComparedEstimate, Comparison } from './decisions/compare/comparison.ts';
export { formatComparisonAsJson } from './decisions/compare/comparison-as-json.ts';
export { comparisonDocument } from './decisions/compare/comparison-document.ts';
export type { FeatureTime, JobEstimate, TimeLimiter } from './decisions/compare/job-estimate.ts';
export type { ProfileDiff } from './decisions/diff/diff-profile.ts';
export { diffRegistries, type RegistryDiff } from './decisions/diff/diff-registries.ts';
export type { CellMove, TablesDiff } from './decisions/diff/diff-tables.ts';
export type { ProfileChange } from './decisions/diff/profile-changes.ts';
export { formatMatchAsJson } from './decisions/match/match-as-json.ts';
export { matchDocument } from './decisions/match/match-document.ts';
export {
  type MatchProblem,
  type MatchRequest,
  type MatchResult,
  matchRegistry,
} from './decisions/match/match-registry.ts';
export type { ClaimedFlow, MatchFlow, MatchReason, PairingMatch } from './decisions/match/match-verdict.ts';
export type { BenchPlan, TrialDraft } from './decisions/plan/bench-plan.ts';
export { formatPlanAsJson } from './decisions/plan/plan-as-json.ts';
export { formatPlanAsCsv, formatPlanAsTrial, type ReadingsPlace } from './decisions/plan/plan-as-trial.ts';
export { planDocument, planSheetDocument } from './decisions/plan/plan-document.ts';
export { type NextPieceRequest, planNextPiece } from './decisions/plan/plan-next-piece.ts';
export type { PlanRequest } from './decisions/plan/plan-request.ts';
export { planTrial } from './decisions/plan/plan-trial.ts';
export type { EvidenceFault, EvidenceFaultCode } from './evidence/standing.ts';
export {
  type ExportedTable,
  type ExportOptions,
  exportRegistry,
  type FilePart,
} from './export/export-registry.ts';
export type { Conformance } from './knowledge/conformance.ts';
export type { ChosenRule, DecisionRule } from './knowledge/decision-rule.ts';
export {
  basisWords,
  isSimulated,
  type Origin,
  originHeading,
  originOf,
  originSentence,
} from './knowledge/origin.ts';
export type { PairingProblem, PairingRequest } from './knowledge/pairing.ts';
export { formatQuirk, formatQuirkLine } from './knowledge/quirk-words.ts';
export { type Quirk, quirkConcerns, quirksOf } from './knowledge/quirks.ts';
export { type PairingWarning, pairingWarnings } from './knowledge/suitability/pairing-warnings.ts';
export type { Verdict } from './knowledge/suitability/suitability.ts';
export { findProfile, type UnknownProfile } from './registry/find-profile.ts';
export type { AcknowledgedFinding, Finding, Severity } from './registry/finding.ts';
export { type FixedProfile, fixProfile } from './registry/fix/fix-profile.ts';
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
export { type Kind, kinds } from './registry/kind.ts';
export { type LoadedRegistry, loadFiles, type RegistryTexts } from './registry/load-files.ts';
export { type MigratedText, type MigrationProblem, migrateText } from './registry/migrations/migrate-text.ts';
export { readRegistryIndex } from './registry/mirror/read-registry-index.ts';
export {
  formatRegistryIndexAsJson,
  type IndexedFile,
  indexRegistry,
  type RegistryIndex,
} from './registry/mirror/registry-index.ts';
export { type IndexDifference, verifyIndex } from './registry/mirror/verify-index.ts';
export type { AnyProfile, Profile, ReadDocument } from './registry/profile.ts';
export type { Registry } from './registry/registry.ts';
export type { Problem, Result } from './result.ts';
export {
  type CheckOptions,
  checkRegistry,
  type Judgement,
  judgeRegistry,
} from './rules/engine/check-registry.ts';
export { answerProblem } from './scaffold/answer-problem.ts';
export type { Answers } from './scaffold/answers.ts';
export { type Field, fieldsOf } from './scaffold/field.ts';
export { formatNewProfile, type ScaffoldRequest } from './scaffold/scaffold.ts';
export type { SchemaFiles } from './scaffold/schema-part.ts';
export { formatSite } from './site/format-site.ts';
export type { SiteFile } from './site/site-file.ts';
export { cardView } from './tables/card/card-of-table.ts';
export type { CardFeature, CardNote, CardSetting, CardView } from './tables/card/card-view.ts';
export { formatTableAsHtml, tableLongDocument } from './tables/card/table-as-html.ts';
export type { AskedBeads, AskedSize } from './tables/derive/beads.ts';
export type { Calculation, Term } from './tables/derive/calculation.ts';
export type { ConditionRow } from './tables/derive/conditions/condition-row.ts';
export {
  type DeriveOptions,
  deriveTables,
  type JudgingOptions,
  type TableProblem,
  type TableRequest,
} from './tables/derive/derive-tables.ts';
export {
  type DerivedPairing,
  deriveEach,
  everyPairing,
  type FullRequest,
} from './tables/derive/every-pairing.ts';
export { formatRowExplanation } from './tables/derive/explain-row.ts';
export { type LikelyPairings, likelyPairings } from './tables/derive/likely-pairings.ts';
export type { MeltLimit } from './tables/derive/limits/melt-limit.ts';
export { findRow, rowAddress } from './tables/derive/row-address.ts';
export type { RowFlag } from './tables/derive/row-flag.ts';
export type { SourcedValue } from './tables/derive/sourced-value.ts';
export type { Bound, BoundName, SpeedRow, SpeedTable, TableInput } from './tables/derive/speed-table.ts';
export { deriveFamily, type TableFamily } from './tables/derive/table-family.ts';
export {
  formatTableByTemplate,
  readTemplate,
  type Template,
  type TemplateProblem,
} from './tables/template/fill-template.ts';
export { formatConditionsAsCsv, formatConditionsCsvMetadata } from './tables/write/conditions-as-csv.ts';
export { familyDocument } from './tables/write/family-document.ts';
export {
  formatFamilyAsCsv,
  formatFamilyAsJson,
  formatFamilyAsMarkdown,
  formatFamilyAsText,
} from './tables/write/family-texts.ts';
export { formatTableAsCsv } from './tables/write/table-as-csv.ts';
export { formatTableAsJson } from './tables/write/table-as-json.ts';
export { formatTableAsMarkdown } from './tables/write/table-as-markdown.ts';
export { formatTableAsText } from './tables/write/table-as-text.ts';
export { formatFamilyAsWorkbook, formatTableAsWorkbook } from './tables/write/table-as-workbook.ts';
export { formatTableCsvMetadata } from './tables/write/table-csv-metadata.ts';
export { tableDocument } from './tables/write/table-document.ts';
export {
  type OmittedPairing,
  type TabledPairing,
  type TableIndex,
  tabledPairing,
} from './tables/write/table-index.ts';
export { formatTableIndexAsCsv } from './tables/write/table-index-as-csv.ts';
export { formatTableIndexAsHtml, tableIndexDocument } from './tables/write/table-index-as-html.ts';
export { formatTableIndexAsJson } from './tables/write/table-index-as-json.ts';
export { tableTextDocument } from './tables/write/table-text.ts';
export type { Block, Document } from './text/document.ts';
export { type ValueEscape, valueEscapes } from './text/escape.ts';
export { type DocumentForm, formatDocument } from './units/format-document.ts';
