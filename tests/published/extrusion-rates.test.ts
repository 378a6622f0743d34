import { describe, expect, it } from 'vitest';
import { loadFolders } from '../../src/host/load-registry.ts';
import { fastestFeed } from '../../src/knowledge/filament-diameters.ts';
import { strandStrength, tractionOf } from '../../src/knowledge/traction.ts';
import { beadArea } from '../../src/physics/bead.ts';
import { filamentArea, filamentFeed } from '../../src/physics/filament-geometry.ts';
import { viscosityRatio } from '../../src/physics/melt-viscosity.ts';
import { flowAtCoreTemperature } from '../../src/physics/melt-zone.ts';
import { pushingForce } from '../../src/physics/nozzle-pressure.ts';
import { meltCapacity } from '../../src/prediction/melt-capacity.ts';
import { parseQuantity } from '../../src/units/parse-quantity.ts';
import { timeToCore } from '../heated-cylinder.ts';

const { registry } = loadFolders(['profiles']);
const polymer = (id: string) => registry.polymer.get(id)!.data;
const filament = { ...registry.filament.get('ashgrove/stagecraft-pla')!.data, diameter: 1.75 };

/** mm³/s of a build rate in cm³/h, as papers give it. */
function rate(cubicCentimetresPerHour: number): number {
  const parsed = parseQuantity(`${cubicCentimetresPerHour} cm3/h`, 'volumeFlow');
  if (!parsed.ok) throw new Error(parsed.error.message);
  return parsed.value.value;
}

// Go, Schiffres, Stevens & Hart, "Rate limits of additive manufacturing by fused filament fabrication and guidelines for
// high-throughput system design", Additive Manufacturing 16 (2017) 1-11, doi 10.1016/j.addma.2017.03.007; the abstract
// was read: machines build tens of cm³/h at layers of about 0.2 mm, and three limits coincide: traction force on the
// filament, conduction of heat to its core, and the speed of the gantry. The machine below is a plain one of that kind.
describe('Go, Schiffres, Stevens & Hart 2017: a plain machine', () => {
  const tens = { low: rate(10), high: rate(100) };
  const plain = { meltZoneLength: 20, nozzleDiameter: 0.4, force: 60, speed: 150 };

  /** Bounds on the flow at a nozzle temperature, in mm³/s. */
  const boundsOf = (id: string, nozzleTemperature: number) => ({
    conduction: meltCapacity([polymer(id)], nozzleTemperature, plain.meltZoneLength)!.flow,
    traction: tractionOf({ ...plain, filament, families: [polymer(id)], nozzleTemperature })!.flow,
    gantry: plain.speed * beadArea(0.2, 0.45),
  });

  it.each([
    ['PLA', 210],
    ['ABS', 240],
  ])('of %s at %d Cel is held to tens of cm³/h by conduction and by its gantry', (id, temperature) => {
    const { conduction, gantry } = boundsOf(id, temperature);
    for (const bound of [conduction, gantry]) {
      expect(bound).toBeGreaterThan(tens.low);
      expect(bound).toBeLessThan(tens.high);
    }
  });

  it.each([
    ['PLA', 210],
    ['ABS', 240],
  ])('of %s at %d Cel has its three limits within a factor of five', (id, temperature) => {
    const bounds = Object.values(boundsOf(id, temperature));
    expect(Math.max(...bounds) / Math.min(...bounds)).toBeLessThan(5);
  });

  it('is held by traction alone where the nozzle is fine', () => {
    const fine = {
      ...plain,
      nozzleDiameter: 0.15,
      filament,
      families: [polymer('ABS')],
      nozzleTemperature: 240,
    };
    expect(tractionOf(fine)!.flow).toBeLessThan(boundsOf('ABS', 240).conduction);
  });
});

