import { describe, expect, it } from 'vitest';
import { runCommand, spawnCommand } from '../run-command.ts';
import { sampleRegistry } from '../sample-registry.ts';

function reduce(cwd: string, ...args: string[]) {
  return runCommand(cwd, ['reduce', ...args]);
}

describe('a trial of the registry', () => {
  it('gives a limit with its interval, with the pairing it holds for', async () => {
    const { status, out, err } = await reduce(sampleRegistry().cwd, 'wren-daisy-pla-230');
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(out).toContain('oakhollow/daisy-pla on plumstead/wren, nozzle hs-0.6, 230 °C');
    expect(out).toMatch(
      /^Melt flow limit 2[\d.]+ mm³\/s, 95 % interval 2[\d.]+–2[\d.]+ mm³\/s \(simulated readings\)\.\n/,
    );
    expect(out).toMatch(/\nCaution: [^\n]*\n[^\n]+\n[^\n]+\n$/);
  });

  it('gives the true limit of the drawn readings inside of its interval', async () => {
    // The readings were drawn around 28 mm3/s.
    const { out } = await reduce(sampleRegistry().cwd, 'wren-daisy-pla-230', '--format', 'json');
    const { interval } = JSON.parse(out).results[0];
    expect(interval.low).toBeLessThan(28);
    expect(interval.high).toBeGreaterThan(28);
  });

  it('that is not there is answered with the nearest one', async () => {
    const { status, out, err } = await reduce(sampleRegistry().cwd, 'wren-daisy-pla-320');
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toContain('There is no trial "wren-daisy-pla-320"');
    expect(err).toContain('Did you mean "wren-daisy-pla-230"?');
  });

  it('that was halted says so', async () => {
    const { out } = await reduce(sampleRegistry().cwd, 'wren-clover-petg-245');
    expect(out).toContain('Warning: The run was halted at 28 mm³/s');
  });

  it('with bad readings in a CSV file names the lines of that file', async () => {
    const registry = sampleRegistry();
    registry.edit('trials/2026/wren-daisy-pla-230.csv', '20,400,1.188', '20,400,"1,188"');
    const { status, out, err } = await reduce(registry.cwd, 'wren-daisy-pla-230');
    expect({ status, out }).toEqual({ status: 1, out: '' });
    expect(err).toBe(
      'profiles/trials/2026/wren-daisy-pla-230.csv:11: extrudedMass `1,188` can be read as 1.188 with a decimal comma or as 1188 with a decimal point; write decimals with a point, and nothing between thousands\n',
    );
  });

  it('with bad inline readings names the row', async () => {
    const registry = sampleRegistry();
    registry.edit('trials/2026/wren-daisy-pla-215.yaml', '[20, 400, 1.194]', '[20, 400, 11.94]');
    const { status, err } = await reduce(registry.cwd, 'wren-daisy-pla-215');
    expect(status).toBe(1);
    expect(err).toMatch(
      /^profiles\/trials\/2026\/wren-daisy-pla-215\.yaml, row 11 of the readings: 11\.94 g /,
    );
  });
});

describe('the JSON form', () => {
  it('has exactly these keys in this order', async () => {
    const { out } = await reduce(sampleRegistry().cwd, 'wren-daisy-pla-230', '--format', 'json');
    const document = JSON.parse(out);
    const [result] = document.results;

    expect(Object.keys(document)).toEqual([
      ...['format', 'method', 'origin', 'results', 'warnings', 'cautions'],
    ]);
    expect(Object.keys(result)).toEqual(['quantity', 'value', 'interval', 'censored']);
    expect(Object.keys(result.value)).toEqual(['value', 'unit']);
    expect(Object.keys(result.interval)).toEqual(['low', 'high', 'unit', 'coverage']);
    expect(document).toEqual({
      format: 'meltbounds-reduction/1',
      method: 'flowLadder',
      origin: { simulated: ['wren-daisy-pla-230'], invented: [] },
      results: [
        {
          quantity: 'meltFlow',
          value: { value: expect.any(Number), unit: 'mm3/s' },
          interval: { low: expect.any(Number), high: expect.any(Number), unit: 'mm3/s', coverage: 0.95 },
          censored: null,
        },
        {
          quantity: 'startDeficit',
          value: { value: expect.any(Number), unit: '1' },
          interval: { low: expect.any(Number), high: expect.any(Number), unit: '1', coverage: 0.95 },
          censored: null,
        },
      ],
      warnings: expect.any(Array),
      cautions: expect.any(Array),
    });
  });

  it('is the same for the trial and for its bare sheet, of which nobody knows where it comes from', async () => {
    const registry = sampleRegistry();
    const trial = registry
      .read('trials/2026/wren-daisy-pla-230.yaml')
      .replace('feedLengthUncertainty: 0.2 %\n', '');
    registry.write('trials/2026/wren-daisy-pla-230.yaml', trial);
    const byId = await reduce(registry.cwd, 'wren-daisy-pla-230', '--format', 'json');
    const byPath = await reduce(
      registry.cwd,
      'profiles/trials/2026/wren-daisy-pla-230.csv',
      '--method',
      'flowLadder',
      '--diameter',
      '1.75 mm',
      '--density',
      '1.24 g/cm3',
      '--resolution',
      '0.001 g',
      '--format',
      'json',
    );
    const { sheet, ...found } = JSON.parse(byPath.out);
    expect(found).toEqual({ ...JSON.parse(byId.out), origin: null });
    expect(sheet.columns.map(({ name }: { name: string }) => name)).toContain('extrudedMass');
  });

  it('is the same bytes in every process, time zone and language', { tags: 'long' }, () => {
    const { cwd } = sampleRegistry();
    const args = ['reduce', 'wren-daisy-pla-215', '--format', 'json'];
    const first = spawnCommand(cwd, args, { TZ: 'UTC', LANG: 'C' });
    const second = spawnCommand(cwd, args, {
      TZ: 'Pacific/Kiritimati',
      LANG: 'tr_TR.UTF-8',
      LC_ALL: 'tr_TR.UTF-8',
    });
    expect(first.status).toBe(0);
    expect(second).toEqual(first);
  });
});
