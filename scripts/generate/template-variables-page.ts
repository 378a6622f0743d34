import { type TemplateVariable, templateVariables } from '../../src/tables/template/template-variables.ts';

/** The page that lists every variable of a template, with unit and example. */
export function templateVariablesPage(): string {
  const lists = templateVariables.filter(({ items }) => items !== undefined);
  const sections = lists.map(
    ({ name, description, items = [] }) =>
      `## Inside of \`{{#${name}}}\`\n\n${description}.\n\n${table(items.map((item) => repeated(name, item)))}`,
  );
  return `${[intro, '## Everywhere', table(templateVariables), ...sections].join('\n\n')}\n`;
}

const intro = `# Variables of a template

What a template for \`meltbounds tables --template\` may name; [templates.md](templates.md) says how. Generated from
\`src/tables/template/template-variables.ts\` by \`npm run generate\`; a test compares it with what templates really see. Numbers have
the unit of their row in the table and no unit in the text. A name is looked for in the innermost list first, then in what
surrounds it. The examples belong to the sample registry of the tests.`;

function table(variables: readonly TemplateVariable[]): string {
  const rows = variables.map(({ name, kind, unit, description, example }) => [
    `\`${name}\``,
    kinds[kind],
    unit ?? '',
    description,
    example === '' ? '' : `\`${example}\``,
  ]);
  return [['variable', 'is', 'unit', 'holds', 'for example'], ['---', '---', '---', '---', '---'], ...rows]
    .map((row) => `| ${row.join(' | ')} |`)
    .join('\n');
}

const kinds: Readonly<Record<TemplateVariable['kind'], string>> = {
  text: 'text',
  number: 'number',
  yesNo: 'yes or no',
  texts: 'list of texts, each `{{.}}`',
  list: 'list',
};

/** The rows of a group are those of the list `rows`, which has its own section. */
function repeated(list: string, item: TemplateVariable): TemplateVariable {
  if (item.items === undefined) return item;
  return {
    ...item,
    description: `${item.description}; as inside of \`{{#rows}}\``,
    example: `{{#${list}}} {{#${item.name}}} …`,
  };
}
