import { failure, type Result, success } from '../result.ts';
import type { Fraction } from '../units/canonical.ts';
import { type DesignationProblem, designationProblem } from './designation-problem.ts';
import { type FillerSymbol, readFillerSymbol } from './filler-symbol.ts';

/** A filler of a designation; the mass fraction is `undefined` where the designation does not tell it. */
interface DesignatedFiller extends FillerSymbol {
  readonly massFraction: Fraction | undefined;
}

/** The fillers of a designation and their mass fraction together, `undefined` where the designation does not tell it. */
export interface DesignatedFillers {
  readonly fillers: readonly DesignatedFiller[];
  readonly massFraction: Fraction | undefined;
}

/**
 * Reads the filler part of a designation: `GF30`, `CF`, `MED(Al)20`, `(GF25+MD15)`, `(GF+MD)40`.
 * Numbers are mass per cent, above 0 and below 100, and so is their sum.
 * Source: ISO 1043-2:2011 and ISO 11469 (from memory).
 */
export function readDesignatedFillers(text: string): Result<DesignatedFillers, DesignationProblem> {
  const [, group, groupPercent] = /^\((.+)\)(\d+)?$/.exec(text) ?? [];
  const fillers: DesignatedFiller[] = [];
  for (const part of (group ?? text).split('+')) {
    const filler = readFiller(part);
    if (!filler.ok) {
      return filler;
    }
    fillers.push(filler.value);
  }
  return withTotal(text, fillers, groupPercent);
}

function readFiller(text: string): Result<DesignatedFiller, DesignationProblem> {
  const [, symbolText = '', percent] = /^(\D+?)(\d+)?$/.exec(text) ?? [];
  const symbol = readFillerSymbol(symbolText);
  if (symbol === undefined) {
    return failure(
      designationProblem(
        'fillerSymbol',
        `"${text}" is neither a filler symbol of ISO 1043-2 (material letter, form letter, mass per cent, like GF30) nor a known characteristic of ISO 1043-1`,
      ),
    );
  }
  return success({ ...symbol, massFraction: percent === undefined ? undefined : Number(percent) / 100 });
}

function withTotal(
  text: string,
  fillers: readonly DesignatedFiller[],
  groupPercent: string | undefined,
): Result<DesignatedFillers, DesignationProblem> {
  const told = fillers.flatMap((filler) => filler.massFraction ?? []);
  if (groupPercent !== undefined && told.length > 0) {
    return massFractionProblem(
      `"${text}" gives mass per cent inside and after the parentheses; give one of them`,
    );
  }
  const fractions = groupPercent === undefined ? told : [Number(groupPercent) / 100];
  const percent = fractions.reduce((total, fraction) => total + Math.round(fraction * 100), 0);
  if (fractions.some((fraction) => fraction <= 0) || percent >= 100) {
    return massFractionProblem(`"${text}": fillers make up more than 0 % and less than 100 % of the mass`);
  }
  const complete = groupPercent !== undefined || told.length === fillers.length;
  return success({ fillers, massFraction: complete ? percent / 100 : undefined });
}

function massFractionProblem(message: string): Result<never, DesignationProblem> {
  return failure(designationProblem('massFraction', message));
}
