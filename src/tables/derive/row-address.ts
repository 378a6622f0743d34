import { features } from '../../knowledge/feature.ts';
import { type Problem, type Result, refusal, success } from '../../result.ts';
import { quote } from '../../text/quote.ts';
import { wordHint } from '../../text/unknown-word.ts';
import type { SpeedRow, SpeedTable } from './speed-table.ts';

/** How a row is called: `infill@0.2x0.44`, feature, layer height and line width in mm. */
export function rowAddress({ feature, layerHeight, lineWidth }: SpeedRow): string {
  return `${feature}@${layerHeight}x${lineWidth}`;
}

/**
 * The row that a text names: `infill@0.2x0.44`, or `infill 0.2 0.44`; what is not needed to tell rows apart may be
 * left out. The problem names the rows that there are.
 */
export function findRow(
  { rows }: SpeedTable,
  text: string,
): Result<SpeedRow, Problem<'unknownFeature' | 'unknownRow' | 'severalRows'>> {
  const [feature = '', ...sizes] = text
    .trim()
    .split(/[\s@x×,]+/)
    .map((part) => part.replace(/mm$/, ''))
    .filter((part) => part !== '');
  const ofFeature = rows.filter((row) => row.feature === feature);
  if (ofFeature.length === 0) return unknownFeature(feature);
  const numbers = sizes.map(Number);
  const matching = ofFeature.filter((row) =>
    numbers.every((number, index) => [row.layerHeight, row.lineWidth][index] === number),
  );
  const [only, ...others] = matching;
  if (only !== undefined && others.length === 0) return success(only);
  const named = quote(text);
  return only === undefined
    ? refusal('unknownRow', `There is no row "${named}"`, `There are: ${addresses(ofFeature)}.`)
    : refusal('severalRows', `"${named}" names several rows`, `Take one of ${addresses(matching)}.`);
}

function addresses(rows: readonly SpeedRow[]): string {
  return rows.map(rowAddress).join(', ');
}

function unknownFeature(feature: string) {
  return refusal(
    'unknownFeature',
    `There is no feature "${quote(feature)}" in the table`,
    `${wordHint(feature, features)} A row is named like infill@0.2x0.44.`,
  );
}
