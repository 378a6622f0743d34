import { currencies } from './currencies.ts';
import { type Dimension, dimensions } from './dimension.ts';
import { printSymbols } from './print-symbols.ts';

/**
 * A unit in one dimension (`K` is one unit as a temperature, another as a difference).
 * canonical = value × factor + offset, with factor = multiplier / divisor. Conversions use the two parts, since
 * dividing by 60 is exact where multiplying by a rounded 1/60 is not.
 */
export interface Unit {
  /** UCUM case-sensitive code; for money the ISO 4217 code. */
  readonly code: string;
  readonly dimension: Dimension;
  readonly factor: number;
  readonly multiplier: number;
  readonly divisor: number;
  /** In the canonical unit; 0 for all but temperatures. */
  readonly offset: number;
  /** Other spellings that are read and rewritten to the code. */
  readonly aliases: readonly string[];
}

/** Code, multiplier, divisor, further spellings. */
type Row = readonly [code: string, multiplier: number, divisor: number, ...spellings: string[]];

const celsius = ['°C', '℃'];
const fahrenheit = ['°F', '℉'];
const kelvin = ['\u212a'];

// Exact by definition: 1 in = 25.4 mm, 1 lb = 453.592 37 g, g_n = 9.806 65 m/s2, 1 cal_th = 4.184 J,
// 1 cal_IT = 4.186 8 J (NIST SP 811, 2008, App. B.8 and its notes).
const rows: Readonly<Record<Exclude<Dimension, 'temperature' | 'money'>, readonly Row[]>> = {
  length: [
    ['mm', 1, 1],
    ['um', 1, 1000],
    ['cm', 10, 1],
    ['m', 1000, 1],
    ['[in_i]', 25.4, 1, 'in'],
    ['[mil_i]', 25.4, 1000, 'mil', 'thou'],
    ['[ft_i]', 304.8, 1, 'ft'],
  ],
  area: [
    ['mm2', 1, 1],
    ['um2', 1, 1e6],
    ['cm2', 100, 1],
    ['m2', 1e6, 1],
    ['[sin_i]', 645.16, 1, 'in2'],
  ],
  volume: [
    ['mm3', 1, 1],
    ['cm3', 1000, 1],
    ['dm3', 1e6, 1],
    ['m3', 1e9, 1],
    ['mL', 1000, 1, 'ml'],
    ['L', 1e6, 1, 'l'],
    ['[cin_i]', 16387.064, 1, 'in3'],
  ],
  time: [
    ['s', 1, 1],
    ['ms', 1, 1000],
    ['min', 60, 1],
    ['h', 3600, 1],
    ['d', 86400, 1],
  ],
  mass: [
    ['g', 1, 1],
    ['mg', 1, 1000],
    ['kg', 1000, 1],
    ['[oz_av]', 28.349523125, 1, 'oz'],
    ['[lb_av]', 453.59237, 1, 'lb'],
  ],
  count: [['{count}', 1, 1, 'count']],
  ratio: [
    ['%', 1, 100],
    ['1', 1, 1],
    ['[ppth]', 1, 1000, '‰'],
    ['[ppm]', 1, 1e6, 'ppm'],
  ],
  angle: [
    ['deg', 1, 1, '°'],
    ['rad', 180, Math.PI],
  ],
  // UCUM lets the special units Cel and [degF] name a point on a scale only. As differences they are read all the
  // same, because people write tolerances so: 1 Cel is 1 K and 1 [degF] is 5/9 K (SP 811, App. B.9).
  temperatureDifference: [
    ['K', 1, 1, ...kelvin],
    ['mK', 1, 1000],
    ['Cel', 1, 1, ...celsius],
    ['[degF]', 5, 9, ...fahrenheit],
  ],
  speed: [
    ['mm/s', 1, 1],
    ['mm/min', 1, 60],
    ['cm/s', 10, 1],
    ['cm/min', 10, 60],
    ['m/s', 1000, 1],
    ['m/min', 1000, 60],
    ['[in_i]/s', 25.4, 1, 'in/s'],
    ['[in_i]/min', 25.4, 60, 'in/min'],
    ['[ft_i]/min', 304.8, 60, 'ft/min'],
  ],
  acceleration: [
    ['mm/s2', 1, 1],
    ['cm/s2', 10, 1],
    ['m/s2', 1000, 1],
    ['[in_i]/s2', 25.4, 1, 'in/s2'],
    ['[g]', 9806.65, 1],
  ],
  volumeFlow: [
    ['mm3/s', 1, 1],
    ['mm3/min', 1, 60],
    ['cm3/s', 1000, 1],
    ['cm3/min', 1000, 60],
    ['cm3/h', 1000, 3600],
    ['mL/s', 1000, 1, 'ml/s'],
    ['mL/min', 1000, 60, 'ml/min'],
    ['mL/h', 1000, 3600, 'ml/h'],
    ['L/min', 1e6, 60, 'l/min'],
    ['L/h', 1e6, 3600, 'l/h'],
    ['[cin_i]/min', 16387.064, 60, 'in3/min'],
  ],
  density: [
    ['g/cm3', 1, 1000],
    ['kg/m3', 1, 1e6],
    ['g/mm3', 1, 1],
    ['mg/mm3', 1, 1000],
    ['g/mL', 1, 1000, 'g/ml'],
    ['g/L', 1, 1e6, 'g/l'],
    ['kg/L', 1, 1000, 'kg/l'],
    ['kg/dm3', 1, 1000],
    ['[lb_av]/[cin_i]', 453.59237, 16387.064, 'lb/in3'],
    ['[lb_av]/[cft_i]', 453.59237, 28316846.592, 'lb/ft3'],
  ],
  specificHeat: [
    ['J/g/K', 1, 1],
    ['kJ/kg/K', 1, 1],
    ['J/kg/K', 1, 1000],
    ['cal_th/g/K', 4.184, 1, 'cal/g/K'],
    ['cal_IT/g/K', 4.1868, 1],
  ],
  specificEnergy: [
    ['J/g', 1, 1],
    ['mJ/mg', 1, 1],
    ['kJ/kg', 1, 1],
    ['J/kg', 1, 1000],
    ['cal_th/g', 4.184, 1, 'cal/g'],
    ['cal_IT/g', 4.1868, 1],
  ],
  thermalConductivity: [
    ['W/m/K', 1, 1000],
    ['mW/m/K', 1, 1e6],
    ['W/cm/K', 1, 10],
    ['W/mm/K', 1, 1],
    ['mW/mm/K', 1, 1000],
    ['cal_th/cm/s/K', 0.4184, 1, 'cal/cm/s/K'],
  ],
  power: [
    ['W', 1, 1],
    ['mW', 1, 1000],
    ['kW', 1000, 1],
  ],
  force: [
    ['N', 1, 1],
    ['mN', 1, 1000],
    ['kN', 1000, 1],
    ['gf', 9.80665, 1000],
    ['kgf', 9.80665, 1],
    ['[lbf_av]', 4.4482216152605, 1, 'lbf'],
  ],
  pressure: [
    ['MPa', 1, 1],
    ['Pa', 1, 1e6],
    ['hPa', 1, 1e4],
    ['kPa', 1, 1000],
    ['GPa', 1000, 1],
    ['N/mm2', 1, 1],
    ['mbar', 1, 1e4],
    ['bar', 1, 10],
    ['[psi]', 4.4482216152605, 645.16, 'psi'],
  ],
  viscosity: [
    ['MPa.s', 1, 1, 'MPa·s'],
    ['Pa.s', 1, 1e6, 'Pa·s'],
    ['kPa.s', 1, 1000, 'kPa·s'],
    ['mPa.s', 1, 1e9, 'mPa·s'],
    ['P', 1, 1e7],
    ['cP', 1, 1e9],
  ],
  frequency: [
    ['Hz', 1, 1],
    ['kHz', 1000, 1],
    ['/min', 1, 60, '{rev}/min', 'rpm'],
  ],
  // No factor leads from one weighting to the other: who compares levels looks at the unit as well. A bare `dB`
  // does not say what it is relative to, so it is not read.
  soundLevel: [
    ['dB[SPL]{A}', 1, 1, 'dB(A)', 'dBA'],
    ['dB[SPL]', 1, 1, 'dB(SPL)'],
  ],
};

