import { oneLine } from './one-line.ts';
import { xmlAttribute, xmlContent } from './xml-text.ts';

/** Finished HTML. Whatever else goes into an element is text, and is escaped. */
export interface Markup {
  readonly markup: string;
}

/** Attributes of an element; those that are undefined are left out, those that are true have no value. */
export type HtmlAttributes = Readonly<Record<string, string | number | true | undefined>>;

/** Elements without content or end tag (HTML Standard, 13.1.2, void elements), as far as pages here use them. */
const voidElements: ReadonlySet<string> = new Set(['br', 'input', 'link', 'meta']);

/**
 * An element. Texts among its children are shown as they are, markup in them included; spaces and line breaks count as
 * one space, and invisible characters are shown as `\u{…}`, so that no text can turn the direction of what follows.
 */
export function element(
  name: string,
  attributes: HtmlAttributes,
  children: readonly (string | Markup)[] = [],
): Markup {
  const start = `<${name}${Object.entries(attributes).map(attribute).join('')}>`;
  if (voidElements.has(name)) return { markup: start };
  const hasText = children.some((child) => typeof child === 'string');
  const content = children.map((child) => (typeof child === 'string' ? escaped(child) : child.markup));
  const [before, between] = hasText || content.length < 2 ? ['', ''] : ['\n', '\n'];
  return { markup: `${start}${before}${content.join(between)}${before}</${name}>` };
}

function escaped(text: string): string {
  return xmlContent(oneLine(text));
}

function attribute([name, value]: readonly [string, string | number | true | undefined]): string {
  if (value === true) return ` ${name}`;
  return value === undefined ? '' : ` ${name}="${xmlAttribute(oneLine(String(value)))}"`;
}
