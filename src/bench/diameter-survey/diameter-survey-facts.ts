import { type Fact, type RunOf, zeroOrMore } from '../facts/fact.ts';
import { filamentDiameter } from '../facts/filament-facts.ts';
import { lengthResolution } from '../facts/instrument-facts.ts';

/** Largest deviation from the nominal diameter that the maker allows, mm. */
const diameterTolerance: Fact<number> = {
  what: 'tolerance of the diameter',
  form: { dimension: 'length' },
  example: '0.05 mm',
  flag: 'tolerance',
  statedIn: 'filament',
  place: 'diameterTolerance of the filament profile',
  read: (_, filament) => filament?.diameterTolerance,
};

/** Largest error of the gauge, mm. */
const lengthAccuracy: Fact<number> = {
  what: 'largest error of the gauge, default 0.02 mm',
  form: { dimension: 'length' },
  example: '0.02 mm',
  possible: zeroOrMore,
  flag: 'accuracy',
  statedIn: 'trial',
  place: 'gauge: {accuracy}',
  read: ({ gauge }) => gauge?.accuracy,
};

/**
 * Largest error of a gauge that states none, in mm: calipers with a step of 0.01 mm up to 50 mm (ISO 13385-1:2019,
 * typical value, from memory).
 */
export const usualLengthAccuracy = 0.02;

/** What is known of a survey of diameters besides its readings. */
export const diameterSurveyFacts = { filamentDiameter, diameterTolerance, lengthResolution, lengthAccuracy };

export type DiameterSurveyRun = RunOf<typeof diameterSurveyFacts>;
