import { HtmlValidate } from 'html-validate';
import { describe, expect, it } from 'vitest';
import type { Document } from '../../src/text/document.ts';
import { formatHtml } from '../../src/text/format-html.ts';
import { documentWith, sampleDocument } from './sample-document.ts';

const validator = new HtmlValidate({
  root: true,
  extends: ['html-validate:recommended', 'html-validate:document', 'html-validate:a11y'],
});

function bodyOf(document: Document): string {
  return formatHtml(document)
    .map(({ markup }) => markup)
    .join('\n');
}

async function complaints(document: Document): Promise<string[]> {
  const head = '<head><meta charset="utf-8"><title>A page</title></head>';
  const page = `<!DOCTYPE html>\n<html lang="en">${head}<body>${bodyOf(document)}</body></html>\n`;
  const { results } = await validator.validateString(page);
  return results.flatMap(({ messages }) => messages.map(({ ruleId, message }) => `${ruleId}: ${message}`));
}

describe('formatHtml', () => {
  it('gives pages that a validator finds nothing wrong with', async () => {
    expect(await complaints(sampleDocument)).toEqual([]);
  });

  it.each([
    ['the title and the answer', '<h1>Flow of Lantern</h1>\n<p class="answer">Lantern feeds 42.7 mm³/s.</p>'],
    [
      'a section with its names',
      '<section class="boxed" aria-labelledby="reasons">\n<h2 id="reasons">Reasons</h2>',
    ],
    ['a unit below its heading', '<th scope="col" class="number">flow <span class="unit">mm³/s</span></th>'],
    ['a cell that names its row', '<th scope="row">hs-0.4</th>\n<td class="number">30.4</td>'],
    ['a group of rows', '<tr><th scope="rowgroup" colspan="2">peak</th></tr>'],
    ['a heading in common', '<th scope="colgroup" colspan="2">layer 0.2 mm</th>'],
    ['the headings below it', '<tr>\n<th scope="col">line 0.4 mm</th>\n<th scope="col" class="number">'],
    ['the heading beside it', '<th scope="col" rowspan="2">feature</th>'],
    [
      'a name of rows once',
      '<th scope="rowgroup" rowspan="2">infill</th>\n<td>slow</td>\n<td class="number">10</td>\n</tr>\n<tr>\n<td>fast</td>\n<td></td>',
    ],
    ['code', 'run <code>meltbounds reduce</code> again'],
    ['lines of code', '<pre><code>a: 1\n  b: 2</code></pre>'],
    ['a link', '<a href="how to.md">as shown</a>'],
    ['a marked item', '<li>suits: the bed goes to 110 °C</li>'],
    ['a fact', '<dt>pairing</dt>\n<dd>Lantern</dd>'],
    ['a term', '<dl class="terms">\n<dt>melt</dt>\n<dd>the hot end melts no more</dd>'],
    ['a picture', '<svg role="img" aria-label="a line"></svg>\n<figcaption>How the flow falls.</figcaption>'],
    ['a caution', '<ul class="caution"><li><strong>Caution:</strong> Hot ends burn.</li></ul>'],
  ])('shows %s', (_, markup) => {
    expect(bodyOf(sampleDocument)).toContain(markup);
  });

  it('shows a text of a stranger as text', async () => {
    const hostile = documentWith('</p><script>x</script> & "a" `<b>` \u202e');
    expect(bodyOf(hostile)).not.toMatch(/<script|<b>|\u202e/);
    expect(await complaints(hostile)).toEqual([]);
  });
});
