import { expect, it } from 'vitest';
import { checked } from './run-command.ts';
import { sampleRegistry } from './sample-registry.ts';

/**
 * One slip in a clean registry, one finding, from which alone the file can be fixed. A slip is a replacement of one
 * stretch of one file.
 */
interface Breakage {
  readonly slip: string;
  readonly file: string;
  readonly from: string;
  readonly to: string;
  /** The stretch of the broken file at which the finding must point. */
  readonly at: string;
  readonly finding: Readonly<Record<string, unknown>>;
}

const filament = 'filaments/oakhollow/daisy-pla.yaml';

const breakages: readonly Breakage[] = [
  {
    slip: 'a tab instead of spaces',
    file: filament,
    from: '  - {value: 1.24 g/cm3,',
    to: '\t- {value: 1.24 g/cm3,',
    at: '\t- {value: 1.24',
    finding: {
      rule: 'syntax/yaml',
      message: 'A tab stands where YAML needs spaces',
      allowed: null,
      help: 'Indent with spaces, two a level; most editors can convert tabs.',
    },
  },
  {
    slip: 'a key that stands twice',
    file: filament,
    from: 'spoolMass: 1 kg\n',
    to: 'spoolMass: 1 kg\nspoolMass: 750 g\n',
    at: 'spoolMass: 750 g',
    finding: {
      rule: 'syntax/duplicate-key',
      message: 'The key "spoolMass" stands twice in the same mapping',
      allowed: null,
      help: 'Keep one of them; to state several values, list them as statements under one key.',
    },
  },
  {
    slip: 'a misspelled key',
    file: filament,
    from: 'bedTemperature:',
    to: 'bedTemprature:',
    at: 'bedTemprature',
    finding: {
      rule: 'shape/unknown-key',
      message: '"bedTemprature" is not a key that this kind of document knows',
      allowed: expect.stringContaining('bedTemperature'),
      help: 'Did you mean "bedTemperature"?',
    },
  },
  {
    slip: 'a number without its unit',
    file: 'machines/plumstead/wren.yaml',
    from: 'value: 32 mm3/s',
    to: 'value: 32',
    at: '32\n        basis',
    finding: {
      rule: 'units/bare-number',
      message: 'The value of "meltFlow": 32 has no unit: a volume flow is a number with its unit',
      allowed: expect.stringMatching(/^volume flow in mm3\/s, /),
      help: 'If it is in mm3/s, write `32 mm3/s`',
    },
  },
  {
    slip: 'a window in degrees Fahrenheit under the unit of Celsius',
    file: filament,
    from: '200..235 Cel',
    to: '392..455 Cel',
    at: '392..455 Cel',
    finding: {
      rule: 'plausibility/nozzle-temperature',
      message:
        'A nozzle temperature of 455 Cel is too hot: it lies above 250 Cel, which PLA is not to exceed (allowance 10 K)',
      allowed: '170..260 Cel',
      help: "If it was read in degrees Fahrenheit, write `'392..455 [degF]'`, which is 200..235 Cel.",
    },
  },
  {
    slip: 'an id that is not that of the file, though others refer to it',
    file: filament,
    from: 'id: oakhollow/daisy-pla',
    to: 'id: oakhollow/dasy-pla',
    at: 'oakhollow/dasy-pla',
    finding: {
      rule: 'identity/id-path',
      message:
        'The id "oakhollow/dasy-pla" does not fit the path of the file, filaments/oakhollow/daisy-pla.yaml',
      allowed: 'oakhollow/daisy-pla',
      help: 'Write `id: oakhollow/daisy-pla`, or move the file to filaments/oakhollow/dasy-pla.yaml.',
    },
  },
  {
    slip: 'evidence that is not there',
    file: filament,
    from: 'evidence: wren-daisy-pla-230',
    to: 'evidence: wren-daisy-pla-320',
    at: 'wren-daisy-pla-320',
    finding: {
      rule: 'references/dangling',
      message: 'There is no trial "wren-daisy-pla-320"',
      allowed: 'wren-clover-petg-245, wren-daisy-pla-215, wren-daisy-pla-230',
      help: 'Did you mean "wren-daisy-pla-230"? Else: add it under trials/, or correct the id.',
    },
  },
  {
    slip: 'a limit above what its readings show',
    file: filament,
    from: 'value: 26 mm3/s',
    to: 'value: 36 mm3/s',
    at: '36 mm3/s',
    finding: {
      rule: 'evidence/unsupported',
      message: expect.stringMatching(
        /^The limit 36 mm3\/s is above what the trial "wren-daisy-pla-230" supports: its readings give 2[78](\.\d)? mm3\/s \(95 % interval 2[\d.]+\.\.2[\d.]+ mm3\/s\)$/,
      ),
      allowed: expect.stringMatching(/^up to 2[78](\.\d)? mm3\/s$/),
      help: expect.stringMatching(
        /^Compare the readings and this value with the bench sheet; where the readings are right, write `2[78](\.\d)? mm3\/s` or less\.$/,
      ),
    },
  },
  {
    slip: 'a range whose ends are swapped',
    file: filament,
    from: '200..235 Cel',
    to: '235..200 Cel',
    at: '235..200 Cel',
    finding: {
      rule: 'units/range-reversed',
      message:
        'The value of "nozzleTemperature": 235..200 Cel runs backwards: its first end is the higher one',
      allowed: expect.stringMatching(/^temperature in Cel, /),
      help: 'If both ends are right, write `200..235 Cel`',
    },
  },
  {
    slip: 'a date in 2062',
    file: 'trials/2026/wren-clover-petg-245.yaml',
    from: "date: '2026-02-12'",
    to: "date: '2062-02-12'",
    at: "'2062-02-12'",
    finding: {
      rule: 'dates/future',
      message: 'The date 2062-02-12 is in the future',
      allowed: 'up to 2026-06-01',
      help: 'Correct the date; usually the year is mistyped.',
    },
  },
];

it.each(breakages)('says how to fix $slip', async ({ file, from, to, at, finding }) => {
  const registry = sampleRegistry();
  registry.edit(file, from, to);

  const { findings } = await checked(registry.cwd);

  expect(findings).toHaveLength(1);
  expect(findings[0]).toMatchObject({
    severity: 'error',
    file: `profiles/${file}`,
    ...registry.placeOf(file, at),
    ...finding,
  });
});

it('finds nothing in the registry before it is broken', async () => {
  expect((await checked(sampleRegistry().cwd)).findings).toEqual([]);
});

it('accepts what the finding about degrees Fahrenheit tells to write', async () => {
  const registry = sampleRegistry();
  registry.edit(filament, '200..235 Cel', "'392..455 [degF]'");
  const { findings } = await checked(registry.cwd);
  expect(findings).toEqual([]);
});
