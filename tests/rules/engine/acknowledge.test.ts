import { describe, expect, it } from 'vitest';
import { checked } from '../../run-command.ts';
import { sampleRegistry } from '../../sample-registry.ts';

const filament = 'filaments/oakhollow/daisy-pla.yaml';

/** The sample registry with a limit far below what its trial supports, and acknowledgements. */
function acknowledging(...entries: readonly string[]) {
  const registry = sampleRegistry();
  registry.edit(filament, 'value: 22 mm3/s', 'value: 9 mm3/s');
  const list = entries.map((entry) => `  - {${entry}}\n`).join('');
  registry.write(filament, `${registry.read(filament)}acknowledged:\n${list}`);
  return registry;
}

const usual =
  "rule: evidence/far-below-interval, at: /meltFlow/0, found: 9 mm3/s, reason: The heater is worn, until: '2026-12-31'";

async function codes(entries: readonly string[], today = '2026-06-01') {
  const { findings } = await checked(acknowledging(...entries).cwd, '--today', today);
  return findings.map(({ rule, pointer }) => `${rule} ${pointer}`);
}

describe('an acknowledged finding', () => {
  it('is not reported, at the place named and below it', async () => {
    expect(await codes([usual])).toEqual([]);
    expect(await codes([usual.replace('/meltFlow/0', '/meltFlow/0/value')])).toEqual([]);
    expect(await codes([usual.replace('/meltFlow/0', '/meltFlow')])).toEqual([]);
  });

  it('is not reported up to and including the last day, and is from the next day on', async () => {
    expect(await codes([usual], '2026-12-31')).toEqual([]);
    expect(await codes([usual], '2027-01-01')).toEqual([
      'evidence/far-below-interval /meltFlow/0/value',
      'acknowledgement/expired /acknowledged/0/until',
    ]);
  });

  it('may be acknowledged twice, but only by the same place', async () => {
    expect(await codes([usual, usual])).toEqual([]);
    expect(await codes([usual, usual.replace('/meltFlow/0', '/meltFlow')])).toEqual([
      'acknowledgement/unused /acknowledged/1',
    ]);
  });

  it('is reported again when another value is found, and the entry says which', async () => {
    const registry = acknowledging(usual);
    registry.edit(filament, 'value: 9 mm3/s', 'value: 8 mm3/s');
    const { findings } = await checked(registry.cwd);
    expect(findings).toMatchObject([
      { rule: 'evidence/far-below-interval', found: '8 mm3/s' },
      {
        rule: 'acknowledgement/unused',
        pointer: '/acknowledged/0/found',
        message:
          'Of "evidence/far-below-interval" at /meltFlow/0, "9 mm3/s" was accepted, but "8 mm3/s" is found now',
      },
    ]);
  });

  it('stays acknowledged when its list is put in another order', async () => {
    const registry = acknowledging(usual);
    const [head = '', first = '', rest = ''] = registry.read(filament).split(/(?= {2}- value: (?:9|26) mm3)/);
    const [second = '', tail = ''] = rest.split(/(?<= {4}date: '2026-02-11'\n)/);
    registry.write(filament, head + second + first + tail);
    expect(registry.placeOf(filament, '- value: 9 mm3/s').line).toBeGreaterThan(
      registry.placeOf(filament, '- value: 26 mm3/s').line,
    );
    const { findings, summary } = await checked(registry.cwd);
    expect({ findings, summary }).toMatchObject({ findings: [], summary: { acknowledged: 1 } });
  });

  it('leaves the other one of two equal values to be reported', async () => {
    const registry = acknowledging(usual);
    registry.edit(filament, 'value: 26 mm3/s', 'value: 9 mm3/s');
    const at = async () =>
      (await checked(registry.cwd)).findings.map(({ rule, pointer }) => `${rule} ${pointer}`);
    expect(await at()).toEqual(['evidence/far-below-interval /meltFlow/1/value']);
    registry.edit(filament, 'at: /meltFlow/0', 'at: /meltFlow');
    expect(await at()).toEqual([
      'evidence/far-below-interval /meltFlow/0/value',
      'evidence/far-below-interval /meltFlow/1/value',
      'acknowledgement/unused /acknowledged/0/at',
    ]);
  });

  it('is reported where another rule is acknowledged', async () => {
    expect(await codes([usual.replace('evidence/far-below-interval', 'dates/future')])).toEqual([
      'evidence/far-below-interval /meltFlow/0/value',
      'acknowledgement/unused /acknowledged/0',
    ]);
  });

  it('is reported where another place is acknowledged, one that begins alike too', async () => {
    for (const place of [
      '/meltFlo',
      '/meltFlow/*',
      '/meltFlow/-',
      '/*',
      '/',
      '/meltFlow/0/valu',
      '/meltFlow~10',
    ]) {
      expect(await codes([usual.replace('/meltFlow/0', place)])).toEqual([
        'evidence/far-below-interval /meltFlow/0/value',
        'acknowledgement/unused /acknowledged/0',
      ]);
    }
  });
});

