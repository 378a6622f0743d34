import { readFileSync } from 'node:fs';
import { posix } from 'node:path';
import { Ajv } from 'ajv';
import formatsPlugin from 'ajv-formats';
import { HtmlValidate } from 'html-validate';
import { beforeAll, describe, expect, it } from 'vitest';
import { rules } from '../../src/rules/engine/rules.ts';
import { dangersIn } from '../text/dangers.ts';
import { sampleSite } from './sample-site.ts';

/** Hides, turns the direction, ends lines, commands a runner, marks up: as much of it as a name may hold. */
const poison = JSON.stringify(
  'POISON \u009B2J\u202E\u2066\u200B\u2028::error::x ##[error]\u0085<script>alert(1)</script>|[x](javascript:1)',
).replace(/[^ -~]/g, (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`);

let site: Map<string, string>;
let pages: [string, string][];
beforeAll(() => {
  site = sampleSite();
  pages = [...site].filter(([path]) => path.endsWith('.html'));
}, 120_000);

const table = 'pairings/house/plumstead/wren/hs-0.6/oakhollow/daisy-pla';
const pageOf = (path: string) => site.get(path) ?? '';

/** A page as a reader sees it. */
function textOf(html: string): string {
  return html.replace(/<[^>]*>/g, ' ').replace(/\s+/g, ' ');
}

/** The pages of one of each kind, since those of a kind are made alike. */
function onePageOfEachKind(): [string, string][] {
  const seen = new Set<string>();
  return pages.filter(([path]) => {
    const kind = path.includes('/') ? (path.split('/')[0] ?? '') : path;
    return !seen.has(kind) && seen.add(kind);
  });
}

describe('the catalogue', () => {
  it('has a page for every profile, pairing and rule, and for each list', () => {
    const paths = pages.map(([path]) => path);
    expect(paths).toEqual(
      expect.arrayContaining([
        ...['index.html', 'machines.html', 'filaments.html', 'trials.html', 'sources.html', 'quirks.html'],
        ...['rules.html', 'polymers.html', 'policies.html', 'jobs.html', 'additions.html', 'untabled.html'],
        ...['machines/plumstead/wren.html', 'filaments/oakhollow/daisy-pla.html', 'polymers/PLA.html'],
        ...['trials/wren-daisy-pla-230.html', 'sources/plumstead-wren-sheet.html', 'policies/house.html'],
        ...['jobs/hook.html', `${table}.html`],
        ...rules.map(({ code }) => `rules/${code}.html`),
      ]),
    );
  });

  it('is valid HTML, by the rules of access too', async () => {
    const validator = new HtmlValidate({
      root: true,
      extends: ['html-validate:recommended', 'html-validate:document', 'html-validate:a11y'],
      rules: { 'long-title': 'off', 'require-sri': ['error', { target: 'crossorigin' }] },
    });
    for (const [path, html] of onePageOfEachKind()) {
      const { results } = await validator.validateString(html);
      const complaints = results.flatMap(({ messages }) => messages.map(({ message }) => message));
      expect.soft(complaints, path).toEqual([]);
    }
  });

  it('links within itself alone, to files that it has', () => {
    for (const [path, html] of pages) {
      for (const [, address = ''] of html.matchAll(/\s(?:href|src)="([^"]*)"/g)) {
        const target = posix.join(posix.dirname(path), decodeURIComponent(address));
        expect.soft(site.has(target), `${path}: ${address}`).toBe(true);
      }
    }
  });

  it('can be reached page by page from the first one', () => {
    const reached = new Set(['index.html']);
    for (const path of reached) {
      for (const [, address = ''] of pageOf(path).matchAll(/\shref="([^"]*\.html)"/g)) {
        reached.add(posix.join(posix.dirname(path), decodeURIComponent(address)));
      }
    }
    expect(pages.map(([path]) => path).filter((path) => !reached.has(path))).toEqual([]);
  });

  it('lets nothing be loaded from elsewhere, and holds neither script nor style in its pages', () => {
    for (const [path, html] of pages) {
      expect
        .soft(html, path)
        .toContain(`http-equiv="Content-Security-Policy" content="default-src &apos;none&apos;;`);
      expect
        .soft(html, path)
        .not.toMatch(
          /unsafe-|<script(?! src="(?:catalogue|compare|bench)(?:-data)?\.js" defer><\/script>)|<style|\sstyle=|\son\w+=/,
        );
    }
  });
});

