import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { linksOf, pathOfLink } from '../../scripts/docs/document-links.ts';
import { projectFolder } from '../../scripts/docs/documents.ts';

const atTop = ['README.md', 'CONTRIBUTING.md', 'DEVELOPERS.md', 'SECURITY.md', 'profiles/README.md'];
const pages = readdirSync(`${projectFolder}docs`, { recursive: true, encoding: 'utf8' })
  .map((path) => `docs/${path.replaceAll('\\', '/')}`)
  .filter((path) => path.endsWith('.md'));

describe('every link of a document leads somewhere:', () => {
  test.each([...atTop, ...pages].map((path) => [path]))('%s', (path) => {
    expect(linksOf(read(path)).filter((link) => !leadsSomewhere(path, link))).toEqual([]);
  });
});

test('every page of docs/ can be reached from the README', () => {
  const reached = new Set(['README.md']);
  for (const page of reached) {
    for (const link of linksOf(read(page))) {
      const target = join(dirname(page), pathOfLink(link)).replaceAll('\\', '/');
      if (target.endsWith('.md')) reached.add(target);
    }
  }
  expect(pages.filter((page) => !reached.has(page))).toEqual([]);
});

test.each([
  ['README.md', 'docs/nowhere.md', false],
  ['README.md', '#no-such-heading', false],
  ['README.md', 'docs/rules.md#severity', true],
  ['docs/rules.md', '../README.md#cautions', true],
])('in %s, %s: %s', (path, link, leads) => {
  expect(leadsSomewhere(path, link)).toBe(leads);
});

/** A document's text. */
function read(path: string): string {
  return readFileSync(join(projectFolder, path), 'utf8');
}

function leadsSomewhere(from: string, link: string): boolean {
  const path = pathOfLink(link);
  const target = path === '' ? join(projectFolder, from) : join(projectFolder, dirname(from), path);
  if (!existsSync(target)) return false;
  const [, anchor] = link.split('#');
  if (anchor === undefined) return true;
  return statSync(target).isFile() && anchorsOf(readFileSync(target, 'utf8')).includes(anchor);
}

/** Anchors that code hosts make of headings: lower case, spaces to hyphens, other punctuation left out. */
function anchorsOf(markdown: string): string[] {
  const headings = markdown.replaceAll(/^ *```[\s\S]*?^ *```$/gm, '').matchAll(/^#+ (.*)$/gm);
  return [...headings].map(([, heading = '']) =>
    heading
      .toLowerCase()
      .replaceAll(/[^\p{L}\p{N}\s_-]/gu, '')
      .trim()
      .replaceAll(' ', '-'),
  );
}
