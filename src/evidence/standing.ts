import { addedPlace, additionsTo } from '../registry/addition.ts';
import type { Statement } from '../registry/generated/documents.ts';
import type { Hit } from '../registry/hit.ts';
import type { AnyProfile, Profile } from '../registry/profile.ts';
import { asWritten, type Registry } from '../registry/registry.ts';
import { type Path, toPointer } from '../registry/shape.ts';
import { type PlacedStatement, statementsOf } from '../registry/statement.ts';
import { quote } from '../text/quote.ts';
import { type Acceptable, acceptedFindings } from './accepted-findings.ts';
import { type Acknowledgement, acknowledgementsOf, neverAccepted } from './acknowledgement.ts';
import { changedReadings } from './changed-readings.ts';
import type { EvidenceContext } from './evidence-context.ts';
import { supportFaults } from './limit-support.ts';
import { missingConditionHits } from './missing-conditions.ts';
import { ownIntervalHits } from './own-interval.ts';
import { otherConditionHits } from './trial-conditions.ts';
import { otherFirmware } from './trial-firmware.ts';

/** What can be wrong with the evidence of a statement; only `stale` leaves the value as it was shown. */
export type EvidenceFaultCode = 'missing' | 'unsupported' | 'otherConditions' | 'stale';

/** One thing that is wrong with the evidence of a statement. */
export interface EvidenceFault {
  readonly code: EvidenceFaultCode;
  /** Code of the rule that finds it. */
  readonly rule: string;
  /** A sentence without its full stop. */
  readonly message: string;
  /** Why and up to which day, YYYY-MM-DD, a reviewer has accepted it; null where `check` reports it. */
  readonly acknowledged: Pick<Acknowledgement, 'reason' | 'until'> | null;
}

/** What is known of the evidence of a statement; it is supported where there are no faults. */
export interface EvidenceStanding {
  readonly faults: readonly EvidenceFault[];
  /** Whether the readings of its trial were simulated. */
  readonly isSimulated: boolean;
}

type Placed = PlacedStatement<Statement<unknown>>;

interface StatementRule {
  readonly code: EvidenceFaultCode;
  readonly hits: (profile: AnyProfile, placed: Placed, context: EvidenceContext) => Iterable<Hit>;
}

/** The rules about the evidence of a statement: what each finds, and what that makes of the statement. */
const statementRules = {
  'evidence/unsupported': { code: 'unsupported', hits: unsupportedHits },
  'evidence/other-conditions': { code: 'otherConditions', hits: otherConditionHits },
  'evidence/missing-condition': { code: 'otherConditions', hits: missingConditionHits },
  'evidence/value-above-interval': { code: 'unsupported', hits: ownIntervalHits },
} as const satisfies Readonly<Record<string, StatementRule>>;

/** What one of those rules finds in a whole profile. */
export function* evidenceHits(
  rule: keyof typeof statementRules,
  profile: AnyProfile,
  context: EvidenceContext,
): Generator<Hit> {
  for (const placed of statementsOf(profile)) yield* statementRules[rule].hits(profile, placed, context);
}

/**
 * Whether a statement of a profile stands: what `check` finds against its trial, its conditions and its interval, with
 * what a reviewer has acknowledged of that. No other trial than its own is reduced. A filament is to be given as it is
 * looked up, with what additions add to it.
 */
export function standingOf(profile: AnyProfile, placed: Placed, context: EvidenceContext): EvidenceStanding {
  const trial = context.registry.trial.get(placed.statement.evidence ?? '');
  const missing = trial === undefined ? missingTrial(profile, placed) : changedTrial(profile, placed, trial);
  const found = Object.entries(statementRules).flatMap(([rule, { code, hits }]) =>
    [...hits(profile, placed, context)].map((hit) => ({ code, rule, ...hit })),
  );
  const faults = [...missing, ...found].map((each) => faultIn(profile, each, context));
  const ofTrial = trial === undefined ? null : trialStanding(trial, context);
  return {
    faults: [...faults, ...(ofTrial?.faults ?? [])],
    isSimulated: ofTrial?.isSimulated ?? false,
  };
}

