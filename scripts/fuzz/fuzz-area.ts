import { randomSource } from '../../src/statistics/random.ts';
import { mutantOf } from './mutants-of.ts';

/** One way in for texts of strangers. */
export interface FuzzArea {
  readonly name: string;
  /** Part of all cases that it is given. */
  readonly share: number;
  /** Sound texts that mutants are made from. */
  readonly seeds: readonly string[];
  /** Takes a text in; throws where it or what it makes of it is not as it must be. Says whether the text was accepted. */
  readonly take: (text: string) => boolean;
}

/** A text that brings the program to throw, or to say what it must not. */
export interface Crash {
  readonly area: string;
  readonly text: string;
  readonly error: string;
}

/** What came of the cases of an area. */
export interface FuzzCount {
  readonly area: string;
  readonly cases: number;
  /** Those whose text was good in spite of its slips. */
  readonly accepted: number;
  readonly crashes: readonly Crash[];
}

/** Most crashes of an area that are kept: one fault has thousands of texts. */
const mostKept = 20;

/** Runs a number of cases; the same seed makes the same texts. */
export function fuzzArea(area: FuzzArea, cases: number, seed: string): FuzzCount {
  const random = randomSource(`${seed} ${area.name}`);
  const crashes: Crash[] = [];
  let accepted = 0;
  for (let made = 0; made < cases; made++) {
    const text = mutantOf(area.seeds, random);
    const outcome = tried(area, text);
    if (outcome === true) accepted += 1;
    else if (outcome !== false && crashes.length < mostKept) crashes.push(outcome);
  }
  return { area: area.name, cases, accepted, crashes };
}

/** Whether a text was accepted, or how it crashed. */
export function tried(area: FuzzArea, text: string): boolean | Crash {
  try {
    return area.take(text);
  } catch (error) {
    return { area: area.name, text, error: error instanceof Error ? `${error.stack}` : String(error) };
  }
}

/** Throws where something that must hold does not. */
export function must(holds: boolean, what: string): asserts holds {
  if (!holds) throw new Error(what);
}

/** Nothing in a text for people steers a terminal, and it is no longer than a screen or two. */
export function mustBeSafe(text: string): void {
  must(
    !/(?!\t|\n)[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u.test(text),
    `not printable: ${JSON.stringify(text).slice(0, 200)}`,
  );
}
