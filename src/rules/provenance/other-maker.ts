import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';
import { borrowedStatements, isSameMaker } from '../engine/sheet-owners.ts';

export const rule: ProfileRule<'machine' | 'filament'> = {
  judges: 'profile',
  reach: 'registry',
  kinds: ['machine', 'filament'],
  severity: 'error',
  statement: 'No value of a product rests on the data sheet of a product of another maker.',
  rationale:
    'A block that was copied from another profile keeps its source: the value belongs to the other product.',
  source: 'Format of the registry: `sheet` names the data sheet of a product.',
  example: alike(
    'filament',
    { bad: 'plumstead-wren-sheet', good: 'oakhollow-clover-petg-sheet' },
    (sheet) => `
spoolMass: 1 kg
fan:
  - {value: 20..60 %, basis: claimed, source: ${sheet}}`,
  ),
  *check(profile, { registry }) {
    for (const { path, source, owners } of borrowedStatements(profile, registry)) {
      const [owner] = owners;
      if (owner === undefined || owners.some((one) => isSameMaker(one, profile))) continue;
      yield {
        path: [...path, 'source'],
        part: 'value',
        message: `"${source}" is the data sheet of ${owner.data.name} by ${owner.data.maker}, not of ${profile.data.name} by ${profile.data.maker}`,
        found: source,
        allowed: `${profile.data.sheet}, or another source about ${profile.data.name}`,
        help: `Look the value up in the sheet of ${profile.data.name}, and correct it together with its source.`,
      };
    }
  },
};
