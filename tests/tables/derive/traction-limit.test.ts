import { describe, expect, it } from 'vitest';
import type { Machine } from '../../../src/registry/generated/documents.ts';
import { formatRowExplanation } from '../../../src/tables/derive/explain-row.ts';
import { policyOf, registryWith, tableWith } from './pairing-with.ts';

const sample = registryWith({}).machine.get('plumstead/wren')!.data;

/** The sample machine with a drive of so many newtons. */
function driven(value: number): { machine: Partial<Machine> } {
  const statement = { value, basis: 'claimed', source: 'plumstead-wren-sheet' } as const;
  return { machine: { hotEnds: sample.hotEnds.map((hotEnd) => ({ ...hotEnd, driveForce: [statement] })) } };
}

describe('the force of a drive', () => {
  it('does not bound where it is not stated', () => {
    const names = tableWith().rows.flatMap(({ bounds }) => bounds.map(({ name }) => name));
    expect(names).not.toContain('traction');
  });

  it('is a bound of every printed row, on the basis of its claim, and no other', () => {
    for (const { feature, bounds } of tableWith(driven(60)).rows) {
      const traction = bounds.filter(({ name }) => name === 'traction');
      expect([feature, traction.map(({ basis }) => basis)]).toEqual([
        feature,
        feature === 'travel' ? [] : ['claimed'],
      ]);
    }
  });

  it('leaves a strong drive to the melt', () => {
    const [strong, none] = [tableWith(driven(90)), tableWith()];
    expect(strong.rows.map(({ speed }) => speed)).toEqual(none.rows.map(({ speed }) => speed));
    expect(strong.largestFlow.usable).toBe(none.largestFlow.usable);
  });

  it('holds speeds and the usable flow where a drive is weak, and says so', () => {
    const weak = tableWith(driven(0.5));
    const infill = weak.rows.filter(({ feature }) => feature === 'infill');
    expect(new Set(infill.map(({ bound }) => bound))).toEqual(new Set(['traction']));
    expect(weak.largestFlow.usable).toBeLessThan(tableWith().largestFlow.usable);
    const { flowMargin } = policyOf(registryWith({}));
    for (const { flow } of infill) {
      expect(flow).toBeLessThanOrEqual(weak.largestFlow.usable + 0.1);
      expect(flow).toBeGreaterThan(0.9 * weak.largestFlow.usable * (1 - flowMargin));
    }
    expect(weak.warnings).toContainEqual(
      expect.stringMatching(
        /^The drive pushes no more than [\d.]+ mm3\/s through this nozzle, less than the /,
      ),
    );
  });

  it('counts as far as the strand bears it', () => {
    const speeds = (force: number) =>
      tableWith(driven(force)).rows.flatMap(({ bounds }) =>
        bounds.filter(({ name }) => name === 'traction').map(({ speed }) => speed),
      );
    // 90 MPa on 1.75 mm are 216.5 N.
    expect(speeds(600)).toEqual(speeds(217));
    expect(speeds(150)[0]).toBeLessThan(speeds(217)[0] ?? 0);
  });

  it('is explained down to the viscosity and the temperature of the melt', () => {
    const figures = driven(0.5);
    const table = tableWith(figures);
    const row = table.rows.find(({ feature }) => feature === 'infill')!;
    const text = formatRowExplanation(registryWith(figures), table, row);
    expect(text).toMatch(/traction: speed that the drive pushes through the nozzle; claimed; .* <- binds/);
    expect(text).toContain('v = pi * D^3 * min(F / (pi * d^2 / 4), s) / (128 * e * k) * (1 - m) / A = ');
    expect(text).toMatch(/\n {4}F = 0\.5 N, drive force of the hot end: claimed in machine plumstead\/wren/);
    expect(text).toMatch(/\n {4}e = 70 Pa\.s, melt viscosity: published in polymer PLA/);
    expect(text).toMatch(/\n {4}s = 90 MPa, compressive yield stress: published in polymer PLA/);
    expect(text).toMatch(
      /\n {4}k = [\d.]+, how many times .* leaves, \d+ Cel: such that this flow comes out\n/,
    );
    expect(text).toMatch(/\n {4}fitted to 24 mm: claimed in machine plumstead\/wren/);
  });

  it('does not bound a family whose viscosity nobody states, and says so', () => {
    const registry = registryWith(driven(60));
    expect(registry.polymer.get('PP')?.data.meltViscosity).toBeUndefined();
    const table = tableWith({ ...driven(60), filament: { polymer: 'PP', designation: 'PP' } });
    expect(table.warnings).toContainEqual(
      'No melt viscosity of PP is known: the force of the drive does not bound.',
    );
  });
});
