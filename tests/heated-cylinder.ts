/** An endless round strand that is pushed into a hot tube, whose enthalpy follows its temperature. */
export interface HeatedCylinder {
  /** In mm. */
  readonly radius: number;
  /** In W/(mm K). */
  readonly conductivity: number;
  /** In g/mm3. */
  readonly density: number;
  /** Enthalpy in J/g at a temperature in °C, rising. */
  readonly enthalpyAt: (temperature: number) => number;
  readonly entry: number;
  readonly wall: number;
}

const rings = 40;
const tabled = 2000;

/**
 * Seconds until the axis is at a temperature, by finite volumes that keep account of the enthalpy of each ring: written
 * apart from the series of the program, and for any enthalpy.
 */
export function timeToCore(strand: HeatedCylinder, core: number): number {
  const { radius, conductivity, density, entry, wall, enthalpyAt } = strand;
  const width = radius / rings;
  const temperatureOf = inverse(enthalpyAt, entry, wall);
  const stored = Array.from({ length: rings }, () => enthalpyAt(entry));
  const step = (0.2 * width ** 2 * density * leastHeat(enthalpyAt, entry, wall)) / conductivity;
  for (let time = 0; ; time += step) {
    const temperatures = stored.map(temperatureOf);
    if ((temperatures[0] ?? wall) >= core) return time;
    const flows = heatFlows([...temperatures, wall], width).map((flow) => flow * conductivity);
    for (let ring = 0; ring < rings; ring++) {
      const gain = (flows[ring] ?? 0) - (ring === 0 ? 0 : (flows[ring - 1] ?? 0));
      stored[ring] = (stored[ring] ?? 0) + (step * gain) / (density * (ring + 0.5) * width ** 2);
    }
  }
}

/** Heat that comes in through the outer side of each ring, per radian, length and conductivity; the last value is the wall's. */
function heatFlows(temperatures: readonly number[], width: number): number[] {
  return temperatures.slice(1).map((outside, ring) => {
    const distance = ring === rings - 1 ? width / 2 : width;
    return ((ring + 1) * width * (outside - (temperatures[ring] ?? 0))) / distance;
  });
}

function leastHeat(enthalpyAt: (temperature: number) => number, from: number, to: number): number {
  const at = (index: number) => enthalpyAt(from + (index * (to - from)) / tabled);
  const slopes = Array.from(
    { length: tabled },
    (_, index) => (at(index + 1) - at(index)) / ((to - from) / tabled),
  );
  return Math.min(...slopes);
}

/** The temperature at an enthalpy, between two temperatures, from a table. */
function inverse(enthalpyAt: (temperature: number) => number, from: number, to: number) {
  const step = (to - from) / tabled;
  const table = Float64Array.from({ length: tabled + 1 }, (_, index) => enthalpyAt(from + index * step));
  return (enthalpy: number): number => {
    let [low, high] = [0, tabled];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if ((table[middle] ?? 0) <= enthalpy) low = middle;
      else high = middle;
    }
    const [below = 0, above = 1] = [table[low], table[high]];
    return from + (low + (enthalpy - below) / (above - below)) * step;
  };
}
