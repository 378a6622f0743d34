import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { shellWords } from '../../scripts/docs/shell-words.ts';
import { compareFigures, type JobFigures } from '../../src/decisions/compare/compare-figures.ts';
import { jobFigures } from '../../src/decisions/compare/compare-pairings.ts';
import { formatComparisonAsJson } from '../../src/decisions/compare/comparison-as-json.ts';
import { figuresOfPairing } from '../../src/decisions/compare/figures-of-pairing.ts';
import type { PairingFigures } from '../../src/decisions/compare/pairing-figures.ts';
import { findPairing } from '../../src/knowledge/pairing.ts';
import { needAnswer } from '../../src/site/compare/need-answer.ts';
import { needCommand } from '../../src/site/compare/need-command.ts';
import { machinesOf, needFieldsOf, needFragment, readNeed } from '../../src/site/compare/need-fields.ts';
import { layerRange, needForm } from '../../src/site/compare/need-form.ts';
import { needPlot } from '../../src/site/compare/need-plot.ts';
import { demo, lantern, skiff, steeple } from '../decisions/compare/demo-comparison.ts';
import { runCommand } from '../run-command.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const hearth = { machine: 'emberlow/hearth', nozzle: 'hs-0.6', filament: 'quillmere/rigging-abs' };
const wide = { ...lantern, nozzle: 'hs-0.6' };

/** As a page has it: what was written into a script and read again. */
function throughScript<Value>(value: Value): Value {
  return JSON.parse(JSON.stringify(value));
}

function figuresFor(request: typeof lantern, policy = 'workshop'): PairingFigures {
  const pairing = findPairing(demo, { ...request, policy });
  const figures = pairing.ok ? figuresOfPairing(demo, pairing.value) : pairing;
  if (!figures.ok) throw new Error(figures.error.message);
  return throughScript(figures.value);
}

function jobOf(id: string): JobFigures {
  return throughScript(jobFigures(demo.job.get(id)!));
}

const titled = (requests: readonly (typeof lantern)[], policy?: string) =>
  requests.map((each) => ({ title: each.machine, figures: figuresFor(each, policy) }));

/** The cells of a table in Markdown, row by row. */
function markdownCells(text: string): string[][] {
  const rows = text.split('\n').filter((line) => line.startsWith('|') && !/^\|[\s|:-]+$/.test(line));
  return rows.map((row) =>
    row
      .split('|')
      .slice(1, -1)
      .map((cell) => cell.replace(/[*\\]/g, '').trim()),
  );
}

/** The cells of the tables in HTML, row by row. */
function htmlCells(markup: string): string[][] {
  return [...markup.matchAll(/<tr>(.*?)<\/tr>/gs)].map(([, row = '']) =>
    [...row.matchAll(/<t[hd][^>]*>(.*?)<\/t[hd]>/gs)].map(([, cell = '']) =>
      cell.replace(/<[^>]*>/g, '').trim(),
    ),
  );
}

describe('what the page of the comparison says of a job is what the command prints:', () => {
  it.each([
    ['mask-rack', [lantern, steeple], 'workshop', ''],
    ['mask-rack', [lantern, steeple], 'workshop', 'layer=0.3&share=60&jobs=2000&hour=38&power=0,06'],
    ['mask-rack', [lantern, steeple, skiff], 'prototype', 'layer=0.12&share=35&labour=3&wear=0.4'],
    ['prop-bottle', [wide, hearth], 'workshop', 'layer=0.45&share=80&jobs=12&price2=6200&hour=20'],
    ['prop-bottle', [hearth, wide], 'prototype', 'share=7.5'],
    ['giant-helmet', [wide], 'workshop', 'layer=1.3'],
  ])('%s, %j, %s, %s', async (id, requests, policy, fragment) => {
    const pairings = titled(requests, policy);
    const figures = pairings.map((pairing) => pairing.figures);
    const job = jobOf(id);
    const { terms, wrong } = readNeed(needFieldsOf(fragment), 'EUR', machinesOf(figures));
    expect(wrong).toEqual([]);
    const command = needCommand(id, figures, terms) ?? '';
    const words = shellWords(command).slice(2);
    const { status, out } = await runCommand(root, [...words, '--format', 'json']);
    const compared = compareFigures(job, figures, terms);
    expect({ status, out }).toEqual({
      status: 0,
      out: compared.ok ? formatComparisonAsJson(compared.value) : compared.error.message,
    });

    const printed = (await runCommand(root, [...words, '--format', 'markdown'])).out;
    const { sentence, figures: shown } = needAnswer(job, pairings, terms);
    const markup = shown.map((each) => each.markup).join('\n');
    expect(printed).toContain(sentence);
    const rows = htmlCells(markup)
      .filter((cells) => cells.length === pairings.length + 1)
      .slice(1);
    expect(rows.length).toBeGreaterThan(20);
    const all = markdownCells(printed).map((cells) => cells.join('|'));
    expect(rows.map((cells) => cells.join('|')).filter((row) => !all.includes(row))).toEqual([]);
    expect(markup).toContain(command.replaceAll('"', '&quot;').slice(0, 60));
  });

  it('also where a job cannot be printed so, in words', () => {
    const { sentence, figures } = needAnswer(jobOf('mask-rack'), titled([lantern]), { layerHeight: 0.5 });
    expect(sentence).toBe(
      'Layers of 0.5 mm are higher than the lines of the job are wide, 0.45 mm. Take at most 0.45 mm.',
    );
    expect(figures).toEqual([]);
  });

  it('by no command where the pairings follow different house rules', () => {
    const mixed = [...titled([lantern], 'workshop'), ...titled([steeple], 'prototype')];
    const figures = mixed.map((each) => each.figures);
    expect(needCommand('mask-rack', figures, {})).toBeNull();
    const { figures: shown } = needAnswer(jobOf('mask-rack'), mixed, {});
    const text = shown.map(({ markup }) => markup).join(' ');
    expect(text).toContain('policy workshop, prototype');
    expect(text).toContain('takes one set of house rules, and these pairings follow several');
  });
});

