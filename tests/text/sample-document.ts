import {
  cautions,
  code,
  type Document,
  facts,
  groupedTable,
  list,
  numberedList,
  paragraph,
  section,
  table,
  terms,
  warnings,
} from '../../src/text/document.ts';
import { link, quiet, strong } from '../../src/text/inline.ts';

/** A document with a block of every kind. */
export const sampleDocument: Document = {
  title: 'Flow of Lantern',
  answer: 'Lantern feeds 42.7 mm³/s.',
  blocks: [
    paragraph([
      'Measured at ',
      strong('230 °C'),
      '; run `meltbounds reduce` again, ',
      link('as shown', 'how to.md'),
    ]),
    table(
      [
        { heading: 'nozzle', align: 'left', namesRow: true },
        { heading: 'flow', unit: 'mm³/s', align: 'right' },
      ],
      [
        ['hs-0.4', 30.4],
        ['hs-0.6', 9],
      ],
      { caption: 'Flows by nozzle', name: 'flows' },
    ),
    section(
      'Reasons',
      [
        list(['plain', { mark: { sign: '+', word: 'suits' }, text: 'the bed goes to 110 °C' }]),
        numberedList(['first', 'second']),
        facts(['pairing', 'Lantern'], ['on', [quiet('Monday')]]),
        terms([['melt', 'the hot end melts no more']]),
        code('a: 1\n  b: 2\n', 'yaml'),
      ],
      'reasons',
      'boxed',
    ),
    table(
      [
        { heading: 'feature', align: 'left', namesGroup: true },
        { heading: 'line 0.4 mm', group: 'layer 0.2 mm', align: 'left' },
        { heading: 'line 0.5 mm', group: 'layer 0.2 mm', align: 'right' },
      ],
      [
        ['infill', 'slow', 10],
        ['infill', 'fast', ''],
        ['bridge', 'slow', 5],
      ],
    ),
    groupedTable(
      [
        { heading: '', align: 'left' },
        { heading: '1', align: 'left' },
      ],
      [
        { heading: 'time', rows: [['all', '10 min']] },
        { heading: 'peak', rows: [['travel', '80 mm/s']] },
      ],
    ),
    {
      kind: 'picture',
      svg: '<svg role="img" aria-label="a line"></svg>\n',
      characters: '* *\n * ',
      description: 'a line',
      caption: 'How the flow falls.',
    },
    warnings(['simulated readings']),
    cautions(['Hot ends burn.']),
  ],
};

/** A document with a text of a stranger wherever text can stand. */
export function documentWith(text: string): Document {
  return {
    title: text,
    blocks: [
      paragraph(text),
      section(text, [list([text, { mark: { sign: '+', word: 'suits' }, text }]), facts(['name', text])]),
      table([{ heading: text, align: 'left' }], [[text]]),
      code(text),
      warnings([text]),
    ],
  };
}
