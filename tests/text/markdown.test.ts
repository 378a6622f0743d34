import { describe, expect, it } from 'vitest';
import { escapeMarkdown } from '../../src/text/markdown.ts';

describe('escapeMarkdown', () => {
  it.each([
    [
      'mark-up and HTML',
      '*a* `b` <img> | ~~c~~ &amp;',
      '\\*a\\* \\`b\\` \\<img\\> \\| \\~\\~c\\~\\~ \\&amp;',
    ],
    ['emphasis by lines', '_a_ b_c', '\\_a\\_ b_c'],
    ['what would be another character', '&lt; &#60; a & b', '\\&lt; \\&\\#&#8203;60; a & b'],
    ['a link', '[a](b)', '\\[a\\](b)'],
    ['an address of the web', 'see https://b.example', 'see https&#58;//b.example'],
    ['an address that needs no scheme', 'WWW.b.example', 'WWW&#46;b.example'],
    ['a mention and an address of mail', '@bench a@b.example', '@&#8203;bench a@&#8203;b.example'],
    ['the number of an issue', 'a/b#12', 'a/b\\#&#8203;12'],
    ['a change of direction and a new line', 'a\u202Eb\nc', 'a\\\\u{202e}b\\\\u{a}c'],
  ])('shows %s as text', (_, written, escaped) => {
    expect(escapeMarkdown(written)).toBe(escaped);
  });

  it('leaves ids, numbers and units as they are', () => {
    const text = 'oakhollow/daisy-pla on plumstead/wren, hs-0.6: 26.5 mm³/s at 230 °C (95 %)';
    expect(escapeMarkdown(text)).toBe(text);
  });
});