function unit(dimension: Dimension, row: Row, offset = 0): Unit {
  const [code, multiplier, divisor, ...spellings] = row;
  const aliases = [...spellings, ...[code, ...spellings].flatMap(printSymbols)];
  return {
    code,
    dimension,
    factor: multiplier / divisor,
    multiplier,
    divisor,
    offset,
    aliases: [...new Set(aliases)],
  };
}

// NIST SP 811 (2008), App. B.9: t/°C = T/K - 273.15 and t/°C = (t/°F - 32)/1.8.
const temperatures: readonly Unit[] = [
  unit('temperature', ['Cel', 1, 1, ...celsius]),
  unit('temperature', ['K', 1, 1, ...kelvin], -273.15),
  unit('temperature', ['[degF]', 5, 9, ...fahrenheit], -160 / 9),
];

function unitsIn(dimension: Dimension): readonly Unit[] {
  if (dimension === 'temperature') return temperatures;
  if (dimension === 'money')
    return currencies.map(({ code, symbols }) => unit('money', [code, 1, 1, ...symbols]));
  return rows[dimension].map((row) => unit(dimension, row));
}

/** Every unit that is read, in the order in which messages list them. */
export const units: readonly Unit[] = dimensions.flatMap(unitsIn);

const bySpelling = new Map<Dimension, ReadonlyMap<string, Unit>>(
  dimensions.map((dimension) => [
    dimension,
    new Map(
      unitsOf(dimension).flatMap((each) =>
        [each.code, ...each.aliases].map((spelling) => [spelling, each] as const),
      ),
    ),
  ]),
);

/** The units of a dimension. */
export function unitsOf(dimension: Dimension): readonly Unit[] {
  return units.filter((each) => each.dimension === dimension);
}

/** The unit that a code or an alias stands for in a dimension. */
export function findUnit(spelling: string, dimension: Dimension): Unit | undefined {
  return bySpelling.get(dimension)?.get(spelling);
}

/** The dimensions in which a code or an alias stands for a unit; more than one for `K`. */
export function dimensionsOfUnit(spelling: string): readonly Dimension[] {
  return dimensions.filter((dimension) => findUnit(spelling, dimension) !== undefined);
}

/** The unit of a code that the program itself chose. Throws on a code that the dimension does not have. */
export function requireUnit(code: string, dimension: Dimension): Unit {
  const found = findUnit(code, dimension);
  if (found === undefined) throw new RangeError(`${code} is not a unit of ${dimension}`);
  return found;
}
