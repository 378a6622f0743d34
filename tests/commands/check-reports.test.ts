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
      /<testcase name="profiles\/machines\/plumstead\/wren.yaml" classname="profiles">\n +<failure [^>]*type="units\/bare-number"/,
    );
    expect(out).toContain('note style/unit-spelling');
    expect(out).toContain('<testcase name="profiles/jobs/hook.yaml" classname="profiles"/>');
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
