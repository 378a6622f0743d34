import { HtmlValidate } from 'html-validate';
import { describe, expect, it } from 'vitest';
import { runCommand } from '../../run-command.ts';
import { sampleRegistry } from '../../sample-registry.ts';

const trial = 'wren-daisy-pla-230';

async function report(...options: readonly string[]) {
  return runCommand(sampleRegistry().cwd, ['report', trial, ...options]);
}

const details = [
  ...['--laboratory', 'The Workshop, 3 Lantern Street', '--place', 'Bench 2', '--customer', 'The stage'],
  ...['--item-condition', 'New spool', '--received', '2026-01-05', '--sampling', 'One spool of two'],
  ...['--deviations', 'None', '--authorised-by', 'Ida Marsh', '--external', 'None'],
];

describe('a test report', () => {
  it('has the points of ISO/IEC 17025:2017, 7.8.2.1, in their order, and claims no conformity', async () => {
    const { status, out } = await report('--format', 'markdown');
    expect(status).toBe(0);
    const letters = [...out.matchAll(/^## ([a-z])\\?\) /gm)].map(([, letter]) => letter);
    expect(letters).toEqual([...'bcdefghijklmnop']);
    expect(out).toContain('Conformity with that standard is not claimed');
    expect(out).toContain('The results relate only to the items tested');
    expect(out.trim()).toMatch(/End of report wren-daisy-pla-230, readings [0-9a-f]{16}\.$/);
  });

  it('names what is missing, first and at its point, until somebody states it', async () => {
    const { out } = await report('--format', 'text');
    const head = out.slice(0, out.indexOf('b) Laboratory')).replace(/\s+/g, ' ');
    for (const name of ['name and address of the laboratory', 'sampling', 'who authorises the report'])
      expect(head).toContain(name);
    expect(out).toContain('Not stated (`--authorised-by`).');
    const full = (await report('--format', 'text', ...details)).out;
    expect(full).not.toContain('--authorised-by');
    expect(full).toMatch(/o\) Authorised by\n +Ida Marsh/);
    expect(full).not.toContain('name and address of the laboratory');
  });

  it('says what the reduction says, with U as half of the interval', async () => {
    const { results } = JSON.parse(
      (await runCommand(sampleRegistry().cwd, ['reduce', trial, '--format', 'json'])).out,
    );
    const [{ value, interval }] = results;
    const { out } = await report('--format', 'markdown');
    const row = out.split('\n').find((line) => line.startsWith('| melt flow limit')) ?? '';
    const [, , limit, ends, half] = row.split('|').map((cell) => cell.trim());
    const [low, high] = (ends ?? '').split(/[^\d.]+/).map(Number);
    expect(Number.parseFloat(limit ?? '')).toBeCloseTo(value.value ?? value, 0);
    expect(low).toBeCloseTo(interval.low.value ?? interval.low, 0);
    expect(Number.parseFloat(half ?? '')).toBeCloseTo(((high ?? 0) - (low ?? 0)) / 2, 0);
  });

  it('says that the readings are simulated, and how far each instrument counts', async () => {
    const { out } = await report('--format', 'markdown');
    expect(out).toContain('Simulated readings');
    expect(out).toMatch(/\| smallest step of the scale.*\| 0\.001 g .*\| the interval would be /);
  });

  it('is the same byte for byte on the same day', async () => {
    expect((await report()).out).toBe((await report()).out);
  });

  it('refuses readings that cannot be reduced, and ids and policies that there are none of', async () => {
    const registry = sampleRegistry();
    registry.edit(`trials/2026/${trial}.yaml`, `file: ${trial}.csv`, 'file: nothing.csv');
    expect(await runCommand(registry.cwd, ['report', trial])).toMatchObject({ status: 1, out: '' });
    expect(await report('--policy', 'none')).toMatchObject({ status: 2, out: '' });
    const unknown = await runCommand(sampleRegistry().cwd, ['report', 'wren-daisy-pla-23']);
    expect(unknown).toMatchObject({ status: 2, out: '' });
  });
});

describe('the page', () => {
  it('is sound, loads nothing, and has its identity at the foot of every sheet', async () => {
    const { out } = await report('--laboratory', '<script>alert(1)</script>');
    const validator = new HtmlValidate({
      extends: ['html-validate:recommended', 'html-validate:document', 'html-validate:a11y'],
      rules: { 'long-title': 'off' },
    });
    const { results } = await validator.validateString(out);
    expect(
      results.flatMap(({ messages }) => messages.map(({ message, line }) => `${line}: ${message}`)),
    ).toEqual([]);
    expect(out).not.toMatch(/<(?:script|img|link)|<[^>]*\s(?:href|src)=/);
    expect(out).toMatch(/@bottom-left \{ content: "wren-daisy-pla-230, readings [0-9a-f]{16}"/);
    expect(out).toContain('<svg');
  });
});
