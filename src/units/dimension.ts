/** What a quantity measures. Each dimension has one canonical unit, in which the program calculates. */
export const dimensions = [
  'length',
  'area',
  'volume',
  'time',
  'mass',
  'count',
  'ratio',
  'angle',
  'temperature',
  'temperatureDifference',
  'speed',
  'acceleration',
  'volumeFlow',
  'density',
  'specificHeat',
  'specificEnergy',
  'thermalConductivity',
  'power',
  'force',
  'pressure',
  'viscosity',
  'frequency',
  'soundLevel',
  'money',
] as const;

/** A kind of quantity: what its units can be converted into each other within. */
export type Dimension = (typeof dimensions)[number];

/** What is to be known of a dimension. */
export interface DimensionInfo {
  /** What people call it: `volume flow`. */
  readonly description: string;
  /** UCUM code of the unit that every stored number is in; money has none, an amount stays in its currency. */
  readonly canonicalUnit: string | undefined;
  /** The unit that people of the trade write, which messages and examples use. */
  readonly usualUnit: string;
  readonly example: string;
  readonly exampleRange: string;
}

function info(
  description: string,
  canonicalUnit: string | undefined,
  usualUnit: string,
  low: string,
  high: string,
): DimensionInfo {
  return {
    description,
    canonicalUnit,
    usualUnit,
    example: `${high} ${usualUnit}`,
    exampleRange: `${low}..${high} ${usualUnit}`,
  };
}

/** Description, canonical unit and examples of every dimension. */
export const dimensionInfo: Readonly<Record<Dimension, DimensionInfo>> = {
  length: info('length', 'mm', 'mm', '0.2', '0.45'),
  area: info('area', 'mm2', 'mm2', '2.3', '2.4'),
  volume: info('volume', 'mm3', 'mm3', '900', '1200'),
  time: info('time', 's', 's', '6', '15'),
  mass: info('mass', 'g', 'g', '1.46', '1.49'),
  count: info('count', '{count}', '{count}', '1', '4'),
  ratio: info('ratio', '1', '%', '2', '5'),
  angle: info('angle', 'deg', 'deg', '45', '60'),
  temperature: info('temperature', 'Cel', 'Cel', '190', '235'),
  temperatureDifference: info('temperature difference', 'K', 'K', '2', '5'),
  speed: info('speed', 'mm/s', 'mm/s', '60', '250'),
  acceleration: info('acceleration', 'mm/s2', 'mm/s2', '3000', '10000'),
  volumeFlow: info('volume flow', 'mm3/s', 'mm3/s', '20', '75'),
  density: info('density', 'g/mm3', 'g/cm3', '1.23', '1.25'),
  specificHeat: info('specific heat', 'J/g/K', 'J/g/K', '1.6', '1.8'),
  specificEnergy: info('specific energy', 'J/g', 'J/g', '80', '93'),
  thermalConductivity: info('thermal conductivity', 'W/mm/K', 'W/m/K', '0.13', '0.19'),
  power: info('power', 'W', 'W', '40', '60'),
  force: info('force', 'N', 'N', '20', '60'),
  pressure: info('pressure', 'MPa', 'MPa', '5', '12'),
  viscosity: info('viscosity', 'MPa.s', 'Pa.s', '60', '300'),
  frequency: info('frequency', 'Hz', 'Hz', '40', '60'),
  soundLevel: info('sound pressure level', 'dB[SPL]{A}', 'dB[SPL]{A}', '44', '52'),
  money: info('sum of money', undefined, 'EUR', '300', '349'),
};

/** The description with its article: `a volume flow`, `an area`. */
export function aQuantityOf(dimension: Dimension): string {
  const { description } = dimensionInfo[dimension];
  return `${/^[aeiou]/.test(description) ? 'an' : 'a'} ${description}`;
}
