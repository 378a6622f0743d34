import type { Trial } from '../registry/generated/documents.ts';
import type { Dimension } from '../units/dimension.ts';

/** Class of a sound level meter by IEC 61672-1. */
export type MeterClass = NonNullable<Trial['soundMeter']>['class'];

/** What is known of a bench run besides its readings; which facts matter depends on the method. */
export interface BenchRun {
  /** Nominal, mm. */
  readonly filamentDiameter?: number;
  /** Largest deviation from the nominal diameter that the maker allows, mm. */
  readonly diameterTolerance?: number;
  /** Nominal, g/mm3. */
  readonly density?: number;
  /** Share of the flow that may be missing. */
  readonly acceptedDeficit?: number;
  /** Step of the scale's display, g. */
  readonly massResolution?: number;
  /** Relative standard uncertainty of the fed length. */
  readonly feedLengthUncertainty?: number;
  /** Commanded flow at which the run was halted, mm3/s. */
  readonly haltedAt?: number;
  /** Step of the gauge's display, mm. */
  readonly lengthResolution?: number;
  /** Largest error of the gauge, mm. */
  readonly lengthAccuracy?: number;
  /** Share of the best strength that must be left. */
  readonly acceptedStrength?: number;
  /** From crest to trough, mm. */
  readonly acceptedRipple?: number;
  /** Lowest grade that passes, 2 to 5. */
  readonly acceptedGrade?: number;
  /** mm/s2, where the whole run kept to one. */
  readonly acceleration?: number;
  /** Water that may be left, as a share of the dry mass. */
  readonly residualMoisture?: number;
  /** Mass of the empty reel that the masses hold, g. */
  readonly reelMass?: number;
  readonly meterClass?: MeterClass;
  /** Step of the sound level meter's display, dB. */
  readonly levelResolution?: number;
  /** Level of the room with the machine off, dB. */
  readonly backgroundLevel?: number;
}

/** Name of a fact of a run. */
export type RunFact = keyof BenchRun;

/** How a fact is written in a trial and on the command line. */
export interface FactText {
  readonly what: string;
  /** Where a trial has it, as keys or in words. */
  readonly place: string;
  /** Option of the command line for bare sheets, without dashes; facts of different methods may share one. */
  readonly flag: string;
  readonly form: { readonly dimension: Dimension } | { readonly choices: readonly string[] } | 'wholeNumber';
  readonly example: string;
}

const fact = (
  flag: string,
  dimension: Dimension,
  example: string,
  place: string,
  what: string,
): FactText => ({
  what,
  place,
  flag,
  form: { dimension },
  example,
});

/** The facts with their texts. */
export const factTexts: Readonly<Record<RunFact, FactText>> = {
  filamentDiameter: fact(
    'diameter',
    'length',
    '1.75 mm',
    'diameter of the filament profile',
    'filament diameter',
  ),
  diameterTolerance: fact(
    'tolerance',
    'length',
    '0.05 mm',
    'diameterTolerance of the filament profile',
    'tolerance of the diameter',
  ),
  density: fact('density', 'density', '1.24 g/cm3', 'density of the filament profile', 'filament density'),
  acceptedDeficit: fact('tolerance', 'ratio', '5 %', 'acceptedDeficit', 'accepted flow deficit, default 5 %'),
  massResolution: fact(
    'resolution',
    'mass',
    '0.01 g',
    'scale: {resolution}',
    'smallest step of the scale, default 0.01 g',
  ),
  feedLengthUncertainty: fact(
    'feed-uncertainty',
    'ratio',
    '0.2 %',
    'feedLengthUncertainty',
    'relative standard uncertainty of the fed length, default 0.1 %',
  ),
  haltedAt: fact('halted', 'volumeFlow', '66 mm3/s', 'events', 'commanded flow at which the run was halted'),
  lengthResolution: fact(
    'resolution',
    'length',
    '0.01 mm',
    'gauge: {resolution}',
    'smallest step of the gauge, default 0.01 mm',
  ),
  lengthAccuracy: fact(
    'accuracy',
    'length',
    '0.02 mm',
    'gauge: {accuracy}',
    'largest error of the gauge, default 0.02 mm',
  ),
  acceptedStrength: fact(
    'accepted',
    'ratio',
    '90 %',
    'acceptedStrength',
    'share of the best strength that must be left, default 90 %',
  ),
  acceptedRipple: fact('accepted', 'length', '0.02 mm', 'acceptedRipple', 'ripple that is accepted'),
  acceptedGrade: {
    what: 'lowest grade that passes, default 4',
    place: 'acceptedGrade',
    flag: 'grade',
    form: 'wholeNumber',
    example: '4',
  },
  acceleration: fact(
    'acceleration',
    'acceleration',
    '8000 mm/s2',
    'conditions: {acceleration}',
    'acceleration of the axes',
  ),
  residualMoisture: fact(
    'residual',
    'ratio',
    '0.02 %',
    'residualMoisture',
    'water that may be left, as a share of the dry mass',
  ),
  reelMass: fact('reel', 'mass', '180 g', 'reelMass', 'mass of the empty reel, part of the masses read'),
  meterClass: {
    what: 'class of the sound level meter, default unclassed',
    place: 'soundMeter: {class}',
    flag: 'meter',
    form: { choices: ['class1', 'class2', 'unclassed'] satisfies readonly MeterClass[] },
    example: 'class2',
  },
  levelResolution: fact(
    'resolution',
    'soundLevel',
    '0.1 dB[SPL]{A}',
    'soundMeter: {resolution}',
    'smallest step of the meter, default 1 dB',
  ),
  backgroundLevel: fact(
    'background',
    'soundLevel',
    '32 dB[SPL]{A}',
    'backgroundLevel',
    'level of the room with the machine off',
  ),
};
