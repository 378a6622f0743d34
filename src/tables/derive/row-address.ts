import { features } from '../../knowledge/feature.ts';
import { failure, type Result, success } from '../../result.ts';
import { nearestWord } from '../../text/nearest-word.ts';
import { quote } from '../../text/quote.ts';
import type { SpeedRow, SpeedTable } from './speed-table.ts';

/** How a row is called: `infill@0.2x0.44`, feature, layer height and line width in mm. */
export function rowAddress({ feature, layerHeight, lineWidth }: SpeedRow): string {
  return `${feature}@${layerHeight}x${lineWidth}`;
}

/**
 * The row that a text names: `infill@0.2x0.44`, or `infill 0.2 0.44`; what is not needed to tell rows apart may be
 * left out. The error names the rows that there are.
 */
export function findRow({ rows }: SpeedTable, text: string): Result<SpeedRow, string> {
  const [feature = '', ...sizes] = text
    .trim()
    .split(/[\s@x×,]+/)
    .map((part) => part.replace(/mm$/, ''))
    .filter((part) => part !== '');
  const ofFeature = rows.filter((row) => row.feature === feature);
  if (ofFeature.length === 0) return failure(unknownFeature(feature));
  const numbers = sizes.map(Number);
  const matching = ofFeature.filter((row) =>
    numbers.every((number, index) => [row.layerHeight, row.lineWidth][index] === number),
  );
  const [only, ...others] = matching;
  if (only !== undefined && others.length === 0) return success(only);
  return only === undefined
    ? failure(`There is no row "${quote(text)}". There are: ${addresses(ofFeature)}.`)
    : failure(`"${quote(text)}" names several rows; take one of ${addresses(matching)}.`);
}

function addresses(rows: readonly SpeedRow[]): string {
  return rows.map(rowAddress).join(', ');
}

function unknownFeature(feature: string): string {
  const nearest = nearestWord(feature, features);
  const hint = nearest === null ? `There are: ${features.join(', ')}.` : `Did you mean "${nearest}"?`;
  return `There is no feature "${quote(feature)}" in the table. ${hint} A row is named like infill@0.2x0.44.`;
}
