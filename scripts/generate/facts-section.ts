import { labelWithPart, type PlausibleBand, type SafeDirection } from '../../src/registry/key-facts.ts';
import type { Key } from './key-facts.ts';
import { cell, code, row, table } from './page-parts.ts';
import { featuresOf, type SchemaReader } from './schema-files.ts';

const safeWords: Readonly<Record<SafeDirection, string>> = {
  below: 'below it',
  above: 'above it',
  within: 'within it',
  same: 'only the same',
  present: 'to have it',
  any: 'either',
  unused: 'not used',
};

/** What a page says of the labels, safe directions and bands of a kind's keys; nothing where there are none. */
export function factsSection(keys: readonly Key[], read: SchemaReader): string[] {
  const { sources = {} } = read('common').meltboundsShared ?? {};
  const labels = new Map(keys.map(({ place, facts }) => [place, facts.label]));
  const labelOf = (place: string) => labels.get(place);
  const rows = new Set(
    keys
      .filter(({ facts: { label, safe } }) => label !== undefined || safe !== undefined)
      .map((key) => factsRow(key, labelWithPart(key.place, labelOf) ?? '', sources, read)),
  );
  if (rows.size === 0) return [];
  const cited = Object.entries(sources).filter(([, text]) =>
    keys.some(({ facts }) => facts.plausible?.source === text),
  );
  return [
    '## Safe side and bands',
    '`diff` asks for a major version where the old value is no longer on the safe side of the new one. `check` warns of a value outside of the usual band, and refuses one outside of the possible band.',
    table(['key', 'called', 'safe side', 'usual', 'possible', 'source of the band'], [...rows]),
    ...(cited.length === 0 ? [] : [cited.map(([name, text]) => `- ${code(name)}: ${text}.`).join('\n')]),
  ];
}

function factsRow(
  { place, facts: { safe, plausible } }: Key,
  label: string,
  sources: Readonly<Record<string, string>>,
  read: SchemaReader,
): string {
  return row(
    code(withFeature(place, featuresOf(read))),
    cell(label),
    safe === undefined ? '' : safeWords[safe],
    ...bandCells(plausible, sources),
  );
}

/** The same place for every path of a part: `fractions.FEATURE`. */
function withFeature(place: string, features: readonly string[]): string {
  return place
    .split('.')
    .map((step) => (features.includes(step) ? 'FEATURE' : step))
    .join('.');
}

function bandCells(band: PlausibleBand | undefined, sources: Readonly<Record<string, string>>): string[] {
  if (band === undefined) return ['', '', ''];
  const name = Object.keys(sources).find((each) => sources[each] === band.source) ?? '';
  return [code(band.usual.text), code(band.possible.text), code(name)];
}
