import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { templateVariablesPage } from '../../../scripts/generate/template-variables-page.ts';
import { type TemplateVariable, templateVariables } from '../../../src/tables/template/template-variables.ts';
import {
  type TemplateValue,
  type TemplateView,
  templateView,
} from '../../../src/tables/template/template-view.ts';
import { fullFigures, tableWith } from '../derive/pairing-with.ts';

const asked = { basis: 'measured', weaker: 'flag' } as const;
const flagged = { minimumBasis: { acceleration: asked, shortestLayerTime: asked } };
const sound = templateView(
  tableWith({ filament: fullFigures.filament, policy: { ...fullFigures.policy, ...flagged } }),
);

/** Every value that a variable has anywhere, below the lists that lead to it. */
function valuesOf(views: readonly TemplateView[], name: string): TemplateValue[] {
  return views.map((each) => each[name]!);
}

function itemsOf(views: readonly TemplateView[], { name }: TemplateVariable): TemplateView[] {
  return views.flatMap((each) => each[name] as readonly TemplateView[]);
}

/** A variable with the views that hold it, for every variable at every depth. */
function everyVariable(
  variables: readonly TemplateVariable[],
  views: readonly TemplateView[],
  path = '',
): { path: string; variable: TemplateVariable; views: readonly TemplateView[] }[] {
  return variables.flatMap((variable) => [
    { path: `${path}${variable.name}`, variable, views },
    ...(variable.items === undefined
      ? []
      : everyVariable(variable.items, itemsOf(views, variable), `${path}${variable.name}/`)),
  ]);
}

const all = everyVariable(templateVariables, [sound]);
const ofKind = (kind: TemplateVariable['kind']) => all.filter(({ variable }) => variable.kind === kind);

describe('what templates see is what is documented', () => {
  it('at the root', () => {
    expect(Object.keys(sound).sort()).toEqual(templateVariables.map(({ name }) => name).sort());
  });

  it.each(ofKind('list'))('in every item of $path', ({ variable, views }) => {
    const items = itemsOf(views, variable);
    expect(items.length).toBeGreaterThan(0);
    for (const item of items) {
      expect(Object.keys(item).sort()).toEqual(variable.items!.map(({ name }) => name).sort());
    }
  });

  it.each(ofKind('text'))('a text: $path', ({ variable, views }) => {
    for (const value of valuesOf(views, variable.name)) expect(typeof (value ?? '')).toBe('string');
  });

  it.each(ofKind('number'))('a number: $path', ({ variable, views }) => {
    expect(variable.unit).toBeDefined();
    for (const value of valuesOf(views, variable.name)) expect(typeof (value ?? 0)).toBe('number');
  });

  it.each(ofKind('yesNo'))('yes or no: $path', ({ variable, views }) => {
    for (const value of valuesOf(views, variable.name)) expect(typeof value).toBe('boolean');
  });

  it.each(all.filter(({ variable }) => variable.kind !== 'list'))(
    'the example of $path occurs',
    ({ variable, views }) => {
      const [start = '', isCut] = variable.example.split('…');
      const values = valuesOf(views, variable.name).flat().map(String);
      expect(values.some((value) => (isCut === undefined ? value === start : value.startsWith(start)))).toBe(
        true,
      );
    },
  );
});

it('the page of variables is current', () => {
  const page = readFileSync(new URL('../../../docs/template-variables.md', import.meta.url), 'utf8');
  expect(page).toBe(templateVariablesPage());
});

describe('lines of text', () => {
  it('line up under their headings', () => {
    for (const [list, headings] of [
      ['rows', 'rowHeadings'],
      ['conditions', 'conditionHeadings'],
    ] as const) {
      const ends = [...String(sound[headings]).matchAll(/\S+ \[\S+\]/g)].map(
        ({ index, 0: heading }) => index + heading.length,
      );
      for (const { line } of sound[list] as readonly TemplateView[]) {
        // Numbers stand to the right: under the last letter of a heading with a unit is the last digit, and then a gap.
        for (const end of ends) expect(String(line).slice(end - 1, end + 1)).toMatch(/^[\d ] ?$/);
      }
    }
  });
});
