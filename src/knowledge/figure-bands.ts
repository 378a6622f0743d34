import type { Kind } from '../registry/kind.ts';

/** A band in which a figure lies: as units and ends are written in profiles, converted by the same code. */
export interface FigureBand {
  /** What machines and materials that are made have. */
  readonly usual: string;
  /** Outside of it no such thing works; a factor of ten or a unit is off. */
  readonly possible: string;
  readonly source: string;
}

const practice = 'Common practice, no source: what machines and filaments on the market have';
const handbook =
  'Crawford, Plastics Engineering (1998), Table 1.8; Mark (ed.), Physical Properties of Polymers Handbook (2007), from memory: the span over unfilled families';
const publishedFlows =
  'Go & Hart, Additive Manufacturing 18 (2017) 276-284, from memory: 78 mm3/s as the highest published for one nozzle; the ends are common practice, no source';

const speed = band('20..2000 mm/s', '5..10000 mm/s');
const acceleration = band('100..100000 mm/s2', '10..1000000 mm/s2');
const flow = band('0.5..500 mm3/s', '0.05..5000 mm3/s', publishedFlows);
const soft = band('35..300 Cel', '20..400 Cel', handbook);
const chamber = band('10..250 Cel', '-20..350 Cel');
const bed = band('15..250 Cel', '-20..400 Cel');
const nozzle = band('140..500 Cel', '60..600 Cel');

/** Band of nozzle temperatures anywhere. */
export const nozzleTemperatureBand = nozzle;

/** Bands that hold for the conditions of statements in any kind of profile, by the place within `at`. */
export const conditionBands: Readonly<Record<string, FigureBand>> = {
  layerHeight: band('0.02..2 mm', '0.005..10 mm'),
  acceleration,
  nozzleTemperature: nozzle,
};

const features = [
  'firstLayer',
  'outerContour',
  'innerContour',
  'infill',
  'topSurface',
  'bridge',
  'overhang',
  'travel',
];

