import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { asyncBufferFromFile, parquetMetadataAsync, parquetReadObjects } from 'hyparquet';
import { describe, expect, it } from 'vitest';
import { runCommand } from '../run-command.ts';
import { sampleRegistry } from '../sample-registry.ts';
import { exported } from './exported.ts';

describe('readings', () => {
  it('have a row per row of a sheet, in canonical units, with conditions and the line that they stand in', async () => {
    const registry = sampleRegistry();
    registry.edit(
      'trials/2026/wren-daisy-pla-215.yaml',
      'extrudedMass: g}\n  rows:\n    - [10, 400, 1.195]',
      'extrudedMass: mg}\n  rows:\n    - [10, 400, 1195]',
    );
    const { ask } = await exported(registry.cwd);
    const first = `SELECT trial_id, file, line, strftime(date, '%Y-%m-%d') AS day, batch, nozzle_temperature_cel,
      ambient_temperature_cel, commanded_flow_mm3_per_s, extruded_mass_g, is_simulated, grade
      FROM 'readings.parquet' WHERE reading_no = 1 AND filament_id = 'oakhollow/daisy-pla' ORDER BY trial_id`;
    const row = registry.placeOf('trials/2026/wren-daisy-pla-215.yaml', '[10, 400, 1195]');
    expect(await ask(first)).toEqual([
      {
        ...{ trial_id: 'wren-daisy-pla-215', file: 'trials/2026/wren-daisy-pla-215.yaml', line: row.line },
        ...{ day: '2026-02-10', batch: '26-0001', nozzle_temperature_cel: 215, ambient_temperature_cel: 21 },
        ...{ commanded_flow_mm3_per_s: 10, extruded_mass_g: 1.195, is_simulated: true, grade: null },
      },
      {
        ...{ trial_id: 'wren-daisy-pla-230', file: 'trials/2026/wren-daisy-pla-230.csv', line: 2 },
        ...{ day: '2026-02-11', batch: '26-0001', nozzle_temperature_cel: 230, ambient_temperature_cel: 21 },
        ...{ commanded_flow_mm3_per_s: 12, extruded_mass_g: 1.194, is_simulated: true, grade: null },
      },
    ]);
  });

  it('take a condition that the sheet gives for each row from there', async () => {
    const registry = sampleRegistry();
    registry.write(
      'trials/2026/wren-sweep.yaml',
      `kind: trial
id: wren-sweep
method: temperatureSweep
origin: simulated
date: '2026-02-14'
machine: plumstead/wren
nozzle: hs-0.6
filament: oakhollow/daisy-pla
conditions: {ambientTemperature: 21 Cel, nozzleTemperature: 230 Cel}
observations:
  columns: {nozzleTemperature: '[degF]', grade: '{count}'}
  rows:
    - [392, 2]
    - [410, 4]
`,
    );
    const { ask } = await exported(registry.cwd);
    const swept = `SELECT nozzle_temperature_cel, grade FROM 'readings.parquet' WHERE trial_id = 'wren-sweep'`;
    expect(await ask(swept)).toEqual([
      { nozzle_temperature_cel: 200, grade: 2 },
      { nozzle_temperature_cel: 210, grade: 4 },
    ]);
  });

  it('of a sheet that cannot be read are left out, and the trial says why', async () => {
    const registry = sampleRegistry();
    registry.edit('trials/2026/wren-daisy-pla-230.csv', '12,400,1.194', '12,400,much');
    const { ask } = await exported(registry.cwd);
    const trials = `SELECT trial_id, readings, problem FROM 'trials.parquet' WHERE trial_id LIKE '%pla%' ORDER BY 1`;
    expect(await ask(trials)).toEqual([
      { trial_id: 'wren-daisy-pla-215', readings: 24, problem: null },
      { trial_id: 'wren-daisy-pla-230', readings: null, problem: expect.stringContaining('much') },
    ]);
    expect(await ask(`FROM 'readings.parquet' WHERE trial_id = 'wren-daisy-pla-230'`)).toEqual([]);
  });
});

