/** How well a machine and a filament go together, the best first. */
export const verdicts = ['suits', 'limited', 'unsuitable'] as const;

/** Whether a filament suits a machine. */
export type Verdict = (typeof verdicts)[number];

/** What a reason is about. */
export type Aspect =
  | 'material'
  | 'filamentDiameter'
  | 'nozzleTemperature'
  | 'nozzleMaterial'
  | 'bed'
  | 'chamber'
  | 'fumes'
  | 'cooling'
  | 'dryer'
  | 'spool'
  | 'flow';

/** What to know before a pairing goes to the bench. */
export const warningCodes = [
  'noFeedstock',
  'otherDiameter',
  'hotEndLimitUnknown',
  'hotEndTooCold',
  'linerTooHot',
  'nozzleWears',
  'boreTooFine',
  'bedTooCold',
  'chamberTooCold',
  'chamberTooWarm',
  'chamberNotSensed',
  'harmfulVapours',
  'coolingUnknown',
  'coolingNotAdjustable',
  'dryerTooHot',
  'dryerTooCold',
  'spoolTooHeavy',
] as const;

/** One of them. */
export type WarningCode = (typeof warningCodes)[number];

/** One thing that speaks for or against a pairing, with its numbers. */
export interface SuitabilityReason {
  readonly aspect: Aspect;
  readonly verdict: Verdict;
  readonly text: string;
  /** Set where somebody who prints with the pairing must know it, even if it suits. */
  readonly warning?: WarningCode;
}

/** The worst of the verdicts of some reasons. */
export function worstVerdict(reasons: readonly Pick<SuitabilityReason, 'verdict'>[]): Verdict {
  const rank = Math.max(0, ...reasons.map(({ verdict }) => verdicts.indexOf(verdict)));
  return verdicts[rank] ?? 'unsuitable';
}

/** Reasons with the worst verdicts first, otherwise in their order. */
export function worstFirst<Reason extends Pick<SuitabilityReason, 'verdict'>>(
  reasons: readonly Reason[],
): Reason[] {
  return reasons.toSorted((a, b) => verdicts.indexOf(b.verdict) - verdicts.indexOf(a.verdict));
}
