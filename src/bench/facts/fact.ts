import type { Filament, Trial } from '../../registry/generated/documents.ts';
import type { Profile } from '../../registry/profile.ts';
import type { Registry } from '../../registry/registry.ts';
import type { Dimension } from '../../units/dimension.ts';

/** A number in the canonical unit of its dimension, a whole number, or one of some choices. */
export type FactValue = number | string;

/** How a fact is written. */
type FactForm = { readonly dimension: Dimension } | { readonly choices: readonly string[] } | 'wholeNumber';

/** What a number can be, and how that is said after "must be". */
interface PossibleValues {
  readonly holds: (value: number) => boolean;
  readonly words: string;
}

export const aboveZero: PossibleValues = { holds: (value) => value > 0, words: 'above 0' };
export const zeroOrMore: PossibleValues = { holds: (value) => value >= 0, words: '0 or more' };

/** Something known of a bench run besides its readings, with every place where it can be stated. */
export interface Fact<Value extends FactValue = FactValue> {
  readonly what: string;
  readonly form: FactForm;
  readonly example: string;
  /** Which numbers it can be; any where that is not said. */
  readonly possible?: PossibleValues;
  /** Option of the command line for bare sheets, without dashes; facts of different methods may share one. */
  readonly flag: string;
  /** Which profile states it: the trial, or that of its filament. */
  readonly statedIn: 'trial' | 'filament';
  /** Where it stands there, as keys or in words. */
  readonly place: string;
  /** What the profiles say of it, in its canonical unit; undefined where they say nothing. */
  readonly read: (trial: Trial, filament: Filament | undefined) => Value | undefined;
}

/** Facts by their names. */
export type Facts = Readonly<Record<string, Fact>>;

/** What is known of a run, by the names of the facts; what is not known has no key. */
export type RunOf<Known extends Facts> = {
  readonly [Name in keyof Known]?: Known[Name] extends Fact<infer Value> ? Value : never;
};

/** What is known of a run of any method. */
export type BenchRun = RunOf<Facts>;

/** What a trial and its filament say of the facts that a method can use, in canonical units. */
export function trialRun(registry: Registry, { data }: Profile<'trial'>, facts: Facts): BenchRun {
  const filament = registry.filament.get(data.filament)?.data;
  const known = Object.entries(facts).flatMap(([name, fact]) => {
    const value = fact.read(data, filament);
    return value === undefined ? [] : [[name, value] as const];
  });
  return Object.fromEntries(known);
}
