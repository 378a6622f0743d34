import { shapes } from '../../registry/generated/shapes.ts';
import type { Profile } from '../../registry/profile.ts';
import { isObject, type Path } from '../../registry/shape.ts';
import { statementsOf } from '../../registry/statement.ts';
import {
  appendToList,
  type EditFailure,
  replaceScalar,
  scalarText,
  setKey,
} from '../../registry/yaml/edit-yaml.ts';
import { failure, type Problem, type Result, refusal, success } from '../../result.ts';
import { formatQuantity } from '../../units/format-quantity.ts';
import { parseQuantity } from '../../units/parse-quantity.ts';
import { methodOf } from '../methods.ts';
import type { TrialResults } from '../reduction.ts';
import type { AdoptableLimit } from './adoptable-limit.ts';
import { limitsOfMethod } from './adoptable-limits.ts';
import { type AdoptedStatement, adoptedStatements } from './adopted-statement.ts';
import { readingsDigest } from './readings-digest.ts';

/** A profile that limits are written into. */
export type AdoptingProfile = Profile<'filament'> | Profile<'machine'>;

/**
 * The kind of profile that states what a reduction found: the filament's, and the machine's for what is the machine's
 * own; null where no profile states it.
 */
export function adoptingKind({ method, results }: TrialResults): AdoptingProfile['kind'] | null {
  const isFound = (limit: AdoptableLimit) => results.some(({ quantity }) => quantity === limit.quantity);
  return (
    (['filament', 'machine'] as const).find((kind) => limitsOfMethod(method, kind).some(isFound)) ?? null
  );
}

/** Why the text of a profile stays as it is. */
export type AdoptProblem = Problem<'noLimit' | 'changedReadings' | 'staleInterval' | EditFailure>;

/**
 * Text of a profile with the limits of a trial written into it. A limit that the profile already states for that
 * trial is brought up to date, unless the readings have changed since; everything else, comments included, stays as it is.
 */
export function adoptLimits(
  profile: AdoptingProfile,
  trial: Profile<'trial'>,
  reduction: TrialResults,
): Result<string, AdoptProblem> {
  const statements = adoptedStatements(trial, reduction, profile.kind);
  if (statements.length === 0) {
    const { noSupport, help } = methodOf(reduction.method).openWords;
    return refusal('noLimit', `The readings support no limit to adopt: ${noSupport}`, `${help}.`);
  }
  const changed = adoptedFromOthers(profile, trial);
  if (changed !== null) return failure(changed);
  let text = profile.source.text;
  for (const statement of statements) {
    const edited = adoptInto(text, profile, trial, statement);
    if (!edited.ok) return edited;
    text = edited.value;
  }
  return success(text);
}

/**
 * Why readings are not adopted that are other ones than those that the profile rests on: records are never changed, so a
 * slip is likelier than a better reading. Whoever has compared them takes the old digest away by hand.
 */
function adoptedFromOthers(profile: AdoptingProfile, trial: Profile<'trial'>): AdoptProblem | null {
  const now = readingsDigest(trial);
  const stale = [...statementsOf(profile)].find(
    ({ statement: { evidence, readings } }) =>
      evidence === trial.id && readings !== undefined && readings !== now,
  );
  if (stale === undefined) return null;
  const { readings } = stale.statement;
  return {
    code: 'changedReadings',
    message: `${profile.source.path} was not changed: ${propertyAt(stale.path)} was adopted from other readings of this trial (digest ${readings}, now ${now})`,
    help: `Compare the readings with the bench sheet and put back what differs. Only where the sheet has what the trial says now, delete the line \`readings: ${readings}\` and adopt again.`,
  };
}

function propertyAt(path: Path): string {
  return String(path.findLast((step) => typeof step === 'string') ?? 'a value');
}

function adoptInto(
  text: string,
  profile: AdoptingProfile,
  trial: Profile<'trial'>,
  statement: AdoptedStatement,
): Result<string, AdoptProblem> {
  const { property, interval } = statement;
  const written = writtenStatements(profile, property);
  const index = written.findIndex((limit) => limit?.evidence === trial.id && hasSameAt(limit, statement));
  const { path } = profile.source;
  if (interval === null && written[index]?.interval !== undefined) {
    const { noInterval } = methodOf(trial.data.method).openWords;
    return refusal(
      'staleInterval',
      `${path} was not changed: its statement for this trial has an interval, but the readings give none, since ${noInterval}`,
      'Delete the line `interval`.',
    );
  }
  const edited =
    index === -1
      ? appendToList(text, property, statementLines(trial, statement), keysAfter(profile.kind, property))
      : restate(text, index, written[index] ?? {}, statement);
  if (edited.ok) return success(edited.value);
  return failure(notEdited(path, edited.error, statement));
}

