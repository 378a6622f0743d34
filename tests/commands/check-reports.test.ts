import { describe, expect, it } from 'vitest';
import { runCommand } from '../run-command.ts';
import { sampleRegistry } from '../sample-registry.ts';

const machine = 'machines/plumstead/wren.yaml';

/** A registry with an error and a note. */
function broken() {
  const registry = sampleRegistry();
  registry.edit(machine, '430 mm/s', '430');
  registry.edit(machine, '8200 mm/s2', '8200 mm/s²');
  return registry;
}

async function check(...args: string[]) {
  return runCommand(broken().cwd, ['check', ...args]);
}

describe('every form of the report names the same findings:', () => {
  it('SARIF', async () => {
    const { status, out } = await check('--format', 'sarif');
    const log = JSON.parse(out) as { runs: { results: { ruleId: string }[] }[] };
    expect(status).toBe(1);
    expect(log.runs[0]?.results.map(({ ruleId }) => ruleId)).toEqual([
      'units/bare-number',
      'style/unit-spelling',
    ]);
    expect(out).toContain('"semanticVersion": "0.0.0"');
  });

  it('JUnit XML', async () => {
    const { status, out } = await check('--format', 'junit');
    expect(status).toBe(1);
    expect(out).toMatch(
      /<testcase name="profiles\/machines\/plumstead\/wren.yaml" classname="profiles" time="0">\n +<failure [^>]*type="units\/bare-number"/,
    );
    expect(out).toContain('note style/unit-spelling');
    expect(out).toContain('<testcase name="profiles/jobs/hook.yaml" classname="profiles" time="0"/>');
  });

  it('workflow commands', async () => {
    const { status, out } = await check('--format', 'annotations');
    expect(status).toBe(1);
    expect(out.split('\n').map((line) => line.split(' file=')[0])).toEqual([
      '::error',
      '::notice',
      expect.stringContaining('1 error, 1 note.'),
      '',
    ]);
  });
});

describe('what a reviewer has acknowledged', () => {
  const reason = 'Only the <screen> changed';

  /** The old firmware of a trial, acknowledged by it. */
  async function report(...options: readonly string[]) {
    const registry = sampleRegistry();
    const trial = 'trials/2026/wren-daisy-pla-230.yaml';
    registry.edit(trial, 'firmware: 1.3.0', 'firmware: 1.1.0');
    const entry = `{rule: evidence/stale-firmware, at: /firmware, found: 1.1.0, reason: ${reason}, until: '2026-12-31'}`;
    registry.write(trial, `${registry.read(trial)}acknowledged:\n  - ${entry}\n`);
    const { out, status } = await runCommand(registry.cwd, ['check', '--fail-on', 'note', ...options]);
    expect(status).toBe(0);
    return out;
  }

  it('is counted in every form, and listed when asked for', async () => {
    expect(await report()).toBe('16 profiles: no problems found; 1 finding acknowledged.\n');
    const listed = await report('--acknowledged');
    expect(listed).toMatch(
      /wren-daisy-pla-230\.yaml:\d+:\d+ acknowledged warning\nevidence\/stale-firmware\n(?:.|\n)*reason {2}Only the <screen> changed\n {2}until {3}2026-12-31\n/,
    );
  });

  it('in JSON', async () => {
    const counted = JSON.parse(await report('--format', 'json'));
    expect(counted).toMatchObject({ findings: [], summary: { warnings: 0, acknowledged: 1 } });
    expect(counted).not.toHaveProperty('acknowledged');
    expect(JSON.parse(await report('--format', 'json', '--acknowledged'))).toMatchObject({
      findings: [],
      acknowledged: [{ rule: 'evidence/stale-firmware', found: '1.1.0', reason, until: '2026-12-31' }],
    });
  });

  it('in SARIF, as suppressed results', async () => {
    const { runs: counted } = JSON.parse(await report('--format', 'sarif'));
    expect(counted).toMatchObject([{ results: [], properties: { acknowledged: 1 } }]);
    const { runs } = JSON.parse(await report('--format', 'sarif', '--acknowledged'));
    expect(runs[0].results).toMatchObject([
      {
        ruleId: 'evidence/stale-firmware',
        suppressions: [
          { kind: 'inSource', status: 'accepted', justification: `${reason} (until 2026-12-31)` },
        ],
      },
    ]);
  });

  it('in JUnit XML', async () => {
    expect(await report('--format', 'junit')).toContain('<property name="acknowledged" value="1"/>');
    const listed = await report('--format', 'junit', '--acknowledged');
    expect(listed).toContain('acknowledged until 2026-12-31: Only the &lt;screen&gt; changed</system-out>');
    expect(listed).toContain('failures="0"');
  });

  it('in annotations', async () => {
    expect(await report('--format', 'annotations')).toBe(
      '16 profiles: no problems found; 1 finding acknowledged.\n',
    );
    expect(await report('--format', 'annotations', '--acknowledged')).toMatch(
      /^::notice file=.*title=evidence\/stale-firmware::Acknowledged until 2026-12-31: .*%0AOnly the <screen> changed\n/,
    );
  });
});

describe('--quiet', () => {
  it('reports errors only, and counts all', async () => {
    const { out } = await check('--quiet', '--format', 'json');
    const { findings, summary } = JSON.parse(out) as { findings: { rule: string }[]; summary: object };
    expect(findings.map(({ rule }) => rule)).toEqual(['units/bare-number']);
    expect(summary).toMatchObject({ errors: 1, notes: 1 });
  });

  it('does not change the exit status', async () => {
    const registry = sampleRegistry();
    registry.edit(machine, '8200 mm/s2', '8200 mm/s²');
    const { status } = await runCommand(registry.cwd, ['check', '--quiet', '--fail-on', 'note']);
    expect(status).toBe(1);
  });
});
