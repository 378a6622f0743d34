import { additionsTo } from '../registry/addition.ts';
import { compareText } from '../registry/finding.ts';
import type { FieldNote } from '../registry/generated/documents.ts';
import type { Kind } from '../registry/kind.ts';
import type { AnyProfile, Profile } from '../registry/profile.ts';
import type { Registry } from '../registry/registry.ts';
import type { CubicMillimetresPerSecond, DegreesCelsius, Range } from '../units/canonical.ts';
import type { FittedPairing } from './pairing.ts';
import { trialsOfPairing } from './trial-index.ts';

/** What a quirk is limited to; null where it says nothing. */
interface QuirkConcerns {
  /** Id of a nozzle of the machine. */
  readonly nozzle: string | null;
  readonly aboveFlow: CubicMillimetresPerSecond | null;
  readonly nozzleTemperature: Range | null;
}

/** A field note that somebody who prints with a pairing should know. */
export interface Quirk {
  /** The profile or trial that holds the note. */
  readonly of: { readonly kind: Kind; readonly id: string };
  /** Day on which it was seen, YYYY-MM-DD. */
  readonly date: string;
  readonly what: string;
  readonly effect: string;
  readonly wayRound: string | null;
  readonly concerns: QuirkConcerns | null;
}

/** Every field note of a profile, the newest first. */
export function notesOf(profile: AnyProfile): Quirk[] {
  const notes = 'fieldNotes' in profile.data ? (profile.data.fieldNotes ?? []) : [];
  return notes.map((note) => quirkOf(profile, note)).toSorted(newestFirst);
}

/**
 * The field notes of a machine, a filament with its additions, and trials, the newest first; by default of the trials that
 * were run with this pairing. Notes about another machine or nozzle are left out.
 */
export function quirksOf(
  registry: Registry,
  pairing: FittedPairing,
  trials: Iterable<string> = trialsOfPairing(registry, pairing).map(({ id }) => id),
): Quirk[] {
  const run = [...new Set(trials)].flatMap((id) => registry.trial.get(id) ?? []);
  const { machine, filament } = pairing;
  const noted: (Profile<'machine'> | Profile<'filament'> | Profile<'addition'> | Profile<'trial'>)[] = [
    machine,
    filament,
    ...additionsTo(filament.id, registry.addition),
    ...run,
  ];
  return noted
    .flatMap((profile) =>
      (profile.data.fieldNotes ?? [])
        .filter((note) => isHere(note, pairing))
        .map((note) => quirkOf(profile, note)),
    )
    .toSorted(newestFirst);
}

function isHere({ concerns = {} }: FieldNote, { machine, nozzle }: FittedPairing): boolean {
  return (concerns.machine ?? machine.id) === machine.id && (concerns.nozzle ?? nozzle.id) === nozzle.id;
}

function quirkOf({ kind, id }: AnyProfile, { date, what, effect, wayRound, concerns }: FieldNote): Quirk {
  return {
    of: { kind, id },
    date,
    what,
    effect,
    wayRound: wayRound ?? null,
    concerns:
      concerns === undefined
        ? null
        : {
            nozzle: concerns.nozzle ?? null,
            aboveFlow: concerns.aboveFlow ?? null,
            nozzleTemperature: concerns.nozzleTemperature ?? null,
          },
  };
}

/** Notes of one day and one profile keep the order of its file. */
export function newestFirst(a: Quirk, b: Quirk): number {
  return compareText(b.date, a.date) || compareText(a.of.kind, b.of.kind) || compareText(a.of.id, b.of.id);
}

/** What is set where a quirk may show. */
interface QuirkSettings {
  readonly flow?: CubicMillimetresPerSecond;
  readonly nozzleTemperature?: DegreesCelsius;
}

/**
 * Whether a quirk shows at a flow and a nozzle temperature that it names. False for one that names neither: that belongs to
 * the pairing as a whole, not to a row of its table.
 */
export function quirkConcerns({ concerns }: Quirk, { flow, nozzleTemperature }: QuirkSettings): boolean {
  const { aboveFlow = null, nozzleTemperature: range = null } = concerns ?? {};
  if (aboveFlow === null && range === null) return false;
  const isAbove = aboveFlow === null || (flow !== undefined && flow > aboveFlow);
  const isWithin =
    range === null ||
    (nozzleTemperature !== undefined && nozzleTemperature >= range.low && nozzleTemperature <= range.high);
  return isAbove && isWithin;
}
