import { failure, type Result, success } from '../result.ts';
import { type DesignatedFillers, readDesignatedFillers } from './designated-filler.ts';
import { type DesignationProblem, designationProblem } from './designation-problem.ts';
import { isCharacteristic } from './plastics-characteristic.ts';

/** A plastic by its standard designation: `PA66-GF30` is PA66 with 30 per cent by mass of glass fibre. */
export interface PlasticsDesignation extends DesignatedFillers {
  /** Polymer symbols with their characteristics, such as `PET-G`; more than one in a blend. */
  readonly polymers: readonly string[];
  /** Whether it notes a flame retardant: `ABS-FR(17)`. */
  readonly flameRetardant: boolean;
}

interface Component {
  readonly polymer: string;
  /** What follows the polymer and its characteristics. */
  readonly fillerParts: readonly string[];
}

const NO_FILLERS: DesignatedFillers = { fillers: [], massFraction: 0 };

const ambiguousPolymers: Readonly<Record<string, readonly string[]>> = { PVA: ['PVAL', 'PVAC'] };
const tradeWritings: Readonly<Record<string, string>> = { PETG: 'PET-G', HIPS: 'PS-HI' };

/** Flame retardants by their code numbers. Source: ISO 1043-4 (from memory). */
const flameRetardantNote = /-FR(?:\(\d{1,2}(?:\+\d{1,2})*\))?$/;

/**
 * Reads a plastics designation: polymer or blend, characteristics, fillers (`PA6-CF20`, `PS-HI`, `PC+ABS`,
 * `(PC+ABS)-GF20`, `PP-(GF25+MD15)`, `PP-(GF+MD)40`, `ABS-FR(17)`). Notes on recyclate are refused.
 * Source: ISO 1043-1:2011, ISO 1043-2:2011, ISO 1043-4 and ISO 11469 (from memory).
 */
export function parsePlasticsDesignation(written: string): Result<PlasticsDesignation, DesignationProblem> {
  const problem = problemOfCharacters(written);
  if (problem !== undefined) {
    return failure(problem);
  }
  const text = written.replace(flameRetardantNote, '');
  const [, group, groupTail] = /^\(([^()]+)\)(?:-(.+))?$/.exec(text) ?? [];
  const components: Component[] = [];
  for (const part of group === undefined ? splitOutsideParentheses(text) : group.split('+')) {
    const previous = components.at(-1);
    if (previous !== undefined && previous.fillerParts.length > 0) {
      return failure(mixtureProblem(text));
    }
    const component = readComponent(part, text);
    if (!component.ok) {
      return component;
    }
    components.push(component.value);
  }
  const read = withFillers(text, components, groupTail);
  return read.ok ? success({ ...read.value, flameRetardant: text !== written }) : read;
}

function problemOfCharacters(text: string): DesignationProblem | undefined {
  if (text.trim() === '') {
    return designationProblem('empty', 'a plastics designation is missing');
  }
  if (/\s/.test(text)) {
    return designationProblem('spaces', `"${text}" contains spaces; a designation has none`, [
      text.replaceAll(/\s/g, ''),
    ]);
  }
  const withoutMetals = text.replaceAll(/(ME[A-Z]{1,2})\([A-Za-z]+\)/g, '$1');
  if (/[a-z]/.test(withoutMetals)) {
    return designationProblem(
      'lowerCase',
      `"${text}" has lower-case letters; symbols of polymers and fillers are capitals`,
      [text.toUpperCase()],
    );
  }
  return /^[A-Z0-9/+()-]+$/.test(withoutMetals)
    ? undefined
    : designationProblem('characters', `"${text}" has characters that no designation has`);
}

function readComponent(part: string, text: string): Result<Component, DesignationProblem> {
  const [symbol = '', ...parts] = part.split('-');
  const problem = problemOfPolymer(symbol, text);
  if (problem !== undefined) {
    return failure(problem);
  }
  const firstFiller = parts.findIndex((candidate) => !isCharacteristic(symbol, candidate));
  const count = firstFiller === -1 ? parts.length : firstFiller;
  return success({
    polymer: [symbol, ...parts.slice(0, count)].join('-'),
    fillerParts: parts.slice(count),
  });
}

function problemOfPolymer(symbol: string, text: string): DesignationProblem | undefined {
  const meanings = Object.hasOwn(ambiguousPolymers, symbol) ? ambiguousPolymers[symbol] : undefined;
  if (meanings !== undefined) {
    return designationProblem(
      'ambiguousPolymer',
      `"${symbol}" may mean ${meanings.join(' or ')}; write which`,
      meanings.map((meaning) => text.replace(symbol, meaning)),
    );
  }
  const standard = Object.hasOwn(tradeWritings, symbol) ? tradeWritings[symbol] : undefined;
  if (standard !== undefined) {
    return designationProblem(
      'tradeWriting',
      `"${symbol}" is a trade writing; the standard symbol is ${standard}`,
      [text.replace(symbol, standard)],
    );
  }
  return /^[A-Z][A-Z0-9]*(\/[A-Z0-9]+)*$/.test(symbol)
    ? undefined
    : designationProblem(
        'polymerSymbol',
        `"${symbol}" in "${text}" is no polymer symbol of ISO 1043-1 (capitals and digits, like PA66)`,
      );
}

function withFillers(
  text: string,
  components: readonly Component[],
  groupTail: string | undefined,
): Result<Omit<PlasticsDesignation, 'flameRetardant'>, DesignationProblem> {
  const polymers = components.map((component) => component.polymer);
  const own = components.at(-1)?.fillerParts ?? [];
  const parts = groupTail === undefined ? own : [...own, ...groupTail.split('-')];
  const [part, ...others] = parts;
  if (part === undefined) {
    return success({ polymers, ...NO_FILLERS });
  }
  if (others.length > 0 || /^[^(]*\+/.test(part)) {
    return failure(mixtureProblem(text));
  }
  const fillers = readDesignatedFillers(part);
  return fillers.ok ? success({ polymers, ...fillers.value }) : fillers;
}

function mixtureProblem(text: string): DesignationProblem {
  const [, polymer, fillers] = /^([^()]+?)-([A-Z]{2,4}\d*(?:[+-][A-Z]{2,4}\d*)+)$/.exec(text) ?? [];
  const suggestion = fillers === undefined ? [] : [`${polymer}-(${fillers.replaceAll('-', '+')})`];
  return designationProblem(
    'fillerMixture',
    `"${text}": several fillers stand in parentheses after the polymers, like PA6-(GF30+MD10)`,
    suggestion.filter((designation) => parsePlasticsDesignation(designation).ok),
  );
}

/** Splits at every `+` that is not inside parentheses. */
function splitOutsideParentheses(text: string): string[] {
  const parts: string[] = [];
  let depth = 0;
  let start = 0;
  for (const [index, character] of [...text].entries()) {
    depth += Number(character === '(') - Number(character === ')');
    if (character === '+' && depth === 0) {
      parts.push(text.slice(start, index));
      start = index + 1;
    }
  }
  return [...parts, text.slice(start)];
}
