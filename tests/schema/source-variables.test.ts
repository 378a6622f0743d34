import { expect, test } from 'vitest';
import { readSchemaFile, type SchemaFile } from './schema-nodes.ts';

// Citation Style Language 1.0.2 (citationstyles.org), specification, appendix III "Types" and appendix IV
// "Variables", with `id` and `type` of its schema csl-data.json: from memory, and compared with the table of field
// types in the npm package @citation-js/core 0.9.0. Only what a citation in a registry may need is listed.
const cslVariables = [
  ...['id', 'type', 'title', 'title-short', 'container-title', 'container-title-short', 'collection-title'],
  ...['collection-number', 'part-number', 'part-title', 'original-title', 'event-title', 'event-place'],
  ...['author', 'editor', 'translator', 'container-author', 'collection-editor', 'contributor'],
  ...['issued', 'accessed', 'submitted', 'original-date', 'available-date', 'event-date'],
  ...['edition', 'volume', 'issue', 'page', 'page-first', 'number', 'number-of-pages', 'chapter-number'],
  ...['publisher', 'publisher-place', 'authority', 'archive', 'archive_location', 'version', 'status'],
  ...['DOI', 'ISBN', 'ISSN', 'PMID', 'PMCID', 'URL', 'locator', 'section'],
  ...[
    'abstract',
    'annote',
    'genre',
    'keyword',
    'language',

    'medium',
    'note',
    'references',
    'source',
  ],
];

const cslTypes = [
  ...['article', 'article-journal', 'article-magazine', 'article-newspaper', 'bill', 'book', 'broadcast'],
  ...['chapter', 'classic', 'collection', 'dataset', 'document', 'entry', 'entry-dictionary'],
  ...[
    'entry-encyclopedia',
    'event',
    'figure',
    'graphic',
    'hearing',
    'interview',
    'legal_case',
    'legislation',
  ],
  ...['manuscript', 'map', 'motion_picture', 'musical_score', 'pamphlet', 'paper-conference', 'patent'],
  ...['performance', 'periodical', 'personal_communication', 'post', 'post-weblog', 'regulation', 'report'],
  ...['review', 'review-book', 'software', 'song', 'speech', 'standard', 'thesis', 'treaty', 'webpage'],
];

/** Appendix IV has it, the schema csl-data.json and the table compared have not: from memory. */
const cslVariableOfTheText = 'license';

/** Keys of the registry itself, which an export to a reference manager leaves out. */
const ownKeys = ['kind', 'standing', 'invented', 'notice', 'acknowledged'];

const properties = readSchemaFile('source').properties as Record<string, SchemaFile>;

test('the keys of a source are CSL variables, but for the few of the registry itself', () => {
  const foreign = Object.keys(properties).filter(
    (key) => ![...cslVariables, cslVariableOfTheText].includes(key),
  );
  expect(foreign.sort()).toEqual([...ownKeys].sort());
});

test('the types of a source are CSL types', () => {
  expect(properties.type!.enum).toEqual(expect.arrayContaining(['book', 'standard']));
  expect((properties.type!.enum as string[]).filter((type) => !cslTypes.includes(type))).toEqual([]);
});

test('names and dates are written as CSL-JSON writes them', () => {
  const items = properties.author!.items as SchemaFile;
  expect(Object.keys(items.properties as object)).toEqual(['family', 'given', 'literal']);
  expect(Object.keys(properties.issued!.properties as object)).toEqual(['date-parts']);
});