describe('limits', () => {
  it('carry value, interval, basis, conditions, trial and the line that states them', async () => {
    const registry = sampleRegistry();
    const { ask } = await exported(registry.cwd);
    const limits = `SELECT limit_id, value, interval_low, interval_high, unit, basis, trial_id, at_machine_id,
      at_nozzle_id, at_nozzle_temperature_cel, faults, is_simulated, file, line
      FROM 'limits.parquet' WHERE profile_id = 'oakhollow/daisy-pla' AND trial_id = 'wren-daisy-pla-230'`;
    const file = 'filaments/oakhollow/daisy-pla.yaml';
    expect(await ask(limits)).toEqual([
      {
        ...{ limit_id: 'filament oakhollow/daisy-pla /meltFlow/1/value', value: 26, unit: 'mm3/s' },
        ...{ interval_low: 27.4, interval_high: 28.2, basis: 'measured', trial_id: 'wren-daisy-pla-230' },
        ...{ at_machine_id: 'plumstead/wren', at_nozzle_id: 'hs-0.6', at_nozzle_temperature_cel: 230 },
        ...{ faults: null, is_simulated: true, file, line: registry.placeOf(file, '26 mm3/s').line },
      },
    ]);
  });

  it('state ranges by their ends, and claims by their source', async () => {
    const { ask } = await exported(sampleRegistry().cwd);
    const window = `SELECT value, value_low, value_high, unit, basis, source_id, trial_id FROM 'limits.parquet'
      WHERE profile_id = 'oakhollow/daisy-pla' AND property = 'nozzleTemperature'`;
    expect(await ask(window)).toEqual([
      {
        ...{ value: null, value_low: 200, value_high: 235, unit: 'Cel', basis: 'claimed' },
        ...{ source_id: 'oakhollow-daisy-pla-sheet', trial_id: null },
      },
    ]);
  });

  it('say what is wrong with their evidence, and that readings have changed', async () => {
    const registry = sampleRegistry();
    registry.edit('trials/2026/wren-daisy-pla-230.csv', '34,400,1.014', '34,400,1.013');
    const { ask } = await exported(registry.cwd);
    const changed = `SELECT limits.limit_id, faults FROM 'limits.parquet' limits JOIN 'trials.parquet' trials USING (trial_id)
      WHERE limits.readings_digest <> trials.readings_digest`;
    expect(await ask(changed)).toEqual([
      { limit_id: 'filament oakhollow/daisy-pla /meltFlow/1/value', faults: 'unsupported' },
    ]);
  });

  it('of an addition belong to the filament, and stand in the file of the addition', async () => {
    const registry = sampleRegistry();
    const file = 'additions/team-daisy.yaml';
    registry.write(
      file,
      `kind: addition
id: team-daisy
version: 1.2.3
filament: oakhollow/daisy-pla
meltFlow:
  - value: 25 mm3/s
    basis: measured
    evidence: wren-daisy-pla-230
    at: {machine: plumstead/wren, nozzle: hs-0.6, nozzleTemperature: 230 Cel, batch: 26-0001}
    date: '2026-02-12'
`,
    );
    const { ask } = await exported(registry.cwd);
    const added = `SELECT limit_id, profile_version, line FROM 'limits.parquet' WHERE file = '${file}'`;
    expect(await ask(added)).toEqual([
      { limit_id: 'filament oakhollow/daisy-pla /meltFlow/2/value', profile_version: '1.2.3', line: 6 },
    ]);
  });
});

