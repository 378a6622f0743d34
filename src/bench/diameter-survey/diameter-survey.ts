import type { Method } from '../method.ts';
import { usualOpenWords } from '../result-words.ts';
import { diameterSurveyFacts } from './diameter-survey-facts.ts';
import { doubtfulDiameters } from './doubtful-diameters.ts';
import { reduceDiameterSurvey } from './reduce-diameter-survey.ts';

/** Thickness at places along a filament: mean diameter, spread, ovality and flow error. */
export const diameterSurvey = {
  method: 'diameterSurvey',
  columns: { position: 'length', firstDiameter: 'length', secondDiameter: 'length' },
  read: ['firstDiameter', 'secondDiameter'],
  requiredKeys: [],
  facts: diameterSurveyFacts,
  requiredFacts: ['filamentDiameter'],
  reduce: reduceDiameterSurvey,
  doubtful: doubtfulDiameters,
  results: {
    meanDiameter: { digits: 5 },
    diameterSpread: {},
    ovality: {},
    flowError: { unit: '%' },
  },
  openWords: usualOpenWords,
  adoptable: [],
} as const satisfies Method<typeof diameterSurveyFacts>;