describe('a limit that its own readings refute', () => {
  const entry = usual.replace('far-below-interval', 'unsupported');

  it('is reported all the same, and so is its acknowledgement', async () => {
    const registry = acknowledging(entry);
    registry.edit(filament, 'value: 9 mm3/s', 'value: 29 mm3/s');
    const { findings } = await checked(registry.cwd);
    expect(findings).toMatchObject([
      { rule: 'evidence/unsupported', severity: 'error', pointer: '/meltFlow/0/value' },
      {
        rule: 'acknowledgement/not-allowed',
        severity: 'error',
        pointer: '/acknowledged/0/rule',
        message:
          '"evidence/unsupported" cannot be accepted: the readings or the interval of the limit refute it',
      },
    ]);
  });

  it('is one that its own interval refutes, too', async () => {
    const registry = acknowledging(
      usual,
      usual.replace('far-below-interval', 'value-above-interval').replace('/meltFlow/0', '/retraction'),
    );
    registry.edit(filament, 'value: 5 s, basis', 'value: 5 s, interval: 7..9 s, basis');
    const { findings } = await checked(registry.cwd);
    expect(findings.map(({ rule }) => rule)).toEqual([
      'evidence/value-above-interval',
      'acknowledgement/not-allowed',
    ]);
  });

  it('cannot be acknowledged where nothing is found, or in the past, either', async () => {
    for (const each of [entry, entry.replace('2026-12-31', '2026-01-31')])
      expect(await codes([usual, each])).toEqual(['acknowledgement/not-allowed /acknowledged/1/rule']);
  });
});

