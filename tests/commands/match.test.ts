import { describe, expect, it } from 'vitest';
import { runCommand, unwrapped } from '../run-command.ts';
import { sampleRegistry, temporaryFolder } from '../sample-registry.ts';

function match(cwd: string, ...args: string[]) {
  return runCommand(cwd, ['match', ...args]);
}

const chamber = 'chamber:\n  enclosed: true\n  heated: false\n  sensed: true\n';

/** A second machine, open and with a cold hot end, on which nothing was measured. */
function withTwin(): string {
  const registry = sampleRegistry();
  const twin = registry
    .read('machines/plumstead/wren.yaml')
    .replace('plumstead/wren', 'plumstead/finch')
    .replace('290 Cel', '220 Cel')
    .replace(chamber, 'chamber: {enclosed: false, heated: false, sensed: false}\n');
  registry.write('machines/plumstead/finch.yaml', twin);
  return registry.cwd;
}

describe('the matrix', () => {
  it('lines up, with a sign a verdict and a legend', async () => {
    const { status, out, err } = await match(withTwin());
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(out).toMatch(
      /^4 pairings: 2 suit, \d suits? with limits, \d do(?:es)? not\.\n\nMachines and filaments\n\n/,
    );
    const lines = out.split('\n');
    const [heading = '', petg = '', pla = ''] = lines.slice(
      lines.findIndex((line) => /^filament /.test(line)),
    );
    const column = heading.indexOf('plumstead/wren');
    expect(heading).toMatch(/^filament +plumstead\/finch +plumstead\/wren$/);
    expect(petg.slice(column)).toMatch(/^[+~x] \(\d/);
    expect(pla.slice(column)).toBe('+ 26');
    expect(petg).toMatch(/^oakhollow\/clover-petg +x /);
    expect(out).toContain('Legend: + suits, ~ suits with limits, x unsuitable');
  });

  it('gives the reasons of whatever does not simply suit, and the cautions', async () => {
    const { out } = await match(withTwin());
    expect(out).toContain(
      'oakhollow/clover-petg on plumstead/finch: unsuitable\n  x hot end "main" goes to 220 °C, the filament needs 230–255 °C\n',
    );
    expect(unwrapped(out)).toContain('never a licence to exceed a limit of the maker');
  });

  it('keeps to one machine with --machine', async () => {
    const { out } = await match(withTwin(), '--machine', 'plumstead/wren');
    expect(out).not.toContain('finch');
  });
});

describe('the ranking for a filament', () => {
  it('takes a measured flow whose readings do not support it for a limit, and says why', async () => {
    const registry = sampleRegistry();
    registry.edit('filaments/oakhollow/daisy-pla.yaml', 'value: 26 mm3/s', 'value: 46 mm3/s');
    const { out } = await match(registry.cwd, 'oakhollow/daisy-pla');
    expect(out).toContain('oakhollow/daisy-pla on plumstead/wren: suits with limits\n');
    expect(out).toMatch(/ {2}~ the measured flow is not supported by its evidence: The limit 46 mm³\/s is\n/);
  });

  it('says that a measured flow is old where the machine has other firmware by now', async () => {
    const registry = sampleRegistry();
    registry.edit('machines/plumstead/wren.yaml', 'firmware: 1.3.0', 'firmware: 4.0.0');
    const { out } = await match(registry.cwd, 'oakhollow/daisy-pla');
    expect(out).toContain('~ the measured flow rests on old evidence: ');
  });

  it('puts what was measured first, and names the basis', async () => {
    const { status, out } = await match(withTwin(), 'oakhollow/daisy-pla');
    expect(status).toBe(0);
    expect(out.split('\n')[0]).toBe(
      'oakhollow/daisy-pla suits plumstead/wren best, with nozzle hs-0.6: 26 mm³/s',
    );
    expect(out).toMatch(
      /\n1 +plumstead\/wren +\+ suits +hs-0\.6 +26 mm³\/s +measured \(simulated\)\n2 +plumstead\/finch .* expected \(simulated\)\n/,
    );
  });

  it('comes as JSON with every reason', async () => {
    const { out } = await match(withTwin(), 'oakhollow/daisy-pla', '--format', 'json');
    const { format, ranked, decisionRule, matches } = JSON.parse(out);
    expect({ format, ranked, decisionRule }).toEqual({
      format: 'meltbounds-match/1',
      ranked: 'oakhollow/daisy-pla',
      decisionRule: 'guardedAcceptance',
    });
    expect(matches[0]).toMatchObject({
      machine: 'plumstead/wren',
      verdict: 'suits',
      flow: {
        ...{ value: 26, unit: 'mm3/s', basis: 'measured' },
        ...{ trials: ['wren-daisy-pla-230'], isSimulated: true },
      },
      claim: { claimed: { value: 32, unit: 'mm3/s' }, probability: { low: 0, high: 0.001 } },
    });
  });

  it('compares with half of the claim by the rule of the policy, and says which', async () => {
    const registry = sampleRegistry();
    const machine = 'machines/plumstead/wren.yaml';
    const policy = 'policies/house.yaml';
    // Half of it, 27.7 mm3/s, lies between the value and the lower end of the interval, 27.4..28.2 mm3/s.
    registry.edit(machine, 'value: 32 mm3/s', 'value: 55.4 mm3/s');
    registry.edit('filaments/oakhollow/daisy-pla.yaml', 'value: 26 mm3/s', 'value: 27.8 mm3/s');
    const guarded = unwrapped((await match(registry.cwd, 'oakhollow/daisy-pla')).out);
    expect(guarded).toContain('Decision rule: guarded acceptance (JCGM 106:2012, 8.3), the default, ');
    expect(guarded).toMatch(/~ 27\.8 mm³\/s .*; 50 % of the 55\.4 mm³\/s claimed for this nozzle/);
    registry.edit(policy, '\nfractions:', '\ndecisionRule: simpleAcceptance\nfractions:');
    const simple = unwrapped((await match(registry.cwd, 'oakhollow/daisy-pla')).out);
    expect(simple).toContain(
      'Decision rule: simple acceptance (JCGM 106:2012, 8.2), stated by policy house: ',
    );
    expect(simple).toMatch(/\+ 27\.8 mm³\/s .*; 50 % of the 55\.4 mm³\/s claimed for this nozzle/);
  });

  it('comes as Markdown in words', async () => {
    const { out } = await match(withTwin(), 'oakhollow/daisy-pla', '--format', 'markdown');
    expect(out).toMatch(
      /\n\| +1 \| plumstead\/wren +\| \+ suits +\| hs-0\.6 +\| +26 mm³\/s \| measured \(simulated\) +\|\n/,
    );
  });
});

it('says where a measured flow is a lower bound only', async () => {
  const registry = sampleRegistry();
  registry.edit(
    'filaments/oakhollow/daisy-pla.yaml',
    '    interval: 27.4..28.2 mm3/s\n    basis: measured\n    evidence: wren-daisy-pla-230\n    readings: 6cc971210344c1a6\n    reason: Kept lower for worn nozzles\n',
    '    basis: measured\n    evidence: wren-short\n',
  );
  const rows = [14, 17, 20, 22, 24, 26].map((flow) => `    - [${flow}, 400, 1.193]`).join('\n');
  const short = registry
    .read('trials/2026/wren-daisy-pla-230.yaml')
    .replace('id: wren-daisy-pla-230', 'id: wren-short')
    .replace(
      '  file: wren-daisy-pla-230.csv',
      `  columns: {commandedFlow: mm3/s, feedLength: mm, extrudedMass: g}\n  rows:\n${rows}`,
    );
  registry.write('trials/2026/wren-short.yaml', short);
  expect((await match(registry.cwd)).out).toMatch(/\noakhollow\/daisy-pla +\+ >26\n/);
  expect((await match(registry.cwd, 'oakhollow/daisy-pla')).out).toContain(
    'at least 26 mm³/s measured (simulated) at 230 °C',
  );
});

describe('what to do next', () => {
  it('is to take the table of the best machine where its flow was measured, else to plan the ladder', async () => {
    const { out: measured } = await match(sampleRegistry().cwd, 'oakhollow/daisy-pla');
    expect(unwrapped(measured)).toContain(
      'Next: `meltbounds tables plumstead/wren oakhollow/daisy-pla --nozzle hs-0.6` gives the speeds.',
    );
    const { out: expected } = await match(withTwin(), 'oakhollow/daisy-pla', '--machine', 'plumstead/finch');
    expect(unwrapped(expected)).toContain(
      'Next: nobody has measured the flow; `meltbounds plan plumstead/finch oakhollow/daisy-pla --nozzle hs-0.4` lays out the ladder.',
    );
  });

  it('is not said where no machine suits', async () => {
    const { out } = await match(withTwin(), 'oakhollow/clover-petg', '--machine', 'plumstead/finch');
    expect(out).toMatch(/^No machine suits oakhollow\/clover-petg\.\n/);
    expect(out).not.toContain('Next:');
  });
});

it('marks what suits and must be known all the same', async () => {
  const registry = sampleRegistry();
  registry.edit(
    'filaments/oakhollow/daisy-pla.yaml',
    '\nnotice:',
    '\nchamberTemperature:\n  - {value: 20..40 Cel, basis: claimed, source: oakhollow-daisy-pla-sheet}\nnotice:',
  );
  const { out } = await match(registry.cwd, 'oakhollow/daisy-pla');
  expect(unwrapped(out)).toContain(
    '! the closed chamber warms up to about 55 °C, the filament bears 40 °C: open the door or the lid',
  );
  expect(out).toContain('x unsuitable, ! to mind.');
});

describe('what is not real', () => {
  it('is named at the head of every form', async () => {
    const registry = sampleRegistry();
    registry.edit('machines/plumstead/wren.yaml', 'notice:', 'invented: true\nnotice:');
    const sentence =
      'Simulated readings (trial wren-daisy-pla-230) and invented profiles (machine plumstead/wren): no bench has measured this.';
    const { out: text } = await match(registry.cwd, 'oakhollow/daisy-pla');
    expect(unwrapped(text)).toContain(sentence);
    const { out: markdown } = await match(registry.cwd, 'oakhollow/daisy-pla', '--format', 'markdown');
    expect(markdown).toContain(`**${sentence}**`);
    const { out: json } = await match(registry.cwd, 'oakhollow/daisy-pla', '--format', 'json');
    expect(JSON.parse(json).origin).toEqual({
      simulated: ['wren-daisy-pla-230'],
      invented: [{ kind: 'machine', id: 'plumstead/wren' }],
    });
  });

  it('is not named where all is real', async () => {
    const registry = sampleRegistry();
    registry.edit('trials/2026/wren-daisy-pla-230.yaml', 'origin: simulated', 'origin: bench');
    const { out } = await match(registry.cwd, 'oakhollow/daisy-pla');
    expect(out).not.toContain('imulated');
    expect(out).toContain('measured\n');
  });
});

describe('quirks', () => {
  const noted = () => {
    const registry = sampleRegistry();
    const note =
      "fieldNotes:\n  - {date: '2026-05-07', what: It oozes, effect: Blobs, wayRound: Wipe, concerns: {aboveFlow: 20 mm3/s}}\n";
    const path = 'machines/plumstead/wren.yaml';
    registry.write(path, `${registry.read(path)}${note}`);
    return registry.cwd;
  };

  it.each([
    ['the ranking', ['oakhollow/daisy-pla']],
    ['the matrix', []],
  ])('stand below %s', async (_, args) => {
    expect((await match(noted(), ...args)).out).toContain(
      'Quirks, the newest first\n  - 2026-05-07, plumstead/wren, above 20 mm³/s: It oozes. Blobs. -> Wipe\n',
    );
  });

  it('are in the JSON with their units', async () => {
    const { out } = await match(noted(), 'oakhollow/daisy-pla', '--format', 'json');
    expect(JSON.parse(out).matches[0].quirks).toEqual([
      {
        of: { kind: 'machine', id: 'plumstead/wren' },
        ...{ date: '2026-05-07', what: 'It oozes', effect: 'Blobs', wayRound: 'Wipe' },
        concerns: { nozzle: null, aboveFlow: { value: 20, unit: 'mm3/s' }, nozzleTemperature: null },
      },
    ]);
  });
});

describe('what cannot be matched', () => {
  it.each([
    [['oakhollow/daisy-pls'], 'Did you mean "oakhollow/daisy-pla"?'],
    [['--machine', 'plumstead/wrem'], 'Did you mean "plumstead/wren"?'],
  ])('%j ends with status 2 and a suggestion', async (args, message) => {
    const { status, out, err } = await match(sampleRegistry().cwd, ...args);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toContain(message);
  });

  it('needs a registry', async () => {
    expect((await match(temporaryFolder())).status).toBe(2);
  });
});
