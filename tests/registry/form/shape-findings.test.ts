import { describe, expect, test } from 'vitest';
import type { Kind } from '../../../src/registry/kind.ts';
import { changed, essence, goodTexts, readText } from '../good-documents.ts';

/** What is found after one part of a good document has been replaced. */
function found(kind: Kind, from: string, to: string): string[] {
  return readText(kind, changed(kind, from, to)).findings.map(essence);
}

test.each(Object.keys(goodTexts) as Kind[])('a good %s has no finding', (kind) => {
  expect(readText(kind, goodTexts[kind]).findings).toEqual([]);
});

describe('an unknown key', () => {
  test('is answered with the one that was meant, and its right name is not missed as well', () => {
    expect(found('source', 'standing', 'standng')).toEqual([
      'shape/unknown-key 7:1 "standng" is not a key that this kind of document knows | Did you mean "standing"?',
    ]);
  });

  test('that comes near to none is to be removed', () => {
    expect(found('source', 'standing: read', 'colour: red\nstanding: read')).toEqual([
      'shape/unknown-key 7:1 "colour" is not a key that this kind of document knows | Remove the key, or put its content under one that is known.',
    ]);
  });

  test('in an item says in which', () => {
    expect(found('source', 'literal', 'litteral')).toEqual([
      'shape/unknown-key 5:11 "litteral" is not a key that item 1 of "author" knows | Did you mean "literal"?',
    ]);
  });

  test('lists the keys that are known', () => {
    const [finding] = readText('job', changed('job', 'lineWidth', 'linesWide')).findings;
    expect(finding).toMatchObject({
      found: 'linesWide',
      allowed: 'pathLength, meanSegment, layerHeight, lineWidth',
      pointer: '/features/infill/linesWide',
      source: 'schema/job.schema.json',
    });
  });

  test('hides no other key that is missing', () => {
    expect(found('source', 'title: Data sheet, invented\n', 'colour: red\n').map(rule)).toEqual([
      'shape/missing-key',
      'shape/unknown-key',
    ]);
  });

  test.each(['<<', '__proto__', 'constructor', 'hasOwnProperty'])('may be %s', (key) => {
    expect(found('source', 'standing: read', `${key}: {standing: read}\nstanding: read`)).toEqual([
      `shape/unknown-key 7:1 "${key}" is not a key that this kind of document knows | Remove the key, or put its content under one that is known.`,
    ]);
  });
});

describe('a missing key', () => {
  test('at the root points at the first character and shows an example', () => {
    expect(found('source', 'title: Data sheet, invented\n', '')).toEqual([
      'shape/missing-key 1:1 This document lacks "title" | Add it, for instance: `title: Plastics Engineering`',
    ]);
  });

  test('below a key points at that key and says what it is for', () => {
    expect(found('job', 'meanSegment: 25 mm', '')).toEqual([
      'shape/missing-key 8:3 "travel" lacks "meanSegment": mean length of a move | Add it, for instance: `meanSegment: 25 mm`',
    ]);
  });

  test('in an item of a list points at the item', () => {
    expect(
      found(
        'machine',
        '{id: hs-0.4, diameter: 0.4 mm, material: hardenedSteel}',
        '{id: hs-0.4, diameter: 0.4 mm}',
      ),
    ).toEqual([
      'shape/missing-key 19:9 Item 1 of "nozzles" lacks "material": material of the tip | Add it, for instance: `material: hardenedSteel`',
    ]);
  });

  test('may be one that another key asks for', () => {
    expect(
      found('trial', '  columns: {commandedFlow: mm3/s, feedLength: mm, extrudedMass: g}\n', '').map(rule),
    ).toEqual(['shape/missing-key']);
  });
});

describe('a wrong choice', () => {
  test('is answered with the one that was meant', () => {
    expect(found('source', 'type: document', 'type: dokument')).toEqual([
      'shape/not-a-choice 3:7 "type" is "dokument", which is not one of the allowed values | Did you mean "document"?',
    ]);
  });

  test('that comes near to none is answered with all', () => {
    expect(found('machine', 'layout: gantry', 'layout: robot')).toEqual([
      'shape/not-a-choice 7:9 "layout" is "robot", which is not one of the allowed values | Write one of: movingBed, gantry, parallelArm, belt.',
    ]);
  });

  test('of the wrong type is one finding', () => {
    expect(found('machine', 'layout: gantry', 'layout: 5').map(rule)).toEqual(['shape/not-a-choice']);
  });
});

