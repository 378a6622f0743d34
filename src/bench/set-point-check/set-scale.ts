import type { Dimension } from '../../units/dimension.ts';
import type { Observations } from '../sheet/observations.ts';
import type { SetPointCheckRun } from './set-point-check-facts.ts';

/** What is set and checked: a temperature or a relative humidity. Its numbers are in the canonical unit, °C and K or a share. */
export interface SetScale {
  readonly name: 'temperature' | 'humidity';
  readonly set: 'setTemperature' | 'setHumidity';
  readonly reference: 'referenceTemperature' | 'referenceHumidity';
  readonly dimension: Dimension;
  /** Of differences. */
  readonly apart: Dimension;
  /** The instrument in words, and what it shows and is off by where a run does not say (common practice, no source). */
  readonly instrument: string;
  readonly usual: { readonly resolution: number; readonly accuracy: number; readonly within: number };
  /** What can be set and read, in words too, and how far a reference may be from what is set. */
  readonly settable: readonly [low: number, high: number, words: string];
  readonly readable: readonly [low: number, high: number, words: string];
  readonly farthest: number;
  readonly reached: 'reachedTemperature' | 'reachedHumidity';
}

const temperature: SetScale = {
  name: 'temperature',
  set: 'setTemperature',
  reference: 'referenceTemperature',
  dimension: 'temperature',
  apart: 'temperatureDifference',
  instrument: 'thermometer',
  usual: { resolution: 0.1, accuracy: 2, within: 2 },
  settable: [20, 600, 'a machine is set to 20 to 600 Cel'],
  readable: [-20, 700, 'no part is that cold or hot'],
  farthest: 100,
  reached: 'reachedTemperature',
};

const humidity: SetScale = {
  name: 'humidity',
  set: 'setHumidity',
  reference: 'referenceHumidity',
  dimension: 'ratio',
  apart: 'ratio',
  instrument: 'hygrometer',
  usual: { resolution: 0.01, accuracy: 0.03, within: 0.02 },
  settable: [0, 1, 'relative humidity is 0 to 100 %'],
  readable: [0, 1, 'relative humidity is 0 to 100 %'],
  farthest: 0.6,
  reached: 'reachedHumidity',
};

/** What the columns of a check are about. */
export function scaleOf({ columns }: Observations): SetScale {
  return columns.setHumidity === undefined ? temperature : humidity;
}

/** The instrument of a run, and how far settled readings may be apart. */
export function instrumentOf({ name, usual }: SetScale, run: SetPointCheckRun) {
  const stated =
    name === 'temperature'
      ? {
          resolution: run.thermometerResolution,
          accuracy: run.thermometerAccuracy,
          within: run.settledWithin,
        }
      : { resolution: run.hygrometerResolution, accuracy: run.hygrometerAccuracy, within: undefined };
  return {
    resolution: stated.resolution ?? usual.resolution,
    accuracy: stated.accuracy ?? usual.accuracy,
    within: stated.within ?? usual.within,
    isAccuracyStated: stated.accuracy !== undefined,
  };
}
