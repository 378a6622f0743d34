import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { runCommand, unwrapped } from '../run-command.ts';
import { type SampleRegistry, sampleRegistry } from '../sample-registry.ts';

// The sample registry has ladders of this pairing at 215 and 230 Cel.
const pairing = ['plumstead/wren', 'oakhollow/daisy-pla'];

function reduce(registry: SampleRegistry, ...args: string[]) {
  return runCommand(registry.cwd, ['reduce', ...pairing, ...args]);
}

async function json(registry: SampleRegistry, ...args: string[]) {
  return JSON.parse((await reduce(registry, '--format', 'json', ...args)).out);
}

/** Adds a ladder like the one at 215 Cel, under another id. */
function addLadder(registry: SampleRegistry, id: string, ...edits: readonly (readonly [string, string])[]) {
  const file = `trials/2026/${id}.yaml`;
  registry.write(file, registry.read('trials/2026/wren-daisy-pla-215.yaml'));
  registry.edit(file, 'id: wren-daisy-pla-215', `id: ${id}`);
  for (const [from, to] of edits) registry.edit(file, from, to);
}

/** The rows of a ladder up to 20 mm3/s, where nothing is missing yet. */
function withoutOnset(registry: SampleRegistry): readonly [string, string] {
  const text = registry.read('trials/2026/wren-daisy-pla-215.yaml');
  const [, end = ''] = text.split('    - [20, 400, 1.191]\n');
  return [end.slice(0, end.indexOf('notice:')), ''];
}

