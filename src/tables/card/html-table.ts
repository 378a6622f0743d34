import { element, type Markup } from '../../text/html-element.ts';
import { printedUnit } from '../../units/print-symbols.ts';

/** A column of a table: its heading in words, its unit if all its cells share one, and whether they are numbers. */
export interface HtmlColumn {
  readonly heading: string;
  /** UCUM code. */
  readonly unit: string | null;
  readonly isNumber: boolean;
}

/** A table with a caption, in a box that scrolls sideways on a narrow screen. */
export function captionedTable(
  caption: string,
  className: string,
  head: readonly Markup[],
  bodies: readonly Markup[],
): Markup {
  const table = element('table', { class: className }, [
    element('caption', {}, [caption]),
    element('thead', {}, head),
    ...bodies,
  ]);
  return element('section', { class: 'scroll', tabindex: 0, 'aria-label': caption }, [table]);
}

/** One row of column headings; a unit stands below its heading. */
export function headingRow(columns: readonly HtmlColumn[]): Markup {
  return element(
    'tr',
    {},
    columns.map(({ heading, unit, isNumber }) =>
      element('th', { scope: 'col', class: isNumber ? 'number' : undefined }, [
        heading,
        ...(unit === null ? [] : [' ', element('span', { class: 'unit' }, [printedUnit(unit)])]),
      ]),
    ),
  );
}

/** A cell: a number to the right, a text to the left. */
export function cell(content: string | number | Markup): Markup {
  if (typeof content === 'number') return element('td', { class: 'number' }, [String(content)]);
  return element('td', {}, [content]);
}

/** A cell that names its row. */
export function rowHeading(content: string | number): Markup {
  const isNumber = typeof content === 'number';
  return element('th', { scope: 'row', class: isNumber ? 'number' : undefined }, [String(content)]);
}
