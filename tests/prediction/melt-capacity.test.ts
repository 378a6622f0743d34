import { describe, expect, it } from 'vitest';
import { loadFolders } from '../../src/host/load-registry.ts';
import { widest } from '../../src/knowledge/families.ts';
import { roomTemperature } from '../../src/knowledge/melt-heat.ts';
import { meltCapacity } from '../../src/prediction/melt-capacity.ts';
import type { Polymer } from '../../src/registry/generated/documents.ts';
import { middle } from '../../src/statistics/middle.ts';
import type { Range } from '../../src/units/canonical.ts';
import { timeToCore } from '../heated-cylinder.ts';

const { registry } = loadFolders(['profiles']);
const family = (id: string): Polymer => registry.polymer.get(id)!.data;
/** As the program assumes of a semi-crystalline feedstock. */
const crystallinity = 0.35;
/** In K: crystals do not all melt at once. */
const meltingSpan = 6;
const zoneLength = 20;

/** Enthalpy over the glass transition or the melting of a family; its heats are at the middle of what is published. */
function enthalpyOf(
  polymer: Polymer,
  transitionOf: (range: Range) => number,
): (temperature: number) => number {
  const [solid, melt] = [widest([polymer], 'specificHeatSolid')!, widest([polymer], 'specificHeatMelt')!].map(
    middle,
  );
  const isAmorphous = polymer.structure === 'amorphous';
  const at = transitionOf(widest([polymer], isAmorphous ? 'glassTransition' : 'melting')!);
  const fusion = isAmorphous ? 0 : crystallinity * middle(widest([polymer], 'heatOfFusion')!);
  return (temperature) => {
    const above = Math.max(0, temperature - at);
    const molten = (Math.min(meltingSpan, above) / meltingSpan) * fusion;
    return solid! * (Math.min(temperature, at) - roomTemperature) + melt! * above + molten;
  };
}

/** The flow of the program over that of the strand whose enthalpy follows the temperature. */
function excess(id: string, nozzle: number, transitionOf: (range: Range) => number): number {
  const polymer = family(id);
  const capacity = meltCapacity([polymer], nozzle, zoneLength)!;
  const radius = 0.875;
  const time = timeToCore(
    {
      radius,
      conductivity: middle(widest([polymer], 'thermalConductivity')!),
      density: middle(widest([polymer], 'density')!),
      enthalpyAt: enthalpyOf(polymer, transitionOf),
      entry: roomTemperature,
      wall: nozzle,
    },
    capacity.coreTemperature,
  );
  return capacity.flow / ((zoneLength * Math.PI * radius ** 2) / time);
}

describe('the flow that conduction lets a melt zone deliver', () => {
  it.each([
    ['PLA', 220],
    ['ABS', 245],
    ['PET-G', 240],
    ['PC', 290],
  ])('counts the heat over the glass transition: %s at %d Cel is within 5 %', (id, nozzle) => {
    expect(Math.abs(excess(id, nozzle, middle) - 1)).toBeLessThan(0.05);
  });

  it.each([
    ['PP', 235],
    ['PA12', 250],
    ['PA6', 265],
    ['PEEK', 400],
  ])(
    'counts the fusion of crystals: %s at %d Cel is within 15 %, wherever in its range it melts',
    (id, nozzle) => {
      for (const transitionOf of [middle, ({ low }: Range) => low]) {
        expect(Math.abs(excess(id, nozzle, transitionOf) - 1)).toBeLessThan(0.15);
      }
    },
  );

  it('would be a fifth too high and more by the heat of the solid alone', () => {
    const solid = middle(widest([family('PLA')], 'specificHeatSolid')!);
    const { diffusivity } = meltCapacity([family('PLA')], 220, zoneLength)!;
    const [conductivity, density] = [
      widest([family('PLA')], 'thermalConductivity')!,
      widest([family('PLA')], 'density')!,
    ].map(middle);
    const ratio = conductivity! / (density! * solid) / diffusivity;
    expect(ratio * excess('PLA', 220, middle)).toBeGreaterThan(1.2);
  });
});