describe('a machine and a filament', () => {
  it('give the limit against the nozzle temperature', async () => {
    const { status, out, err } = await reduce(sampleRegistry());
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(out).toContain('oakhollow/daisy-pla on plumstead/wren, nozzle hs-0.6');
    expect(out).toMatch(/\n +215 °C +2[\d.]+ mm³\/s +2[\d.]+–2[\d.]+ mm³\/s {2}wren-daisy-pla-215\n/);
    expect(out).toMatch(/\n +230 °C +2[\d.]+ mm³\/s +2[\d.]+–2[\d.]+ mm³\/s {2}wren-daisy-pla-230\n/);
    expect(out).toContain('tested    215–230 °C');
    expect(unwrapped(out)).toContain('a third temperature would test it');
    expect(out).toMatch(/\nCaution: [^\n]*\n[^\n]+\n[^\n]+\n$/);
  });

  it('answer at a temperature between the tested ones', async () => {
    const { at, limits } = await json(sampleRegistry(), '--at', '222.5 Cel');
    expect(at).toHaveLength(1);
    expect(at[0].extrapolated).toBe(false);
    const middle = (limits[0].limit.value + limits[1].limit.value) / 2;
    expect(at[0].limit.value).toBeCloseTo(middle, 3);
    expect(at[0].interval.low).toBeLessThan(middle);
    expect(at[0].interval.high).toBeGreaterThan(middle);
  });

  it('read other units', async () => {
    const { at } = await json(sampleRegistry(), '--at', '428 [degF]');
    expect(at[0].nozzleTemperature).toEqual({ value: 220, unit: 'Cel' });
  });

  it('give nothing outside of the tested temperatures', async () => {
    const { status, out, err } = await reduce(sampleRegistry(), '--at', '240 Cel');
    expect(status).toBe(1);
    expect(out).not.toMatch(/240 (?:Cel|°C)/);
    expect(err).toBe(
      'No limit at 240 °C: the ladders ran from 215 °C to 230 °C. Run a ladder at 240 °C. Or add --extrapolate for a guess.\n',
    );
  });

  it('mark what they extrapolate when they are told to', async () => {
    const registry = sampleRegistry();
    const { status, out } = await reduce(registry, '--at', '240 Cel', '--extrapolate');
    expect(status).toBe(0);
    expect(out).toMatch(/^At 240 °C the limit is .* EXTRAPOLATED\n/);
    const { at } = await json(registry, '--at', '240 Cel', '--extrapolate');
    expect(at[0].extrapolated).toBe(true);
  });

  it('combine several trials at one temperature', async () => {
    const registry = sampleRegistry();
    addLadder(registry, 'wren-daisy-pla-215-again');
    const { temperatures, line } = await json(registry);
    expect(temperatures.map(({ trials }: { trials: number }) => trials)).toEqual([2, 1]);
    expect(line.residualDegreesOfFreedom).toBe(1);
    expect((await reduce(registry)).out).toMatch(/\n +215 °C .* {2}2 trials combined, which\s+agree/);
  });

  it('with one temperature say that a line needs two', async () => {
    const registry = sampleRegistry();
    registry.remove('trials/2026/wren-daisy-pla-230.yaml');
    const { status, out, err } = await reduce(registry, '--at', '215 Cel');
    expect(status).toBe(1);
    expect(unwrapped(out)).toContain(
      'A line needs limits at two nozzle temperatures at least, and there is one',
    );
    expect(err).toContain('there is no line to read it off');
    expect((await json(registry)).line).toBeNull();
  });

  it('show a lower bound without fitting it', async () => {
    const registry = sampleRegistry();
    addLadder(
      registry,
      'wren-daisy-pla-240',
      ['nozzleTemperature: 215 Cel', 'nozzleTemperature: 240 Cel'],
      withoutOnset(registry),
    );
    const { bounds, line, warnings } = await json(registry);
    expect(bounds).toMatchObject([
      { trial: 'wren-daisy-pla-240', nozzleTemperature: { value: 240, unit: 'Cel' }, censored: 'above' },
    ]);
    expect(line.tested.high).toBe(230);
    expect(warnings.join(' ')).toContain('cannot enter a least-squares fit');
    expect((await reduce(registry)).out).toMatch(/\n +240 °C +at least \d+ mm³\/s +wren-daisy-pla-240\n/);
  });

  it('leave out a ladder that accepts another deficit, and say so', async () => {
    const registry = sampleRegistry();
    addLadder(
      registry,
      'wren-daisy-pla-225',
      ['nozzleTemperature: 215 Cel', 'nozzleTemperature: 225 Cel'],
      ['acceptedDeficit: 5 %', 'acceptedDeficit: 8 %'],
    );
    const { leftOut, limits } = await json(registry);
    expect(leftOut).toEqual([
      { trial: 'wren-daisy-pla-225', reason: 'its accepted deficit is different, 8 %' },
    ]);
    expect(limits).toHaveLength(2);
  });

  it('draw the line', async () => {
    const registry = sampleRegistry();
    const { err } = await reduce(registry, '--at', '240 Cel', '--extrapolate', '--plot', 'line.svg');
    expect(err).toBe('Wrote line.svg.\n');
    const svg = readFileSync(join(registry.cwd, 'line.svg'), 'utf8');
    for (const text of ['nozzle temperature (°C)', 'melt flow limit (mm³/s)', 'extrapolated, not tested']) {
      expect(svg).toContain(`>${text}<`);
    }
  });
});

describe('what cannot be gathered', () => {
  it.each([
    [['plumstead/wrem', 'oakhollow/daisy-pla'], 'There is no machine "plumstead/wrem".\nDid you mean'],
    [['plumstead/wren', 'oakhollow/dasy-pla'], 'There is no filament "oakhollow/dasy-pla".\nDid you mean'],
    [[...pairing, '--nozzle', 'hs-0.7'], 'There is no nozzle "hs-0.7"'],
    [[...pairing, '--at', '235'], '--at: '],
    [[...pairing, '--adopt'], 'cannot be adopted'],
    [[...pairing, '--method', 'flowLadder'], '--method belongs to a bare sheet'],
    [['plumstead/wren'], '"plumstead/wren" is a machine.\nAdd the id of a filament'],
    [['wren-daisy-pla-230', '--at', '235 Cel'], 'belong to a machine with a filament'],
  ])('%j', async (args, reason) => {
    const { status, out, err } = await runCommand(sampleRegistry().cwd, ['reduce', ...args]);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toContain(reason);
  });

  it('a pairing without ladders', async () => {
    const registry = sampleRegistry();
    for (const trial of ['wren-daisy-pla-215', 'wren-daisy-pla-230'])
      registry.remove(`trials/2026/${trial}.yaml`);
    const { status, err } = await reduce(registry);
    expect(status).toBe(2);
    expect(err).toContain('The registry holds no flow ladder of oakhollow/daisy-pla on plumstead/wren.');
  });
});