/** Bands by kind and place; list positions are written `*`. */
export const figureBands: Readonly<Partial<Record<Kind, Readonly<Record<string, FigureBand>>>>> = {
  machine: {
    'envelope/x': band('50..2000 mm', '20..20000 mm'),
    'envelope/y': band('50..2000 mm', '20..20000 mm'),
    'envelope/z': band('50..2000 mm', '20..20000 mm'),
    'topSpeed/*/value': speed,
    'acceleration/*/value': acceleration,
    'contourSpeed/*/value': band('5..1000 mm/s', '1..5000 mm/s'),
    'layerChangeTime/*/value': band('0.1..10 s', '0.001..300 s'),
    'travelPause/*/value': band('0.005..2 s', '0.0001..60 s'),
    'hotEnds/*/filamentDiameter': band('1..4 mm', '0.5..15 mm'),
    'hotEnds/*/heaterPower/*/value': band('10..500 W', '3..5000 W'),
    'hotEnds/*/meltZoneLength/*/value': band('3..120 mm', '1..500 mm'),
    'hotEnds/*/temperatureLimit/*/value': band('150..550 Cel', '100..800 Cel'),
    'hotEnds/*/nozzles/*/diameter': band('0.1..2.5 mm', '0.05..10 mm'),
    'hotEnds/*/meltFlow/*/value': flow,
    'bed/temperatureLimit/*/value': band('30..250 Cel', '20..400 Cel'),
    'chamber/temperatureLimit/*/value': band('25..250 Cel', '20..400 Cel'),
    'partCooling/airSpeed/*/value': band('0.5..60 m/s', '0.05..340 m/s'),
    'dryer/temperature': band('30..150 Cel', '20..250 Cel'),
    'dryer/range': band('20..200 Cel', '0..300 Cel'),
    'spool/mass': band('0.1..25 kg', '0.01..200 kg'),
    'spool/diameter': band('50..600 mm', '20..2000 mm'),
    'spool/width': band('10..400 mm', '5..1000 mm'),
    'soundLevel/*/value': band('20..100 dB[SPL]{A}', '0..140 dB[SPL]{A}'),
  },
  filament: {
    'fillers/*/massFraction': band('1..92 %', '0.01..98 %'),
    diameter: band('1..4 mm', '0.5..15 mm'),
    'density/*/value': band('0.2..15 g/cm3', '0.2..15 g/cm3', handbook),
    spoolMass: band('0.15..25 kg', '0.005..200 kg'),
    'softening/*/value': soft,
    'nozzleTemperature/*/value': nozzle,
    'firstLayerNozzleTemperature/*/value': nozzle,
    'bedTemperature/*/value': bed,
    'chamberTemperature/*/value': chamber,
    'shortestLayerTime/*/value': band('1.5..90 s', '0.1..3600 s'),
    'dryingTemperature/*/value': band('35..200 Cel', '20..300 Cel'),
    'dryingTime/*/value': band('0.5..48 h', '1..40000 min'),
    'meltFlow/*/value': flow,
    'contourSpeed/*/value': band('5..1000 mm/s', '1..5000 mm/s'),
  },
  polymer: {
    'density/*/value': band('0.8..2.3 g/cm3', '0.2..5 g/cm3', handbook),
    'glassTransition/*/value': band('-140..300 Cel', '-200..500 Cel', handbook),
    'melting/*/value': band('50..420 Cel', '20..600 Cel', handbook),
    'specificHeatSolid/*/value': band('0.9..3.0 J/g/K', '0.3..10 J/g/K', handbook),
    'specificHeatMelt/*/value': band('0.9..3.0 J/g/K', '0.3..10 J/g/K', handbook),
    'thermalConductivity/*/value': band('0.10..0.40 W/m/K', '0.03..3 W/m/K', handbook),
    'heatOfFusion/*/value': band('1..400 J/g', '0.1..2000 J/g', handbook),
    'decomposition/*/value': band('180..650 Cel', '100..1200 Cel', handbook),
    'moistureEquilibrium/*/value': band('0..15 %', '0..50 %', handbook),
    'moistureSaturated/*/value': band('0..40 %', '0..90 %', handbook),
    'dryingTemperature/*/value': band('35..200 Cel', '20..300 Cel', handbook),
    'dryingTime/*/value': band('0.5..48 h', '1..40000 min', handbook),
    'nozzleTemperature/*/value': nozzle,
    'nozzleTemperatureLimit/*/value': nozzle,
  },
  trial: {
    'conditions/nozzleTemperature': nozzle,
    'conditions/bedTemperature': bed,
    'conditions/chamberTemperature': chamber,
    'conditions/ambientTemperature': band('5..40 Cel', '-20..60 Cel'),
    'conditions/relativeHumidity': band('10..95 %', '0.5..100 %'),
    'conditions/dryingTemperature': band('35..200 Cel', '20..300 Cel'),
    'conditions/layerHeight': band('0.02..2 mm', '0.005..10 mm'),
    'conditions/acceleration': acceleration,
    'conditions/printSpeed': speed,
    'conditions/fan': band('0..100 %', '0..100 %'),
    acceptedDeficit: band('1..20 %', '0.01..50 %'),
    acceptedStrength: band('50..98 %', '30..100 %'),
    acceptedRipple: band('2..150 um', '0.1..5000 um'),
    residualMoisture: band('0.005..2 %', '0.0001..20 %'),
    reelMass: band('0.02..5 kg', '0.001..50 kg'),
    backgroundLevel: band('15..70 dB[SPL]{A}', '0..140 dB[SPL]{A}'),
    'gauge/resolution': band('0.0001..0.1 mm', '0.00001..1 mm'),
    'gauge/accuracy': band('0.0005..0.2 mm', '0.00001..2 mm'),
    'soundMeter/resolution': band('0.01..1 dB[SPL]{A}', '0.001..5 dB[SPL]{A}'),
    'scale/resolution': band('0.0001..1 g', '0.000001..10 g'),
    feedLengthUncertainty: band('0.04..1.5 %', '0..50 %'),
    'events/*/commandedFlow': flow,
  },
  policy: {
    acceptedDeficit: band('0.5..20 %', '0.01..50 %'),
    flowMargin: band('0..50 %', '0..95 %'),
    hotEndMargin: band('0..30 K', '0..150 K'),
    dryingMargin: band('0..20 K', '0..100 K'),
    'minimumBasis/meltFlow/share': band('30..100 %', '1..100 %'),
    'minimumBasis/topSpeed/share': band('30..100 %', '1..100 %'),
    'minimumBasis/acceleration/share': band('30..100 %', '1..100 %'),
    'minimumBasis/contourSpeed/share': band('30..100 %', '1..100 %'),
    'minimumBasis/shortestLayerTime/share': band('30..100 %', '1..100 %'),
    ...everyFeature('fractions', band('5..100 %', '0.5..100 %')),
    ...everyFeature('accelerationFractions', band('5..100 %', '0.5..100 %')),
    ...everyFeature('typicalSegments', band('1..500 mm', '0.1..10000 mm')),
    layerPath: band('0.1..100 m', '0.005..10000 m'),
    'layerHeights/*': band('10..80 %', '1..150 %'),
    'lineWidths/*': band('80..250 %', '20..1000 %'),
    'rounding/speed': band('0.25..50 mm/s', '0.000001..1000 mm/s'),
    'rounding/flow': band('0.05..5 mm3/s', '0.000001..100 mm3/s'),
    'rounding/acceleration': band('10..2000 mm/s2', '0.000001..100000 mm/s2'),
    'rounding/runUp': band('0.05..10 mm', '0.000001..1000 mm'),
    'rounding/temperature': band('0.1..10 K', '0.001..50 K'),
    'rounding/time': band('0.1..60 s', '0.001..3600 s'),
  },
  job: {
    layers: band('1..20000 {count}', '1..1000000 {count}'),
    'corners/deflection': band('5..180 deg', '0..180 deg'),
    'corners/tolerance': band('0.002..1 mm', '0.0001..10 mm'),
    ...everyFeature('features', band('0.001..50000 m', '0.0001..10000000 m'), 'pathLength'),
    ...everyFeature('features', band('0.2..2000 mm', '0.001..100000 mm'), 'meanSegment'),
    ...everyFeature('features', band('0.02..2 mm', '0.005..10 mm'), 'layerHeight'),
    ...everyFeature('features', band('0.05..5 mm', '0.01..30 mm'), 'lineWidth'),
  },
};

function band(usual: string, possible: string, source: string = practice): FigureBand {
  return { usual, possible, source };
}

function everyFeature(key: string, one: FigureBand, below?: string): Record<string, FigureBand> {
  return Object.fromEntries(
    features.map((feature) => [[key, feature, below].filter((part) => part !== undefined).join('/'), one]),
  );
}
