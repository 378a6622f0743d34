import { changeTexts } from '../text/change-texts.ts';
import type { Document } from '../text/document.ts';
import { printedUnit } from './print-symbols.ts';
import { units } from './unit-table.ts';

const number = String.raw`-?\d+(?:\.\d+)?(?:e[+-]?\d+)?`;

/** Codes of units and products of their parts, such as `mm3/s/K`; `1` would be taken for a number. */
const unitCode = (() => {
  const parts = new Set(
    units.flatMap(({ code }) => code.split('/')).filter((part) => part !== '1' && part !== ''),
  );
  const longestFirst = [...parts].sort((one, other) => other.length - one.length).map(escapedPattern);
  const part = `(?:${longestFirst.join('|')})`;
  return `/?${part}(?:/${part})*`;
})();

function escapedPattern(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}

/** A number or a range, and the unit behind it; nothing longer that only begins or ends so. */
const quantity = new RegExp(
  `(?<![\\w.])(${number})(?:\\.\\.(${number}))?(?: (${unitCode})(?![\\w/[{-]))?(?![\\w]|\\.\\w)`,
  'g',
);

/** What is to be typed or stands in a file: code between backticks, and what is quoted. */
const verbatim = /(`[^`]*`|"[^"]*")/;

/**
 * A sentence with its quantities as print writes them: `245 °C` for `245 Cel`, `190–235 °C` for `190..235 Cel`. Code and
 * quotations stay as they are, so that what is to be typed can be copied.
 */
export function inPrint(sentence: string): string {
  return sentence
    .split(verbatim)
    .map((part, index) => (index % 2 === 1 ? part : part.replace(quantity, printedQuantity)))
    .join('');
}

function printedQuantity(_: string, low: string, high?: string, code?: string): string {
  const numbers = high === undefined ? low : printedRange(low, high);
  const unit = code === undefined ? '' : printedUnit(code);
  return unit === '' || unit === '°' ? numbers + unit : `${numbers} ${unit}`;
}

/** A dash between the ends, but for ends below zero, whose sign it would be taken for. */
function printedRange(low: string, high: string): string {
  return low.startsWith('-') || high.startsWith('-') ? `${low} to ${high}` : `${low}–${high}`;
}

/** A document with its quantities as print writes them. */
export function documentInPrint(document: Document): Document {
  return changeTexts(document, { text: inPrint, unit: printedUnit });
}
