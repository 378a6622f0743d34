import { aboveZero, type Fact } from './fact.ts';

/** Scale step taken where a run names no scale, in g: the usual pocket scale (common practice, no source). */
export const usualMassResolution = 0.01;

/** Largest part of a mass, as a fraction, that the step of the scale may cost (common practice, no source). */
export const largestScaleShare = 0.005;

/** Gauge step taken where a run names no gauge, in mm: the usual caliper (common practice, no source). */
export const usualLengthResolution = 0.01;

/** Step of the scale's display, g. */
export const massResolution: Fact<number> = {
  what: 'smallest step of the scale, default 0.01 g',
  form: { dimension: 'mass' },
  example: '0.01 g',
  possible: aboveZero,
  flag: 'resolution',
  statedIn: 'trial',
  place: 'scale: {resolution}',
  read: ({ scale }) => scale?.resolution,
};

/** Step of the gauge's display, mm. */
export const lengthResolution: Fact<number> = {
  what: 'smallest step of the gauge, default 0.01 mm',
  form: { dimension: 'length' },
  example: '0.01 mm',
  possible: aboveZero,
  flag: 'resolution',
  statedIn: 'trial',
  place: 'gauge: {resolution}',
  read: ({ gauge }) => gauge?.resolution,
};
