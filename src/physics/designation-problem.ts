import type { Problem } from '../result.ts';

type DesignationCode =
  | 'empty'
  | 'spaces'
  | 'lowerCase'
  | 'characters'
  | 'polymerSymbol'
  | 'ambiguousPolymer'
  | 'tradeWriting'
  | 'fillerSymbol'
  | 'fillerMixture'
  | 'massFraction';

/** Why a text is no plastics designation, and what to write. */
export interface DesignationProblem extends Problem<DesignationCode> {
  /** Whole designations that may be meant; empty if there is no telling. */
  readonly suggestions: readonly string[];
}

export function designationProblem(
  code: DesignationCode,
  message: string,
  suggestions: readonly string[] = [],
): DesignationProblem {
  const written = suggestions.map((suggestion) => `\`${suggestion}\``).join(' or ');
  const help = written === '' ? 'Write it by ISO 1043, such as `PA6-GF30`.' : `Write ${written}.`;
  return { code, message, help, suggestions };
}
