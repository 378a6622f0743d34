import { expect, test } from 'vitest';
import { runCommand } from '../../run-command.ts';
import { sampleRegistry } from '../../sample-registry.ts';

const wren = 'machines/plumstead/wren.yaml';

test('a drive that pushes a strand of no thickness is judged by nothing but that', async () => {
  const registry = sampleRegistry();
  registry.edit(
    wren,
    '    temperatureLimit:',
    '    driveForce:\n      - {value: 90 N, basis: claimed, source: plumstead-wren-sheet}\n    temperatureLimit:',
  );
  registry.edit(wren, 'filamentDiameter: 1.75 mm', 'filamentDiameter: 0 mm');
  const { status, out } = await runCommand(registry.cwd, ['check']);
  expect(status).toBe(1);
  expect(out).toContain('filamentDiameter');
  expect(out).not.toContain('plausibility/drive-force');
});
