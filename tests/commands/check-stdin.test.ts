import { describe, expect, it } from 'vitest';
import { runCommand } from '../run-command.ts';
import { type SampleRegistry, sampleRegistry, temporaryFolder } from '../sample-registry.ts';

const daisy = 'filaments/oakhollow/daisy-pla.yaml';

function checkTyped(registry: SampleRegistry, stdin: string, ...args: string[]) {
  return runCommand(registry.cwd, ['check', '-', ...args], { stdin });
}

describe('check -', () => {
  it('checks what is typed in the place of its file, and nothing else', async () => {
    const registry = sampleRegistry();
    registry.edit('jobs/hook.yaml', 'version: 1.0.0', 'version: one');
    const typed = registry.read(daisy).replace('value: 22 mm3/s', 'value: 60 mm3/s');
    const { status, out } = await checkTyped(registry, typed);
    expect(status).toBe(1);
    expect(out).toContain(`profiles/${daisy}:`);
    expect(out).toContain('evidence/unsupported');
    expect(out).not.toContain('hook.yaml');
    expect(out).toContain('1 profile: ');
  });

  it('finds no problems found in the file as it is', async () => {
    const registry = sampleRegistry();
    const { status, out } = await checkTyped(registry, registry.read(daisy));
    expect({ status, out }).toEqual({ status: 0, out: '1 profile: no problems found.\n' });
  });

  it('finds the place of a trial by its date, and its sheet', async () => {
    const registry = sampleRegistry();
    const { status } = await checkTyped(registry, registry.read('trials/2026/wren-daisy-pla-230.yaml'));
    expect(status).toBe(0);
  });

  it('takes the place that it is given, for a text that cannot be read too', async () => {
    const registry = sampleRegistry();
    const { status, out } = await checkTyped(registry, 'kind: [', '--stdin-path', `profiles/${daisy}`);
    expect(status).toBe(1);
    expect(out).toMatch(new RegExp(`\nprofiles/${daisy}:1:\\d+ error syntax/`));
  });

  it('says why a text without a place cannot be read', async () => {
    const registry = sampleRegistry();
    const { status, err } = await checkTyped(registry, 'kind: filament\nid: oakhollow/daisy-pla\nname: [\n');
    expect(status).toBe(2);
    expect(err).toMatch(
      /^What came on standard input cannot be read, line 3: What is opened here is not closed/,
    );
  });

  it('leaves the file alone', async () => {
    const registry = sampleRegistry();
    const before = registry.read(daisy);
    await checkTyped(registry, before.replace('22 mm3/s', '60 mm3/s'));
    expect(registry.read(daisy)).toBe(before);
  });
});

describe('check - cannot run', () => {
  it.each([
    [[], 'name: nothing', /does not say its kind and id\.\nName its place with --stdin-path/],
    [['--stdin-path', 'elsewhere.yaml'], 'kind: job', /--stdin-path elsewhere\.yaml is not in the registry/],
    [['--fix'], 'kind: job', /--fix changes files, and standard input is none/],
    [['--changed', 'main'], 'kind: job', /--changed asks about files, and standard input is none/],
    [['profiles'], 'kind: job', /^- stands alone/],
  ])('with %j', async (args, stdin, message) => {
    const { status, err } = await checkTyped(sampleRegistry(), stdin, ...args);
    expect(status).toBe(2);
    expect(err).toMatch(message);
  });

  it('where there is no registry', async () => {
    const { status } = await runCommand(temporaryFolder(), ['check', '-'], { stdin: 'kind: job' });
    expect(status).toBe(2);
  });
});
