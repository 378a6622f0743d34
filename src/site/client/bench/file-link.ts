import { element, type Markup } from '../../../text/html-element.ts';

const types: Readonly<Record<string, string>> = {
  csv: 'text/csv',
  svg: 'image/svg+xml',
  json: 'application/json',
  yaml: 'application/yaml',
};

/** A link that saves a text as a file, with no request to anywhere. */
export function fileLink(shown: string, name: string, text: string): Markup {
  const type = types[name.split('.').at(-1) ?? ''] ?? 'text/plain';
  const href = `data:${type};charset=utf-8,${encodeURIComponent(text)}`;
  return element('a', { href, download: name.split('/').at(-1) ?? name }, [shown]);
}
