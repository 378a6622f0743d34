import { additionsTo } from '../registry/addition.ts';
import { compareText } from '../registry/finding.ts';
import type { FieldNote } from '../registry/generated/documents.ts';
import type { Kind } from '../registry/kind.ts';
import type { Profile } from '../registry/profile.ts';
import type { Registry } from '../registry/registry.ts';
import type { CubicMillimetresPerSecond, DegreesCelsius, Range } from '../units/canonical.ts';
import { type Amount, amountOf } from '../units/rounded.ts';
import { shown, shownRange } from '../units/wording.ts';
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

type Noted = Profile<'machine'> | Profile<'filament'> | Profile<'addition'> | Profile<'trial'>;

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
  const noted: Noted[] = [machine, filament, ...additionsTo(filament.id, registry.addition), ...run];
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

function quirkOf({ kind, id }: Noted, { date, what, effect, wayRound, concerns }: FieldNote): Quirk {
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
function newestFirst(a: Quirk, b: Quirk): number {
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

/** `2026-05-07  The nozzle falls 9 K. -> Ladders with the fans off.`: the way round, else the effect, behind the arrow. */
export function formatQuirkLine({ date, what, effect, wayRound }: Quirk): string {
  return `${date}  ${oneLine(what)} -> ${oneLine(wayRound ?? effect)}`;
}

/** A quirk in full, as an item of a list: date, what it concerns, what happened, its effect and the way round. */
export function formatQuirk(quirk: Quirk): string {
  const { date, what, effect, wayRound } = quirk;
  const bounds = concernsText(quirk);
  const happened = [what, effect].map(sentence).join(' ');
  const way = wayRound === null ? '' : ` -> ${oneLine(wayRound)}`;
  return `${date}${bounds === null ? '' : ` (${bounds})`}: ${happened}${way}`;
}

/** `above 55 mm3/s, at 240..260 Cel`; null where a quirk concerns the whole pairing. */
function concernsText({ concerns }: Quirk): string | null {
  const { nozzle = null, aboveFlow = null, nozzleTemperature = null } = concerns ?? {};
  const parts = [
    nozzle === null ? [] : `nozzle ${nozzle}`,
    aboveFlow === null ? [] : `above ${shown(aboveFlow, 'volumeFlow')}`,
    nozzleTemperature === null ? [] : `at ${shownRange(nozzleTemperature, 'temperature')}`,
  ].flat();
  return parts.length === 0 ? null : parts.join(', ');
}

/** A quirk as JSON for programs holds it. */
interface QuirkFacts extends Omit<Quirk, 'concerns'> {
  readonly concerns: {
    readonly nozzle: string | null;
    readonly aboveFlow: Amount | null;
    readonly nozzleTemperature: { readonly low: Amount; readonly high: Amount } | null;
  } | null;
}

export function quirkFacts({ concerns, ...rest }: Quirk): QuirkFacts {
  if (concerns === null) return { ...rest, concerns };
  const { nozzle, aboveFlow, nozzleTemperature } = concerns;
  return {
    ...rest,
    concerns: {
      nozzle,
      aboveFlow: aboveFlow === null ? null : amountOf(aboveFlow, 'mm3/s'),
      nozzleTemperature:
        nozzleTemperature === null
          ? null
          : {
              low: amountOf(nozzleTemperature.low, 'Cel'),
              high: amountOf(nozzleTemperature.high, 'Cel'),
            },
    },
  };
}

function oneLine(text: string): string {
  return text.trim().replace(/\s+/g, ' ');
}

function sentence(text: string): string {
  const line = oneLine(text);
  return /[.!?]$/.test(line) ? line : `${line}.`;
}