describe('a page', () => {
  it('of a pairing holds the card, the ladders with their readings, and the trials behind them', () => {
    const html = pageOf(`${table}.html`);
    expect(html).toContain('<article class="card');
    expect(html).toContain('href="../../../../../../trials/wren-daisy-pla-230.html"');
    expect(textOf(html)).toMatch(/oakhollow\/daisy-pla on plumstead\/wren: every flow ladder/);
    expect(site.get(`${table}--ladders.csv`)).toMatch(
      /^mark,name,commanded flow \(mm³\/s\),deficit \(%\),low,high\r\n/,
    );
  });

  it('of a trial holds result, interval, warnings and every reading', () => {
    const text = textOf(pageOf('trials/wren-daisy-pla-230.html'));
    const sheet = site.get('trials/wren-daisy-pla-230--readings.csv') ?? '';
    const reduction = JSON.parse(site.get('trials/wren-daisy-pla-230--reduction.json') ?? '{}');
    expect(text).toMatch(/Melt flow limit [\d.]+ mm³\/s, 95 % interval [\d.]+–[\d.]+ mm³\/s/);
    expect(reduction).toMatchObject({ format: 'meltbounds-reduction/1', method: 'flowLadder' });
    const read = readFileSync(
      new URL('../fixtures/registry/trials/2026/wren-daisy-pla-230.csv', import.meta.url),
      'utf8',
    );
    expect(sheet.trim().split('\r\n')).toHaveLength(read.trim().split(/\r?\n/).length);
    expect(site.has('trials/wren-daisy-pla-230--curve.svg')).toBe(true);
  });

  it('says what has no result and what is invented, and defuses what a stranger writes; what rests on none of it is as it was', () => {
    const changed = sampleSite(({ edit, read, write }) => {
      edit('jobs/hook.yaml', 'kind: job\n', 'kind: job\ninvented: true\n');
      edit(
        'machines/plumstead/wren.yaml',
        /^name: .*$/m.exec(read('machines/plumstead/wren.yaml'))?.[0] ?? '',
        `name: ${poison}`,
      );
      write(
        'trials/2026/wren-daisy-pla-230.csv',
        'commandedFlow [mm3/s],feedLength [mm],extrudedMass [g]\r\n10,500,1.49\r\n',
      );
    });
    const trial = changed.get('trials/wren-daisy-pla-230.html') ?? '';
    expect(textOf(trial)).toContain('No result: its readings cannot be reduced.');
    expect(trial).toContain('<strong>Warning:</strong>');
    expect(textOf(changed.get('jobs/hook.html') ?? '')).toContain('no such thing exists');
    expect(textOf(changed.get('machines/plumstead/wren.html') ?? '')).toContain('POISON');
    const dangers = [...changed].flatMap(([path, text]) =>
      dangersIn(text, { commands: true })
        .filter((danger) => !danger.includes('inner command'))
        .map((danger) => `${path}: ${danger}`),
    );
    expect(dangers).toEqual([]);
    const pages = [...changed].filter(
      ([path, text]) => /\.(?:html|js|svg)$/.test(path) && text.includes('<script>a'),
    );
    expect(pages.map(([path]) => path)).toEqual([]);
    const same = [...changed].filter(([path, text]) => site.get(path) === text);
    expect(same.length).toBeGreaterThan(0.8 * site.size);
  });

  it('of a profile shows every figure as it was typed, with what it rests on', () => {
    const text = textOf(pageOf('filaments/oakhollow/daisy-pla.html'));
    expect(text).toMatch(/Density 1\.24 g\/cm³ claimed always oakhollow-daisy-pla-sheet/);
    expect(text).toMatch(/Melt flow limit [\d.]+ mm³\/s [\d.]+–[\d.]+ mm³\/s measured/);
  });

  it('of a source says who cites it for what', () => {
    expect(textOf(pageOf('sources/oakhollow-daisy-pla-sheet.html'))).toMatch(
      /Daisy PLA \(filament\) : [a-z ,]*density/,
    );
  });
});

describe('the data beside the pages fit their published schemas:', () => {
  const ajv = new Ajv({ strict: true, allErrors: true, allowUnionTypes: true });
  formatsPlugin.default(ajv);
  it.each([
    ['catalogue', /^index\.json$/],
    ['catalogue-list', /^(?:machines|filaments|trials|sources|polymers|policies|jobs|additions)\.json$/],
    ['catalogue-profile', /^(?:machines|filaments|polymers|trials|sources|policies|jobs)\/(?!.*--).*\.json$/],
    ['catalogue-quirks', /^quirks\.json$/],
    ['reduction', /--reduction\.json$/],
    ['rules', /^rules(?:\/.*)?\.json$/],
    ['tables', /^pairings\/.*\.json$/],
  ])('%s', (name, pattern) => {
    const schema = new URL(`../../schema/output/${name}.schema.json`, import.meta.url);
    const validate = ajv.compile(JSON.parse(readFileSync(schema, 'utf8')));
    const texts = [...site].filter(([path]) => pattern.test(path));
    expect(texts.length).toBeGreaterThan(0);
    for (const [path, text] of texts) {
      validate(JSON.parse(text));
      expect.soft(validate.errors, path).toBeNull();
    }
    expect(validate({})).toBe(false);
  });
});