// Go & Hart, "Fast desktop-scale extrusion additive manufacturing", Additive Manufacturing 18 (2017) 276-284; abstract,
// from memory: 127 cm³/h built, about 7 times desktop systems, and 282 cm³/h extruded at most, about 14 times, by a
// threaded filament that a nut drives, heated by a laser.
describe('Go & Hart 2017: a machine built for speed', () => {
  it('extrudes 78.33 mm³/s, which no plain melt zone of 30 mm conducts into PLA or ABS', () => {
    expect(rate(282)).toBeCloseTo(78.33, 2);
    for (const [id, hottest] of [
      ['PLA', 240],
      ['ABS', 270],
    ] as const) {
      expect(meltCapacity([polymer(id)], hottest, 30)!.flow).toBeLessThan(rate(282));
    }
  });

  it('feeds less fast than what counts as impossible', () => {
    expect(filamentFeed(rate(282), 1.75)).toBeCloseTo(32.57, 2);
    expect(filamentFeed(rate(282), 1.75)).toBeLessThan(fastestFeed);
  });

  it('is compared with desktop systems that conduction explains', () => {
    for (const share of [rate(127) / 7, rate(282) / 14]) {
      expect(share).toBeGreaterThan(4.5);
      expect(share).toBeLessThan(meltCapacity([polymer('ABS')], 240, 20)!.flow);
    }
  });
});

// Mackay, "The importance of rheological behavior in the additive manufacturing technique material extrusion", J. Rheology
// 62 (2018) 1549-1561; the abstract was read: barrel pressure of the order of 30 MPa, about 4000 psi.
describe('Mackay 2018: a barrel pressure of 30 MPa', () => {
  it('is about 4000 psi, and 72 N on a filament of 1.75 mm', () => {
    const parsed = parseQuantity('4000 [psi]', 'pressure');
    expect(parsed.ok && Math.round(parsed.value.value)).toBe(28);
    expect(pushingForce(30, 1.75)).toBeCloseTo(72.16, 2);
  });

  it.each(['PLA', 'ABS', 'PET-G', 'PC', 'PA6', 'PA12'])('is borne by a strand of %s', (id) => {
    expect(strandStrength([polymer(id)])).toBeGreaterThan(30);
  });
});

// Luo, Wang, Migler & Seppala, "Upper bound of feed rates in thermoplastic material extrusion additive manufacturing",
// Additive Manufacturing 32 (2020) 101019, doi 10.1016/j.addma.2019.101019; the abstract was read: the bound is the Péclet
// number, by the temperature of the tube, at which the solid core reaches the nozzle. No figure of the paper is used:
// the core is followed by finite volumes, written apart from the series of the program.
describe('Luo et al. 2020: the feed at which the solid core reaches the nozzle', () => {
  const entry = 25;
  const glass = 105;

  /** Péclet number v R/a times R/L of the bound: by the program, and by following the core. */
  function boundOf(wall: number, radius: number, diffusivity: number, length: number) {
    const zone = { wallTemperature: wall, entryTemperature: entry, diffusivity, heatedLength: length };
    const flow = flowAtCoreTemperature(zone, glass);
    const speed = flow / filamentArea(2 * radius);
    const strand = { radius, conductivity: diffusivity, density: 1, entry, wall };
    const followed = length / timeToCore({ ...strand, enthalpyAt: (temperature) => temperature }, glass);
    return { program: (speed * radius ** 2) / (diffusivity * length), followed: followed / speed };
  }

  it.each([160, 200, 245, 280])('is that of a core followed through a tube of %d Cel', (wall) => {
    expect(Math.abs(boundOf(wall, 0.875, 0.11, 20).followed - 1)).toBeLessThan(0.01);
  });

  it('depends on the temperature of the tube alone, whatever strand, plastic and tube', () => {
    const { program } = boundOf(245, 0.875, 0.11, 20);
    expect(boundOf(245, 1.425, 0.11, 20).program).toBeCloseTo(program, 9);
    expect(boundOf(245, 0.875, 0.07, 20).program).toBeCloseTo(program, 9);
    expect(boundOf(245, 0.875, 0.11, 60).program).toBeCloseTo(program, 9);
  });

  it('rises with that temperature', () => {
    const bounds = [160, 200, 245, 280].map((wall) => boundOf(wall, 0.875, 0.11, 20).program);
    expect(bounds).toEqual(bounds.toSorted((a, b) => a - b));
  });
});

// Williams, Landel & Ferry, J. Am. Chem. Soc. 77 (1955) 3701-3707: with the universal constants viscosity falls by eleven
// and a half decades on the first 100 K above the glass transition, ten of them on the first 70 K (from memory).
describe('Williams, Landel & Ferry 1955: a melt above its glass transition', () => {
  it.each([
    [100, 11.5],
    [70, 10],
  ])('is %d K higher up thinner by %d decades', (above, decades) => {
    const nearGlass = 1e-6;
    expect(Math.log10(viscosityRatio(60 + nearGlass, 60 + above, 60))).toBeCloseTo(decades, 1);
  });
});