describe('tables', () => {
  it('lead from a speed by the limit and its trial to the readings', async () => {
    const { ask } = await exported(sampleRegistry().cwd);
    const way = `SELECT DISTINCT speeds.speed_mm_per_s AS speed, limits.value AS flow, results.value AS found,
        count(readings.reading_no) AS readings
      FROM 'tables.parquet' speeds
      JOIN 'table_limits.parquet' links USING (table_id, row_id)
      JOIN 'limits.parquet' limits USING (limit_id)
      JOIN 'results.parquet' results ON results.trial_id = limits.trial_id AND results.quantity = limits.property
      JOIN 'readings.parquet' readings ON readings.trial_id = limits.trial_id
      WHERE speeds.filament_id = 'oakhollow/daisy-pla' AND speeds.nozzle_id = 'hs-0.6' AND speeds.bound = 'melt'
        AND links.is_binding AND speeds.feature = 'infill' AND limits.profile_id = 'oakhollow/daisy-pla'
      GROUP BY ALL ORDER BY speed LIMIT 1`;
    const [first] = await ask(way);
    expect(first).toMatchObject({ flow: 26, readings: 24n });
    expect(Number(first?.found)).toBeCloseTo(27.8, 0);
  });

  it('hold the speeds that `tables` prints', async () => {
    const registry = sampleRegistry();
    const { ask } = await exported(registry.cwd);
    const args = [
      'tables',
      'plumstead/wren',
      'oakhollow/daisy-pla',
      '--nozzle',
      'hs-0.6',
      '--format',
      'json',
    ];
    const { rows } = JSON.parse((await runCommand(registry.cwd, args)).out) as {
      rows: { feature: string; speed: { value: number }; flow: { value: number }; bound: string }[];
    };
    const speeds = `SELECT feature, speed_mm_per_s AS speed, flow_mm3_per_s AS flow, bound, policy_version
      FROM 'tables.parquet' WHERE filament_id = 'oakhollow/daisy-pla' AND nozzle_id = 'hs-0.6'`;
    expect(await ask(speeds)).toEqual(
      rows.map(({ feature, speed, flow, bound }) => ({
        feature,
        speed: speed.value,
        flow: flow.value,
        bound,
        policy_version: '1.0.0',
      })),
    );
  });
});

describe('an export', () => {
  it('has the same bytes each time, from whichever folder it is made', async () => {
    const registry = sampleRegistry();
    const { folder, descriptor } = await exported(registry.cwd);
    const again = sampleRegistry();
    const args = ['export', 'profiles', '--out', 'elsewhere', '--no-remember'];
    await runCommand(again.cwd, args);
    for (const path of [...descriptor.resources.map((each) => each.path), 'datapackage.json']) {
      const [one, other] = [join(folder, path), join(again.cwd, 'elsewhere', path)].map((file) =>
        readFileSync(file),
      );
      expect(one?.equals(other ?? Buffer.of()), path).toBe(true);
    }
  });

  it('reads the same in the reader of the family of its writer', async () => {
    const { folder, ask } = await exported(sampleRegistry().cwd);
    const file = await asyncBufferFromFile(join(folder, 'limits.parquet'));
    const { created_by, num_rows } = await parquetMetadataAsync(file);
    expect(created_by).toBe('meltbounds version 0.0.0');
    const rows = await parquetReadObjects({ file });
    expect(BigInt(rows.length)).toBe(num_rows);
    expect(rows).toEqual(await ask("FROM 'limits.parquet'"));
  });

  it('leaves hostile text as text', async () => {
    const registry = sampleRegistry();
    const hostile = `=HYPERLINK("x") <script>alert(1)</script> '; DROP TABLE limits; -- \u202E`;
    registry.edit(
      'filaments/oakhollow/daisy-pla.yaml',
      'reason: Bench habit',
      `reason: ${JSON.stringify(hostile).replace('\u202E', '\\u202E')}`,
    );
    registry.edit('filaments/oakhollow/daisy-pla.yaml', 'name: Daisy PLA', 'name: __proto__');
    const { ask } = await exported(registry.cwd);
    expect(await ask(`SELECT reason FROM 'limits.parquet' WHERE reason LIKE '=%'`)).toEqual([
      { reason: hostile },
    ]);
    const names = `SELECT name FROM 'filaments.parquet' WHERE filament_id = 'oakhollow/daisy-pla'`;
    expect(await ask(names)).toEqual([{ name: '__proto__' }]);
  });

  it('of a registry without trials has tables without rows', async () => {
    const registry = sampleRegistry();
    for (const name of ['wren-daisy-pla-230', 'wren-daisy-pla-215', 'wren-clover-petg-245'])
      registry.remove(`trials/2026/${name}.yaml`);
    const { ask } = await exported(registry.cwd);
    expect(await ask(`FROM 'readings.parquet'`)).toEqual([]);
    expect(await ask(`SELECT faults FROM 'limits.parquet' WHERE trial_id IS NOT NULL`)).toContainEqual({
      faults: 'missing',
    });
  });
});