describe('a wrong type', () => {
  test.each([
    [
      'a number for a text',
      'source',
      'title: Data sheet, invented',
      'title: 5',
      '4:8 "title" must be text | Write it like this: `Lantern Street Props`',
    ],
    [
      'nothing for a text',
      'source',
      'title: Data sheet, invented',
      'title:',
      '4:7 "title" must be text | Write it like this: `Lantern Street Props`',
    ],
    [
      'a text for a mapping',
      'machine',
      'envelope: {x: 300 mm, y: 300 mm, z: 340 mm}',
      'envelope: 300 mm',
      '8:11 "envelope" must be a mapping (keys with values) | Write it like this: `{"x":"290 mm","y":"310 mm","z":"345 mm"}`',
    ],
    [
      'a mapping for a list',
      'source',
      '[{literal: Brackwater}]',
      '{literal: Brackwater}',
      '5:9 "author" must be a list (lines that start with "- ") | Write it like this: `[{"family":"Crawford","given":"R. J."}]`',
    ],
    [
      'a text for yes or no',
      'machine',
      'heated: false',
      'heated: no',
      '24:35 "heated" must be true or false | Write it like this: `false`',
    ],
    [
      'a text for a number',
      'trial',
      '[28, 500, 1.48]',
      '[28, 500, none]',
      '14:17 Item 3 of item 2 of "rows" must be a number | Write a number.',
    ],
    [
      'a text for a whole number',
      'source',
      '[[2026, 1]]',
      '[[2026, May]]',
      '6:30 Item 2 of item 1 of "date-parts" must be a whole number | Write a whole number.',
    ],
  ] as const)('%s', (_, kind, from, to, expected) => {
    expect(found(kind, from, to)).toEqual([`shape/wrong-type ${expected}`]);
  });

  test('of the whole document', () => {
    const { findings } = readText('source', '- kind: source\n');
    expect(findings.map(rule)).toEqual(['shape/not-a-choice']);
  });
});

describe('a wrong form', () => {
  test('of a text shows how it is written', () => {
    expect(found('source', 'id: lantern-sheet', 'id: Lantern Sheet')).toEqual([
      'shape/text-form 2:5 "id" is "Lantern Sheet", which does not have the form it needs | Write it like this: `crawford-1998`',
    ]);
  });

  test('of a version, text or number', () => {
    expect(found('machine', 'version: 1.0.0', 'version: v1.0.0')).toEqual([
      'shape/text-form 3:10 "version" is "v1.0.0", which does not have the form it needs | Write it like this: `1.0.0`',
    ]);
    expect(found('machine', 'version: 1.0.0', 'version: 1.0').map(rule)).toEqual(['shape/wrong-type']);
  });

  test('of a name of a file that would lead out of the folder', () => {
    for (const name of ['../x.csv', '/etc/x.csv', 'a/b.csv', '..csv', 'x.yaml', 'C:x.csv']) {
      expect(found('trial', 'observations:', `observations:\n  file: '${name}'`).map(rule)).toEqual([
        'shape/text-form',
      ]);
    }
  });

  test.each(['2026-02-30', '2026-13-01', '2025-02-29', '2026-3-1', '12.3.2026', '26-03-12'])(
    '%s is not a day',
    (day) => {
      expect(found('machine', '2026-02-01', day)).toEqual([
        `shape/date-form 27:68 "date" is "${day}", which is not a day of the calendar | Write year, month and day with four, two and two digits, for instance 2026-03-12.`,
      ]);
    },
  );

  test('the 29th of February is a day in a leap year', () => {
    expect(found('machine', '2026-02-01', '2028-02-29')).toEqual([]);
  });
});

describe('a wrong size', () => {
  test.each([
    [
      'an empty list',
      'machine',
      '[filamentPresence, clogDetection]',
      '[]',
      '25:10 "sensors" must have at least 1 entry',
    ],
    [
      'a list with an entry twice',
      'machine',
      '[filamentPresence, clogDetection]',
      '[doorOpen, doorOpen]',
      '25:10 "sensors" must have no entry twice',
    ],
    [
      'a list too long',
      'policy',
      '[25 %, 50 %]',
      `[${Array.from({ length: 13 }, () => '25 %').join(', ')}]`,
      '35:15 "layerHeights" must have at most 12 entries',
    ],
    [
      'a list in a list too long',
      'source',
      '[[2026, 1]]',
      '[[2026, 1, 1, 1]]',
      '6:23 Item 1 of "date-parts" must have at most 3 entries',
    ],
    [
      'an empty mapping',
      'filament',
      '{machine: brackwater/lantern, nozzle: hs-0.6, nozzleTemperature: 230 Cel}',
      '{}',
      '21:9 "at" must have at least 1 key',
    ],
    [
      'an empty text',
      'source',
      'title: Data sheet, invented',
      'title: ""',
      '4:8 "title" must have at least 1 character',
    ],
    [
      'a text too long',
      'source',
      'Data sheet, invented',
      'x'.repeat(201),
      '4:8 "title" must have at most 200 characters',
    ],
    [
      'a number too low',
      'source',
      '[[2026, 1]]',
      '[[2026, 0]]',
      '6:30 Item 2 of item 1 of "date-parts" must be at least 1',
    ],
    [
      'a number too high',
      'source',
      '[[2026, 1]]',
      '[[20260, 1]]',
      '6:24 Item 1 of item 1 of "date-parts" must be at most 3000',
    ],
  ] as const)('%s', (_, kind, from, to, expected) => {
    const wanted = expected.slice(expected.indexOf('must'));
    expect(found(kind, from, to)).toEqual([`shape/size ${expected} | Change it: it ${wanted}.`]);
  });
});

function rule(finding: string | { readonly rule: string }): string {
  return typeof finding === 'string' ? (finding.split(' ')[0] ?? '') : finding.rule;
}