describe('an acknowledgement', () => {
  it('of a whole profile is refused', async () => {
    expect(await codes([usual.replace('/meltFlow/0', "''")])).toEqual([
      'evidence/far-below-interval /meltFlow/0/value',
      'acknowledgement/not-allowed /acknowledged/0/at',
    ]);
  });

  it('for more than twelve months is refused, whatever day it is', async () => {
    expect(await codes([usual.replace('2026-12-31', '2027-06-01')])).toEqual([]);
    for (const until of ['2027-06-02', '9999-12-31'])
      expect(await codes([usual.replace('2026-12-31', until)])).toEqual([
        'evidence/far-below-interval /meltFlow/0/value',
        'acknowledgement/too-long /acknowledged/0/until',
      ]);
  });

  it('without what was found accepts nothing', async () => {
    expect(await codes([usual.replace('found: 9 mm3/s, ', '')])).toEqual([
      'evidence/far-below-interval /meltFlow/0/value',
      'shape/missing-key /acknowledged/0',
    ]);
  });

  it('of provenance is refused', async () => {
    const registry = acknowledging(usual, usual.replace('evidence/far-below-interval', 'provenance/missing'));
    registry.edit(filament, 'value: 58 Cel, basis: claimed', 'value: 58 Cel, basis: published');
    const { findings } = await checked(registry.cwd);
    expect(findings.map(({ rule }) => rule)).toContain('acknowledgement/not-allowed');
    expect(findings.map(({ rule }) => rule)).toContain('provenance/own-sheet');
  });

  it('of a misspelled rule is an error that suggests the right one', async () => {
    const registry = acknowledging(usual, usual.replace('far-below-interval', 'far-bellow-interval'));
    const { findings } = await checked(registry.cwd);
    expect(findings).toMatchObject([
      {
        rule: 'acknowledgement/unknown-rule',
        severity: 'error',
        pointer: '/acknowledged/1/rule',
        help: 'Did you mean "evidence/far-below-interval"?',
      },
    ]);
  });

  it('of a rule by its old code leads to `migrate`', async () => {
    const { findings } = await checked(
      acknowledging(usual, usual.replace('evidence/far-below-interval', 'plausibility/strand-feed')).cwd,
    );
    expect(findings).toMatchObject([
      {
        rule: 'acknowledgement/unknown-rule',
        help: 'Run `meltbounds migrate`: this rule is called "plausibility/filament-feed" now.',
      },
    ]);
  });

  it('of an error of form accepts nothing', async () => {
    const registry = acknowledging(usual);
    registry.edit(filament, '1 kg', '1');
    registry.edit(
      filament,
      'acknowledged:\n',
      `acknowledged:\n  - {${usual.replace('evidence/far-below-interval', 'units/bare-number').replace('/meltFlow/0', '/spoolMass')}}\n`,
    );
    const { findings } = await checked(registry.cwd);
    expect(findings.map(({ rule }) => rule)).toEqual(['units/bare-number']);
  });

  it('of a rule of form is unused, and says why, once the profile can be read', async () => {
    const { findings } = await checked(
      acknowledging(usual, usual.replace('evidence/far-below-interval', 'units/bare-number')).cwd,
    );
    expect(findings).toMatchObject([
      {
        rule: 'acknowledgement/unused',
        message:
          '"units/bare-number" cannot be accepted: only findings of rules that judge readable values can',
      },
    ]);
  });

  it('accepts stale evidence in the trial that was run with old firmware', async () => {
    const registry = sampleRegistry();
    const trial = 'trials/2026/wren-daisy-pla-230.yaml';
    registry.edit(trial, 'firmware: 1.3.0', 'firmware: 1.1.0');
    expect((await checked(registry.cwd)).findings.map(({ rule }) => rule)).toEqual([
      'evidence/stale-firmware',
    ]);
    registry.write(
      trial,
      `${registry.read(trial)}acknowledged:\n  - {rule: evidence/stale-firmware, at: /firmware, found: 1.1.0, reason: Only the screen changed, until: '2026-12-31'}\n`,
    );
    expect((await checked(registry.cwd)).findings).toEqual([]);
  });

  it('accepts what a trial finds in its file of readings', async () => {
    const registry = sampleRegistry();
    const trial = 'trials/2026/wren-daisy-pla-230.yaml';
    registry.edit('trials/2026/wren-daisy-pla-230.csv', '26,400,1.171', '26,400,x');
    registry.write(
      trial,
      `${registry.read(trial)}acknowledged:\n  - {rule: evidence/unreducible, at: /observations, found: x, reason: Scale being repaired, until: '2026-12-31'}\n`,
    );
    const { findings } = await checked(registry.cwd);
    expect(findings.map(({ rule }) => rule)).not.toContain('evidence/unreducible');
    expect(findings.map(({ rule }) => rule)).not.toContain('acknowledgement/unused');
  });

  it('accepts findings of its own profile only', async () => {
    const registry = acknowledging(usual);
    const text = registry.read(filament);
    registry.write(filament, text.slice(0, text.indexOf('acknowledged:')));
    const other = 'filaments/oakhollow/clover-petg.yaml';
    registry.write(other, `${registry.read(other)}acknowledged:\n  - {${usual}}\n`);
    const { findings } = await checked(registry.cwd);
    expect(findings.map(({ file, rule }) => `${file} ${rule}`)).toEqual([
      `profiles/${other} acknowledgement/unused`,
      `profiles/${filament} evidence/far-below-interval`,
    ]);
  });
});