/** The same for whatever the readings of a trial give, stated in a profile or not. */
export function trialStanding(trial: Profile<'trial'>, context: EvidenceContext): EvidenceStanding {
  const hit = otherFirmware(trial, context.registry);
  const stale = { code: 'stale', rule: 'evidence/stale-firmware' } as const;
  return {
    faults: hit === null ? [] : [faultIn(trial, { ...stale, ...hit }, context)],
    isSimulated: trial.data.origin === 'simulated',
  };
}

interface Found extends Pick<EvidenceFault, 'code' | 'rule' | 'message'>, Pick<Hit, 'path' | 'found'> {}

function faultIn(profile: AnyProfile, found: Found, context: EvidenceContext): EvidenceFault {
  const { code, rule, message } = found;
  return { code, rule, message, acknowledged: acceptanceOf(profile, found, context) };
}

/** Who has accepted a fault; which of several like it in the profile an entry is about, `check` decides in the same way. */
function acceptanceOf(
  profile: AnyProfile,
  found: Found,
  context: EvidenceContext,
): EvidenceFault['acknowledged'] {
  if (neverAccepted(found.rule) !== null) return null;
  const place = placeInFile(profile, found.path, context.registry);
  if (acknowledgementsOf(place.profile).length === 0) return null;
  const own = acceptable(found.rule, place, found.found);
  const others = hitsOf(found.rule, profile, context)
    .map((hit) => ({ hit, place: placeInFile(profile, hit.path, context.registry) }))
    .filter((other) => other.place.profile.source === place.profile.source)
    .map((other) => acceptable(found.rule, other.place, other.hit.found))
    .filter(({ pointer }) => pointer !== own.pointer);
  const entry = acceptedFindings(place.profile, [own, ...others], context.today).get(own);
  return entry === undefined ? null : { reason: entry.reason, until: entry.until };
}

function hitsOf(rule: string, profile: AnyProfile, context: EvidenceContext): readonly Hit[] {
  return isStatementRule(rule) ? [...evidenceHits(rule, profile, context)] : [];
}

function isStatementRule(rule: string): rule is keyof typeof statementRules {
  return Object.hasOwn(statementRules, rule);
}

function acceptable(rule: string, { profile, path }: PlaceInFile, found: string | undefined): Acceptable {
  return { rule, pointer: toPointer(profile.originalPath(path)), found: found ?? null };
}

interface PlaceInFile {
  readonly profile: AnyProfile;
  readonly path: Path;
}

/** The file in which a place of a profile stands, and where: what additions add to a filament stands in theirs. */
function placeInFile(profile: AnyProfile, path: Path, registry: Registry): PlaceInFile {
  const own = profile.kind === 'filament' ? asWritten(registry, 'filament', profile.id) : undefined;
  if (own?.kind !== 'filament') return { profile, path };
  const added = addedPlace(path, own, additionsTo(own.id, registry.addition));
  return added === null ? { profile, path } : { profile: added.addition, path: added.path };
}

function unsupportedHits(profile: AnyProfile, placed: Placed, context: EvidenceContext): Hit[] {
  return [...supportFaults(profile, placed, context)].map(({ hit }) => hit);
}

/** A value that was adopted from other readings than its trial has now. */
function changedTrial({ id }: AnyProfile, { path, statement }: Placed, trial: Profile<'trial'>): Found[] {
  if (statement.basis !== 'measured' || changedReadings(statement, trial) === null) return [];
  return [
    {
      code: 'unsupported',
      rule: 'evidence/readings-changed',
      path,
      message: `${id} has a value that was adopted from other readings than the trial "${trial.id}" has now`,
    },
  ];
}

/** A value that is called measured, without a trial in the registry that shows it. */
function missingTrial({ id }: AnyProfile, { path, statement: { basis, evidence } }: Placed): Found[] {
  if (basis !== 'measured') return [];
  return [
    evidence === undefined
      ? {
          code: 'missing',
          rule: 'provenance/missing',
          path,
          message: `${id} calls a value measured, but names no trial`,
        }
      : {
          code: 'missing',
          rule: 'references/dangling',
          path: [...path, 'evidence'],
          message: `${id} calls a value measured by the trial "${quote(evidence)}", which is not in the registry`,
        },
  ];
}
