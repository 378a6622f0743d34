import { describe, expect, it } from 'vitest';
import { runCommand, unwrapped } from '../run-command.ts';
import { sampleRegistry } from '../sample-registry.ts';

function claims(...args: string[]) {
  return runCommand(sampleRegistry().cwd, ['claims', ...args]);
}

describe('the claims of a machine', () => {
  it('stand in a grid, each with what has become of it, and then with the conditions of its tests', async () => {
    const { status, out, err } = await claims('plumstead/wren');
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(out).toMatch(
      /\nmelt flow of hot end "main" +32 mm³\/s with hs-0\.6, +not reached +at most 0\.1 %\n +PLA at 230 °C\n/,
    );
    expect(out).toMatch(/\ntop speed +430 mm\/s +untested\n/);
    expect(out).toMatch(
      /measured \(simulated\), 95 % interval [\d.–]+ mm³\/s: trial\n {4}wren-daisy-pla-230, hs-0\.6, oakhollow\/daisy-pla, 230 °C, 2026-02-11\n/,
    );
    expect(unwrapped(out)).toContain('never a licence to exceed a limit of the maker');
  });

  it('come as JSON', async () => {
    const { out } = await claims('plumstead/wren', '--format', 'json');
    const { format, decisionRule, decision, origin, claims: all } = JSON.parse(out);
    expect({ format, decisionRule, decision }).toEqual({
      format: 'meltbounds-claims/1',
      decisionRule: 'guardedAcceptance',
      decision: { source: 'JCGM 106:2012, 8.3', policy: 'house', isStated: false },
    });
    expect(origin).toEqual({
      simulated: ['wren-clover-petg-245', 'wren-daisy-pla-215', 'wren-daisy-pla-230'],
      invented: [],
    });
    expect(all[0]).toMatchObject({
      property: 'meltFlow',
      hotEnd: 'main',
      claimed: { value: 32, unit: 'mm3/s' },
      status: 'notReached',
      shortfall: { unit: 'mm3/s' },
      probability: { low: 0, high: 0.001 },
    });
    expect(all[0].shortfall.value).toBeGreaterThan(3);
  });

  it('come as Markdown', async () => {
    const { out } = await claims('plumstead/wren', '--format', 'markdown');
    expect(out).toMatch(
      /^# What plumstead\/wren claims, and what was measured\n\n\d+ claims of plumstead\/wren: .*\.\n\n\*\*Simulated readings \(3 trials\): no bench has measured this\.\*\*\n\nDecision rule: guarded acceptance \(JCGM 106:2012, 8\.3\), .*\n\n\| claim +\| claimed +\| verdict +\| probability +\|\n\| -+ \| -+ \| -+ \| -+ \|\n/,
    );
  });

  it('are decided by the rule of a policy', async () => {
    const registry = sampleRegistry();
    registry.edit('policies/house.yaml', '\nfractions:', '\ndecisionRule: simpleAcceptance\nfractions:');
    for (const args of [[], ['--policy', 'house']]) {
      const { out } = await runCommand(registry.cwd, ['claims', 'plumstead/wren', ...args]);
      expect(unwrapped(out)).toContain(
        'Decision rule: simple acceptance (JCGM 106:2012, 8.2), stated by policy house: a claim that',
      );
    }
    const { status, err } = await runCommand(registry.cwd, ['claims', 'plumstead/wren', '--policy', 'hous']);
    expect({ status, err: err.includes('Did you mean "house"?') }).toEqual({ status: 2, err: true });
  });

  it('end with status 2 and a suggestion for an unknown machine', async () => {
    const { status, out, err } = await claims('plumstead/wrem');
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toContain('Did you mean "plumstead/wren"?');
  });
});

/** A trial of a method, planned, filled in and put into the sample registry. */
async function withTrial(
  method: string,
  edit: readonly [from: string, to: string],
  fill: (row: string) => string,
): Promise<string> {
  const registry = sampleRegistry();
  registry.edit('machines/plumstead/wren.yaml', ...edit);
  const pairing = ['plumstead/wren', 'oakhollow/daisy-pla'];
  const { out } = await runCommand(registry.cwd, [
    ...['plan', ...pairing, '--method', method, '--out', 'profiles/trials/2026'],
  ]);
  const sheet = (out.split('\n')[1] ?? '').replace('profiles/', '');
  const [header = '', ...rows] = registry.read(sheet).trimEnd().split('\r\n');
  registry.write(sheet, [header, ...rows.map(fill), ''].join('\r\n'));
  return registry.cwd;
}

describe('trials of other methods speak too:', () => {
  it('a sound measurement for the sound level', async () => {
    const cwd = await withTrial(
      'soundLevel',
      [
        '\nnotice:',
        "\nsoundLevel:\n  - {value: '44 dB[SPL]{A}', basis: claimed, source: plumstead-wren-sheet}\nnotice:",
      ],
      (row) => `${row.split(',')[0]},${row.startsWith('1') ? 55 : 49},33`,
    );
    const { out } = await runCommand(cwd, ['claims', 'plumstead/wren']);
    expect(out).toMatch(/\nsound level +44 dB\(A\) +not reached +at most 0\.1 %\n/);
    expect(out).toMatch(
      /above the\n? *claim\. The claim holds with a probability of at\n? *most 0\.1 %\.\n {2}- 54\.4 dB\(A\) measured, 95 % interval [^:]*:\s+trial\s+wren-daisy-pla-sound, /,
    );
  });

  it('a contour ladder for the contour speed', async () => {
    const cwd = await withTrial(
      'contourLadder',
      [
        '{value: 150 mm/s, basis: assumed, reason: Bench habit}',
        '{value: 120 mm/s, basis: claimed, source: plumstead-wren-sheet}',
      ],
      (row) => {
        const speed = Number.parseFloat(row);
        return `${row}${speed <= 150 ? 5 : speed <= 180 ? 4 : 2}`;
      },
    );
    const { out } = await runCommand(cwd, ['claims', 'plumstead/wren']);
    expect(out).toMatch(/\ncontour speed +120 mm\/s +held +at least [\d.]+ %\n/);
  });
});
