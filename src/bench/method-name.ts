import type { Trial } from '../registry/generated/documents.ts';

/** Name of a bench method, as trials write it. */
export type MethodName = Trial['method'];

/** Names of the bench methods, in the order in which they are listed. */
export const methodNames: readonly MethodName[] = [
  'flowLadder',
  'diameterSurvey',
  'temperatureSweep',
  'contourLadder',
  'layerTime',
  'dryingCurve',
  'soundLevel',
  'referencePrint',
];

/** The method that is meant where none is named. */
export const usualMethod: MethodName = 'flowLadder';
