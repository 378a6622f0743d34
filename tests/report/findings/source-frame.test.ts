import fc from 'fast-check';
import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import { sourceFrame } from '../../../src/report/findings/source-frame.ts';

/** The frame of a stretch of a text, which must stand on one line. */
function frameOf(text: string, stretch: string) {
  const at = text.indexOf(stretch);
  const before = text.slice(0, at).split('\n');
  const [line, column] = [before.length, (before.at(-1) ?? '').length + 1];
  return sourceFrame(text, { line, column, endLine: line, endColumn: column + stretch.length });
}

describe('the frame of a place', () => {
  it('shows the line and marks the place', () => {
    expect(frameOf('kind: job\nid: hok\nname: Hook\n', 'hok')).toEqual({
      line: 'id: hok',
      marker: '    ~~~',
    });
  });

  it('shows no line end, also where lines end with CRLF', () => {
    expect(frameOf('kind: job\r\nid: hok\r\n', 'hok')).toEqual({ line: 'id: hok', marker: '    ~~~' });
  });

  it('marks one character at least', () => {
    expect(sourceFrame('id: hok', { line: 1, column: 5, endLine: 1, endColumn: 5 })?.marker).toBe('    ~');
    expect(sourceFrame('id:', { line: 1, column: 4, endLine: 1, endColumn: 4 })?.marker).toBe('   ~');
  });

  it('marks up to the end of the line where the place goes on', () => {
    const frame = sourceFrame('a: [1,\n  2]\n', { line: 1, column: 4, endLine: 2, endColumn: 5 });
    expect(frame).toEqual({ line: 'a: [1,', marker: '   ~~~' });
  });

  it('is none where the line is empty or not there', () => {
    expect(sourceFrame('a: 1\n\nb: 2\n', { line: 2, column: 1, endLine: 2, endColumn: 1 })).toBeNull();
    expect(sourceFrame('a: 1\n', { line: 9, column: 1, endLine: 9, endColumn: 2 })).toBeNull();
    expect(sourceFrame('', { line: 1, column: 1, endLine: 1, endColumn: 1 })).toBeNull();
  });

  it('shows tabs as what they are, so that the mark stands right', () => {
    expect(frameOf('\tid: hok', 'hok')).toEqual({ line: '\\u{9}id: hok', marker: `${' '.repeat(9)}~~~` });
  });

  it.each([
    ['an escape sequence', '\u001b[31m'],
    ['a right-to-left override', '\u202e'],
    ['a zero-width space', '\u200b'],
    ['a carriage return', 'a\rb'],
    ['a line separator', '\u2028'],
    ['half a character', '\ud800'],
  ])('never shows %s raw', (_, text) => {
    const frame = frameOf(`name: ${text} hok`, 'hok');
    expect(frame?.line).not.toMatch(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u);
    expect(frame?.line).toContain('\\u{');
    expect(frame?.marker.indexOf('~')).toBe(frame?.line.indexOf('hok'));
  });

  it('counts wide characters as the terminal shows them', () => {
    expect(frameOf('name: 漢字 hok', 'hok')?.marker).toBe(`${' '.repeat(11)}~~~`);
    expect(frameOf('name: 漢字 hok', '漢字')?.marker).toBe(`${' '.repeat(6)}~~~~`);
    expect(frameOf('name: Ä🧪 hok', 'hok')?.marker).toBe(`${' '.repeat(10)}~~~`);
  });

  it('cuts a long line around the place', () => {
    const frame = frameOf(`note: ${'before '.repeat(30)}HERE${' after'.repeat(30)}`, 'HERE');
    expect(frame?.line).toMatch(/^….*before HERE after.*…$/);
    expect(stringWidth(frame?.line ?? '')).toBeLessThanOrEqual(100);
    expect(frame?.marker.indexOf('~')).toBe(frame?.line.indexOf('HERE'));
  });

  it('does not cut what stands before a place near the start', () => {
    const frame = frameOf(`note: HERE ${'after '.repeat(30)}`, 'HERE');
    expect(frame?.line).toMatch(/^note: HERE after .*…$/);
  });

  it('keeps within the width and marks what it shows, whatever the line', () => {
    const fragment = fc.constantFrom('a', 'word ', '\t', '漢', '🧪', '\u202e', '\ud800', '\u0301', '…');
    const anyText = fc.array(fragment, { maxLength: 150 }).map((parts) => parts.join(''));
    fc.assert(
      fc.property(anyText, anyText, anyText, (before, marked, after) => {
        const line = `${before}<${marked}${after}`;
        const [column, endColumn] = [before.length + 1, before.length + 2 + marked.length];
        const frame = sourceFrame(line, { line: 1, column, endLine: 1, endColumn })!;
        const indent = frame.marker.indexOf('~');
        expect(stringWidth(frame.line)).toBeLessThanOrEqual(100);
        expect(frame.marker.length).toBeLessThanOrEqual(100);
        expect(stringWidth(frame.line.slice(0, frame.line.indexOf('<')))).toBe(indent);
      }),
    );
  });
});
