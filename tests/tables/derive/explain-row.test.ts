import { describe, expect, it } from 'vitest';
import { runCommand } from '../../run-command.ts';
import { sampleRegistry } from '../../sample-registry.ts';

const command = ['tables', 'plumstead/wren', 'oakhollow/daisy-pla'];

async function explained(row: string, policy?: readonly [from: string, to: string]): Promise<string> {
  const registry = sampleRegistry();
  if (policy !== undefined) registry.edit('policies/house.yaml', ...policy);
  const { status, out, err } = await runCommand(registry.cwd, [...command, '--explain', row]);
  expect({ status, err }).toEqual({ status: 0, err: '' });
  return out;
}

/** Lines of the block that begins with a title. */
function block(text: string, title: string): string[] {
  const found = text.split('\n\n').find((each) => each.startsWith(title));
  return found?.split('\n') ?? [];
}

describe('tables --explain', () => {
  it('shows the arithmetic of the melt bound with numbers that can be checked by hand', async () => {
    const [, line] = block(await explained('infill@0.3x0.66'), 'melt: ');
    expect(line).toBe('  v = Q * (1 - m) / A = 26 * (1 - 0.1) / 0.178686 = 130.956 mm/s');
    expect((26 * (1 - 0.1)) / 0.178686).toBeCloseTo(130.956, 2);
  });

  it('says where a limit comes from: basis, place, trial', async () => {
    expect(block(await explained('infill@0.3x0.66'), 'melt: ')[2]).toBe(
      '    Q = 26 mm3/s, melt flow limit: measured in filament oakhollow/daisy-pla, meltFlow/1/value; trial wren-daisy-pla-230, 95 % interval 27.4..28.2 mm3/s; Kept lower for worn nozzles; profiles/filaments/oakhollow/daisy-pla.yaml:33',
    );
  });

  it('cites the source of a claim, and the house rule of a share', async () => {
    const text = await explained('infill@0.3x0.66');
    expect(block(text, 'machine: ')[2]).toMatch(/claimed in machine plumstead\/wren.*; source .*sheet/);
    expect(block(text, 'speed of the row')[4]).toBe(
      '    f = 100 %, share of the least bound for infill: house rule of policy house, fractions/infill; profiles/policies/house.yaml:12',
    );
  });

  it('lists every bound from the least upwards, which binds, and which is next by how much', async () => {
    const text = await explained('outerContour@0.15x0.66');
    expect(text.match(/^(?:melt|machine|motion|cooling|quality): .*$/gm)).toEqual([
      expect.stringMatching(/^quality: .*; assumed; 75 % of it 112\.5 mm\/s {2}<- binds$/),
      expect.stringMatching(/^melt: .*<- next$/),
      expect.stringMatching(/^motion: /),
      expect.stringMatching(/^cooling: /),
      expect.stringMatching(/^machine: /),
    ]);
    expect(text).toContain(
      '\n112 mm/s, limited by quality, on a number that is assumed; next is melt, which allows ',
    );
  });

  it('shows the rounding and its direction', async () => {
    const text = await explained('infill@0.3x0.66');
    expect(block(text, 'speed of the row')[2]).toBe('  rounded down in steps of 1 mm/s: 130 mm/s');
    expect(block(text, 'run-up from a stop')[2]).toBe('  rounded up in steps of 0.1 mm: 1.1 mm');
  });

  it('shows the share of a number that the policy caps', async () => {
    const text = await explained('travel@0.15x0.66', [
      'flowMargin: 10 %',
      'flowMargin: 10 %\nminimumBasis: {topSpeed: {basis: measured, weaker: cap, share: 60 %}}',
    ]);
    expect(block(text, 'machine: ')[1]).toBe('  v = v0 * c = 430 * 0.6 = 258 mm/s');
    expect(text).toContain('\nFlags: capped\n');
  });

  it('says whose choice the nozzle temperature is', async () => {
    expect(await explained('travel@0.15x0.66')).toContain(
      'nozzle temperature of the table: of those tested the one with the largest flow, by policy "house"',
    );
  });

  it.each(['infill 0.3 0.66', ' infill@0.30 x 0.66mm ', 'infill@0.3x0.66'])('reads %j', async (row) => {
    expect(await explained(row)).toMatch(/^infill@0\.3x0\.66 {2}oakhollow\/daisy-pla on plumstead\/wren/);
  });

  it.each([
    [
      'infil@0.3x0.66',
      'There is no feature "infil" in the table.\nDid you mean "infill"? A row is named like infill@0.2x0.44.',
    ],
    [
      'infill@0.3x0.6',
      'There is no row "infill@0.3x0.6".\nThere are: infill@0.15x0.66, infill@0.15x0.72, infill@0.3x0.66, infill@0.3x0.72, infill@0.42x0.66, infill@0.42x0.72.',
    ],
    ['infill@0.3', '"infill@0.3" names several rows.\nTake one of infill@0.3x0.66, infill@0.3x0.72.'],
    [
      'infill@0.3x0.66x1',
      'There is no row "infill@0.3x0.66x1".\nThere are: infill@0.15x0.66, infill@0.15x0.72, infill@0.3x0.66, infill@0.3x0.72, infill@0.42x0.66, infill@0.42x0.72.',
    ],
  ])('says of %j what there is', async (row, message) => {
    const { status, out, err } = await runCommand(sampleRegistry().cwd, [...command, '--explain', row]);
    expect({ status, out, err }).toEqual({ status: 2, out: '', err: `${message}\n` });
  });

  it('cannot be written into files', async () => {
    const args = [...command, '--explain', 'infill@0.3x0.66', '--out', 'made'];
    const { status, err } = await runCommand(sampleRegistry().cwd, args);
    expect(status).toBe(2);
    expect(err).toContain("option '--explain <row>' cannot be used with option '--out <folder>'");
  });
});
