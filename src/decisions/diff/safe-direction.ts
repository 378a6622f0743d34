import type { Kind } from '../../registry/kind.ts';
import type { QuantityShape } from '../../registry/shape.ts';

/**
 * On which side of an old figure a new one leaves tables that were made by the old one safe.
 *
 * - `ceiling`: the most that is allowed; lower is unsafe.
 * - `floor`: the least that is needed, the shortest layer time for instance; higher is unsafe.
 * - `window`: a range to stay in; narrower at either end is unsafe.
 * - `fixed`: what a part is; any other is another part.
 * - `ability`: true is more than false.
 * - `member`: an item of a list; fewer is unsafe.
 * - `figure`: a number that tables or plans use and that has no safe side.
 * - `note`: what no table uses.
 */
export type Sense = 'ceiling' | 'floor' | 'window' | 'fixed' | 'ability' | 'member' | 'figure' | 'note';

type Senses = Readonly<Record<string, Sense>>;

const machine: Senses = {
  layout: 'fixed',
  'envelope.x': 'ceiling',
  'envelope.y': 'ceiling',
  'envelope.z': 'ceiling',
  topSpeed: 'ceiling',
  acceleration: 'ceiling',
  contourSpeed: 'ceiling',
  'hotEnds[]': 'member',
  'hotEnds[].filamentDiameter': 'fixed',
  'hotEnds[].heaterPower': 'ceiling',
  'hotEnds[].meltZoneLength': 'ceiling',
  'hotEnds[].temperatureLimit': 'ceiling',
  'hotEnds[].liner': 'fixed',
  'hotEnds[].nozzles[]': 'member',
  'hotEnds[].nozzles[].diameter': 'fixed',
  'hotEnds[].nozzles[].material': 'fixed',
  'hotEnds[].meltFlow': 'ceiling',
  'bed.temperatureLimit': 'ceiling',
  'chamber.enclosed': 'ability',
  'chamber.heated': 'ability',
  'chamber.sensed': 'ability',
  'chamber.temperatureLimit': 'ceiling',
  'partCooling.adjustable': 'ability',
  'partCooling.airSpeed': 'ceiling',
  'dryer.setting': 'fixed',
  'dryer.temperature': 'fixed',
  'dryer.range': 'window',
  'spool.mass': 'ceiling',
  'spool.diameter': 'ceiling',
  'spool.width': 'ceiling',
  'sensors[]': 'member',
  layerChangeTime: 'figure',
  travelPause: 'figure',
  soundLevel: 'floor',
  price: 'note',
};

const filament: Senses = {
  polymer: 'fixed',
  'fillers[]': 'fixed',
  'fillers[].massFraction': 'fixed',
  diameter: 'fixed',
  diameterTolerance: 'floor',
  density: 'figure',
  spoolMass: 'figure',
  softening: 'ceiling',
  nozzleTemperature: 'window',
  firstLayerNozzleTemperature: 'ceiling',
  bedTemperature: 'window',
  chamberTemperature: 'window',
  fan: 'window',
  shortestLayerTime: 'floor',
  dryingTemperature: 'ceiling',
  dryingTime: 'floor',
  meltFlow: 'ceiling',
  contourSpeed: 'ceiling',
  price: 'note',
};

const polymer: Senses = {
  structure: 'fixed',
  density: 'figure',
  glassTransition: 'ceiling',
  melting: 'figure',
  specificHeatSolid: 'figure',
  specificHeatMelt: 'figure',
  thermalConductivity: 'figure',
  heatOfFusion: 'figure',
  decomposition: 'ceiling',
  moistureEquilibrium: 'figure',
  moistureSaturated: 'figure',
  dryingTemperature: 'window',
  dryingTime: 'floor',
  nozzleTemperature: 'window',
  nozzleTemperatureLimit: 'ceiling',
  'emissions[]': 'figure',
  'cautions[]': 'figure',
};

const policy: Senses = {
  acceptedDeficit: 'ceiling',
  flowMargin: 'floor',
  hotEndMargin: 'floor',
  dryingMargin: 'floor',
  'minimumBasis.meltFlow.share': 'ceiling',
  'minimumBasis.topSpeed.share': 'ceiling',
  'minimumBasis.acceleration.share': 'ceiling',
  'minimumBasis.contourSpeed.share': 'ceiling',
  'minimumBasis.shortestLayerTime.share': 'ceiling',
  ...everyFeature('fractions', 'ceiling'),
  ...everyFeature('accelerationFractions', 'ceiling'),
  ...everyFeature('typicalSegments', 'ceiling'),
  layerPath: 'ceiling',
  'layerHeights[]': 'member',
  'lineWidths[]': 'member',
  'rounding.speed': 'figure',
  'rounding.flow': 'figure',
  'rounding.acceleration': 'figure',
  'rounding.runUp': 'figure',
  'rounding.temperature': 'figure',
  'rounding.time': 'figure',
};

/** Jobs limit nothing: every number of theirs is a figure. */
const senses: Readonly<Record<Kind, Senses>> = {
  machine,
  filament,
  polymer,
  policy,
  job: {},
  trial: {},
  source: {},
  addition: { shortestLayerTime: 'floor', meltFlow: 'ceiling', contourSpeed: 'ceiling' },
};

function everyFeature(property: string, sense: Sense): Senses {
  const features = ['firstLayer', 'outerContour', 'innerContour', 'infill', 'topSurface', 'bridge'];
  return Object.fromEntries(
    [...features, 'overhang', 'travel'].map((name) => [`${property}.${name}`, sense]),
  );
}

/** Places of a kind, as `senseOf` takes them, for which a sense is laid down. */
export function placesWithSense(kind: Kind): string[] {
  return Object.keys(senses[kind]);
}

/**
 * The sense of a place such as `hotEnds[].meltFlow`. Where none is laid down the cautious one counts: a range is a
 * window, a quantity is fixed, a word is a note.
 */
export function senseOf(kind: Kind, place: string, quantity: QuantityShape | null): Sense {
  const known = Object.hasOwn(senses[kind], place) ? senses[kind][place] : undefined;
  if (known !== undefined) return known;
  if (quantity === null) return 'note';
  if (kind === 'job') return 'figure';
  return quantity.form === 'range' ? 'window' : 'fixed';
}