describe('what is asked', () => {
  it('stands in the address with the pairings, and comes back from it', () => {
    const fields = needFieldsOf('#job=mask-rack&share=60&hour=38&currency=usd');
    const fragment = needFragment(['pairings/a.html', 'pairings/b.html'], fields);
    expect(fragment).toBe(
      'pairing=pairings%2Fa.html&pairing=pairings%2Fb.html&job=mask-rack&share=60&currency=usd&hour=38',
    );
    expect(needFieldsOf(fragment)).toEqual(fields);
    expect(readNeed(fields, 'EUR', []).terms).toEqual({
      ...{ meltShare: 0.6, hourValue: { amount: 38, currency: 'USD' }, hourlyCosts: {} },
    });
  });

  it('is not counted where it cannot be read, and is named', () => {
    const fields = needFieldsOf('layer=-1&share=150&jobs=1.5&hour=much&power=0&wear=1&labour=2,5');
    const { terms, wrong } = readNeed(fields, 'EUR', []);
    expect(wrong).toEqual(['layer', 'share', 'jobs', 'hour', 'power']);
    expect(terms).toEqual({
      hourlyCosts: { wear: { amount: 1, currency: 'EUR' }, labour: { amount: 2.5, currency: 'EUR' } },
    });
    expect(readNeed(needFieldsOf('hour=38&currency=E'), 'EUR', [])).toEqual({
      ...{ terms: { hourlyCosts: {} }, wrong: ['currency', 'hour'] },
    });
  });

  it('has a price a machine, whichever pairings are on it', () => {
    const pairings = [lantern, wide, steeple].map((each) => figuresFor(each));
    expect(machinesOf(pairings)).toEqual(['brackwater/lantern', 'tollwick/steeple']);
    const { terms, wrong } = readNeed(
      needFieldsOf('price2=3990&price3=x&price1=-1'),
      'EUR',
      machinesOf(pairings),
    );
    expect(terms.prices).toEqual({ 'tollwick/steeple': { amount: 3990, currency: 'EUR' } });
    // Nobody sees a field of a third machine.
    expect(wrong).toEqual(['price1']);
  });

  it('is shown as text, whatever an address says', () => {
    const fields = needFieldsOf(`hour=${encodeURIComponent('"><script>alert(1)</script>')}`);
    const { markup } = needForm([{ id: 'a', name: '<b>' }], null, fields, {
      currency: 'EUR',
      machines: ['<i>'],
    });
    expect(markup).not.toMatch(/<script|<b>|<i>/);
  });
});

describe('the slider for the layer height', () => {
  it('goes from a fifth of the smallest bore to what nozzles and lines can lay', () => {
    const of = (job: string, ...requests: (typeof lantern)[]) =>
      layerRange(
        jobOf(job),
        requests.map((each) => figuresFor(each)),
      );
    expect(of('mask-rack', lantern, wide)).toEqual({ usual: 0.2, low: 0.08, high: 0.45 });
    expect(of('mask-rack', lantern)).toEqual({ usual: 0.2, low: 0.08, high: 0.32 });
    // The job's own height is always there.
    expect(of('giant-helmet', lantern)).toEqual({ usual: 0.6, low: 0.08, high: 0.6 });
  });
});

it('the plot holds the times of the figures, and grows to the left', () => {
  const pairings = titled([lantern, steeple]);
  const plot = needPlot(jobOf('mask-rack'), pairings, { meltShare: 0.6, layerHeight: 0.3 });
  const lines = plot?.marks.flatMap((mark) => (mark.kind === 'line' ? [mark] : [])) ?? [];
  expect(lines.map(({ style }) => style)).toEqual(['solid', 'dashed']);
  for (const [index, { points }] of lines.entries()) {
    const { terms } = readNeed(needFieldsOf('layer=0.3&share=60'), 'EUR', []);
    const compared = compareFigures(
      jobOf('mask-rack'),
      pairings.map(({ figures }) => figures),
      terms,
    );
    const used = points.find(({ x }) => x === 60);
    expect(compared.ok && compared.value.estimates[index]!.time / 60).toBeCloseTo(used?.y ?? 0, 3);
    expect(points.every(({ y }, place) => place === 0 || y <= points[place - 1]!.y)).toBe(true);
  }
});
