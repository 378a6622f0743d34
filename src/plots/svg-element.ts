import { xmlAttribute, xmlContent } from '../text/xml-text.ts';

/** Attributes of an element; those that are undefined are left out. */
type SvgAttributes = Readonly<Record<string, string | number | undefined>>;

/** An element with attributes and, after them, finished elements. Coordinates are rounded to a hundredth. */
export function svgElement(
  name: string,
  attributes: SvgAttributes,
  children: readonly string[] = [],
): string {
  const start = `<${name}${Object.entries(attributes).map(attribute).join('')}`;
  return children.length === 0 ? `${start}/>` : `${start}>\n${children.join('\n')}\n</${name}>`;
}

/** An element that holds a text. */
export function svgText(name: string, attributes: SvgAttributes, text: string): string {
  return `<${name}${Object.entries(attributes).map(attribute).join('')}>${xmlContent(text)}</${name}>`;
}

function attribute([name, value]: readonly [string, string | number | undefined]): string {
  if (value === undefined) return '';
  return ` ${name}="${typeof value === 'number' ? hundredth(value) : xmlAttribute(value)}"`;
}

function hundredth(value: number): string {
  return String(Number(value.toFixed(2)) + 0);
}