/** The statements as they are written: what does not fit the schema is not in the data, but counts in the places. */
function writtenStatements(
  { written }: AdoptingProfile,
  property: string,
): (Record<string, unknown> | null)[] {
  const value: unknown = isObject(written) ? written[property] : undefined;
  return Array.isArray(value)
    ? value.map((statement: unknown) => (isObject(statement) ? statement : null))
    : [];
}

/** Whether a written statement is the one for the same acceleration, where a trial has several. */
function hasSameAt({ at }: Record<string, unknown>, statement: AdoptedStatement): boolean {
  if (statement.acceleration === null) return true;
  const written = isObject(at) ? at.acceleration : undefined;
  if (typeof written !== 'string') return false;
  const parsed = parseQuantity(written, 'acceleration');
  if (!parsed.ok) return false;
  return (
    formatQuantity(parsed.value.value, 'acceleration') ===
    formatQuantity(statement.acceleration, 'acceleration')
  );
}

/** Keys of the schema behind a property: a new list goes before the first of them that is there. */
function keysAfter(kind: AdoptingProfile['kind'], property: string): string[] {
  const keys = Object.keys(shapes[kind].properties);
  return keys.slice(keys.indexOf(property) + 1);
}

function statementLines(
  trial: Profile<'trial'>,
  { value, interval, readings, at, note }: AdoptedStatement,
): string[] {
  return [
    `value: ${value}`,
    ...(interval === null ? [] : [`interval: ${interval}`]),
    'basis: measured',
    `evidence: ${scalarText(trial.id)}`,
    ...(readings === null ? [] : [`readings: ${scalarText(readings)}`]),
    ...(at.length === 0 ? [] : [`at: ${flowMapping(at)}`]),
    `date: ${scalarText(trial.data.date)}`,
    ...(note === null ? [] : [`note: ${note}`]),
  ];
}

function flowMapping(at: AdoptedStatement['at']): string {
  return `{${at.map(([name, text]) => `${name}: ${text}`).join(', ')}}`;
}

function notEdited(path: string, code: EditFailure, statement: AdoptedStatement): AdoptProblem {
  const [why, help] = whyNot(code, statement);
  return { code, message: `${path} was not changed: ${why}`, help };
}

function whyNot(
  reason: EditFailure,
  { property, value }: AdoptedStatement,
): readonly [why: string, help: string] {
  switch (reason) {
    case 'unreadable':
      return ['its YAML cannot be read', '`meltbounds check` says where.'];
    case 'noSuchPlace':
      return [
        'its statement for this trial has no place for them',
        `Write \`value: ${value}\` in it by hand.`,
      ];
    case 'flowList':
      return [
        `its list "${property}" does not have one entry per line`,
        'Start each entry on its own line with "- ".',
      ];
    case 'noRoom':
      return [
        'nothing can be added to it without breaking it',
        'Start each of its keys on its own line, at the left margin.',
      ];
    default:
      return reason satisfies never;
  }
}

/**
 * Brings a statement up to date. Conditions that it names stay, those that it leaves out are added; a value that is kept
 * on the safe side for a reason stays, and so does what the same readings still give.
 */
function restate(
  text: string,
  index: number,
  written: Record<string, unknown>,
  { property, value, interval, readings, at, agreesWith, allows }: AdoptedStatement,
): Result<string, EditFailure> {
  const place = [property, index];
  const writtenAt = isObject(written.at) ? written.at : null;
  const conditions = at.filter(([name]) => writtenAt?.[name] === undefined);
  const isSame = (written.readings === undefined || written.readings === readings) && agreesWith(written);
  const isKept = isSame || (typeof written.reason === 'string' && allows(written.value));
  const edits: Edit[] = isKept ? [] : [(now) => replaceScalar(now, [...place, 'value'], value)];
  if (interval !== null && !isSame) edits.push((now) => setKey(now, place, ['interval', interval], 'value'));
  if (readings !== null)
    edits.push((now) => setKey(now, place, ['readings', scalarText(readings)], 'evidence'));
  if (writtenAt !== null)
    for (const [name, condition] of conditions)
      edits.push((now) => setKey(now, [...place, 'at'], [name, condition]));
  else if (conditions.length > 0)
    edits.push((now) =>
      setKey(
        now,
        place,
        ['at', flowMapping(conditions)],
        writtenAt === null && readings !== null ? 'readings' : 'evidence',
      ),
    );
  return edits.reduce<Result<string, EditFailure>>(
    (now, edit) => (now.ok ? edit(now.value) : now),
    success(text),
  );
}

type Edit = (text: string) => Result<string, EditFailure>;
