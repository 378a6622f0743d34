import type { Problem } from '../result.ts';

/** What is wrong with readings, or with what is known of their run. */
type BenchProblemCode =
  | 'ambiguousColumn'
  | 'ambiguousNumber'
  | 'backgroundTooLoud'
  | 'badGrade'
  | 'badSetting'
  | 'decimalComma'
  | 'emptyCell'
  | 'emptySheet'
  | 'implausibleRatio'
  | 'implausibleReading'
  | 'indistinct'
  | 'louderBackground'
  | 'malformedHeader'
  | 'malformedSheet'
  | 'massRises'
  | 'missingColumn'
  | 'missingFact'
  | 'missingKey'
  | 'negative'
  | 'notANumber'
  | 'notPositive'
  | 'noMethod'
  | 'nothingPasses'
  | 'otherKind'
  | 'otherSheet'
  | 'raggedRow'
  | 'readingOutOfLine'
  | 'repeatedColumn'
  | 'repeatedTable'
  | 'sheetTooLarge'
  | 'tooFewSteps'
  | 'tooManyReadings'
  | 'tooManyValues'
  | 'unknownColumn'
  | 'unknownFilament'
  | 'unknownTrial'
  | 'wrongUnit';

/** Why readings cannot be reduced: something that whoever wrote them can put right. */
export interface BenchProblem extends Problem<BenchProblemCode> {
  readonly found?: string;
  /** The line of the file, or the place in an inline list counted from 1. */
  readonly row?: number;
}
