import { loadFiles } from '../../src/registry/load-files.ts';
import { deriveTables } from '../../src/tables/derive/derive-tables.ts';
import { formatTableByTemplate, readTemplate } from '../../src/tables/template/fill-template.ts';
import { sampleTexts } from '../../tests/sample-texts.ts';
import { type FuzzArea, must } from './fuzz-area.ts';

const seeds = [
  '{{title}}\n{{#rows}}{{feature}} {{speed}} {{^speed}}unknown{{/speed}}\n{{/rows}}{{! note }}\n',
  '{{=<% %>=}}<%title%><%#rows%><%&feature%>,<%{speed}%><%/rows%>\n<%={{ }}=%>{{{title}}}\n',
  '{{#conditions}}{{condition}}: {{low}}..{{high}} {{unit}}\n{{/conditions}}{{#cautions}}{{.}}\n{{/cautions}}\n',
  '{{#rows}}{{#flags}}{{.}}{{/flags}}{{/rows}}\n',
];

const { registry } = loadFiles([{ folder: 'profiles', texts: sampleTexts() }]);
const derived = deriveTables(
  registry,
  { machine: 'plumstead/wren', filament: 'oakhollow/daisy-pla', policy: 'house' },
  { today: '2026-12-31' },
);

/** The user's own form of a table. */
export const templateArea: FuzzArea = {
  name: 'templates',
  share: 0.1,
  seeds,
  take: (text) => {
    if (!derived.ok) throw new Error(derived.error.message);
    const template = readTemplate(text);
    if (!template.ok) {
      must(template.error.length > 0, 'refused without a problem');
      const lines = text.split('\n').length;
      must(
        template.error.every(({ line }) => line === null || (line >= 1 && line <= lines)),
        'a place outside',
      );
      return false;
    }
    const filled = formatTableByTemplate(template.value, derived.value, 'html');
    must(!filled.ok || filled.value.length <= 4_000_000, 'wrote more than is allowed');
    return filled.ok;
  },
};
