import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { groupedChangelog, itemsOfSummary } from '../../scripts/release/changelog-groups.ts';

describe('the summary of a changeset', () => {
  it('is split where a group begins', () => {
    expect(
      itemsOfSummary('Rules: flow is held against power.\n\nTool: `rules` explains\neach rule.'),
    ).toEqual([
      { group: 'Rules', isMajor: false, text: 'Flow is held against power.' },
      { group: 'Tool', isMajor: false, text: '`rules` explains each rule.' },
    ]);
  });

  it('is about the tool where it names no group', () => {
    expect(itemsOfSummary('Starts faster.')).toEqual([
      { group: 'Tool', isMajor: false, text: 'Starts faster.' },
    ]);
  });

  it('is not split at a word inside of a sentence', () => {
    expect(itemsOfSummary('Tool: reads the Schema: it is one file.')).toHaveLength(1);
  });
});

const written = `# meltbounds

## 0.2.0

### Major Changes

- Schema: \`filament/colour\` is gone.

### Minor Changes

- Tool: \`diff\` says what a change means.
- Corrected values: Major: filament a/d 2.0.0. Tables made by the old version are too fast, or gone.
- Tables: a column for the fan. Docs: recipes.
- Added: filament a/b 1.0.0. Rules: new \`units/slip\`.

### Patch Changes

- Corrected values: filament a/c 2.0.0.

## 0.1.0

### Added

- All of it.
`;

it('a changelog is sorted by group, what was released before stays', () => {
  expect(groupedChangelog(written)).toBe(`# meltbounds

## 0.2.0

### Major changes

- **Corrected values:** Filament a/d 2.0.0. Tables made by the old version are too fast, or gone.
- **Schema:** \`filament/colour\` is gone.

### Added

- Filament a/b 1.0.0.

### Corrected values

- Filament a/c 2.0.0.

### Rules

- New \`units/slip\`.

### Tables

- A column for the fan.

### Tool

- \`diff\` says what a change means.

### Documents

- Recipes.

## 0.1.0

### Added

- All of it.
`);
});

it('grouping twice is grouping once', () => {
  const once = groupedChangelog(written);
  expect(groupedChangelog(once)).toBe(once);
});

it('every changeset that waits for a release can be read', () => {
  const folder = new URL('../../.changeset/', import.meta.url);
  for (const name of readdirSync(folder).filter((file) => file.endsWith('.md') && file !== 'README.md')) {
    const text = readFileSync(new URL(name, folder), 'utf8');
    const summary = /^---\n"meltbounds": (?:major|minor|patch)\n---\n\n([\s\S]+)$/.exec(text)?.[1] ?? '';
    expect(itemsOfSummary(summary).length, name).toBeGreaterThan(0);
  }
});
