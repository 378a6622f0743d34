import { describe, expect, it } from 'vitest';
import { formatSheet, sortedRows } from '../../../src/site/bench/draft-sheet.ts';
import { entriesOfSheet } from '../../../src/site/bench/dropped-sheet.ts';
import { askedFor, demo, demoSession, drafted, plannedDraft } from './demo-bench.ts';

const session = demoSession('brackwater/lantern', 'ashgrove/stagecraft-pla');
const planned = plannedDraft(session, askedFor(demo.trial.get('lantern-stagecraft-pla-230')!));

/** The sheet that the page writes after one was dropped on it. */
function rewritten(text: string, bytes = new TextEncoder().encode(text)): string {
  const read = entriesOfSheet(drafted(planned), bytes);
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  const draft = drafted(planned, read.value);
  return formatSheet(draft, sortedRows(draft));
}

const plain =
  'commandedFlow [mm3/s],feedLength [mm],extrudedMass [g]\r\n20,1000,2.980\r\n20,1000,2.98\r\n24,1000,2.9\r\n';

describe('a sheet that is dropped on the page', () => {
  it('is written again byte for byte, with the digits that stood there', () => {
    expect(rewritten(plain)).toBe(plain);
    expect(rewritten(rewritten(plain))).toBe(plain);
  });

  it('keeps the order of its columns and its notes', () => {
    const noted =
      'extrudedMass [g],commandedFlow [mm3/s],feedLength [mm],note\r\n2.98,20,1000,"a click, once"\r\n2.97,24,1000,\r\n';
    expect(rewritten(noted)).toBe(noted);
  });

  it.each([
    ['semicolons and decimal commas', plain.replaceAll(',', ';').replaceAll('.', ',')],
    ['other words in its heading', plain.replace('extrudedMass [g]', 'mass (g)')],
    ['line feeds alone', plain.replaceAll('\r\n', '\n')],
  ])('is read with %s as `reduce` reads it', (_, text) => {
    expect(rewritten(text)).toBe(plain);
  });

  it('leaves out rows without a reading', () => {
    expect(rewritten(`${plain}28,1000,\r\n`)).toBe(plain);
  });

  it('takes the place of what was there, which stays in the draft and can be brought back', () => {
    const read = entriesOfSheet(drafted(planned), new TextEncoder().encode(plain));
    if (!read.ok) throw new Error();
    expect(drafted(planned, read.value).rows).toHaveLength(3);
    expect(read.value.filter((entry) => entry.part === 'row')).toHaveLength(drafted(planned).rows.length);
  });

  it.each([
    ['something else', 'a,b\r\n1,2\r\n', /header|column/],
    ['a workbook', 'PK\u0003\u0004', /./],
  ])('is refused where it is %s', (_, text, words) => {
    const read = entriesOfSheet(drafted(planned), new TextEncoder().encode(text));
    expect(read.ok ? '' : read.error.map(({ message }) => message).join()).toMatch(words);
  });
});
