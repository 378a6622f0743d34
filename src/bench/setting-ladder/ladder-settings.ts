import type { Dimension } from '../../units/dimension.ts';

/** What is known of a setting that a ladder raises. */
export interface LadderSetting {
  readonly dimension: Dimension;
  /**
   * Which settings hold: those from a least one on, those up to a highest one, those of a window, of which the middle or
   * both ends are wanted.
   */
  readonly holds: 'fromLeast' | 'upToHighest' | 'middleOfWindow' | 'window';
  /** Beyond them a setting is in another unit, in the canonical one. */
  readonly range: readonly [lowest: number, highest: number];
}

const printSpeed = { dimension: 'speed', holds: 'upToHighest', range: [1, 5000] } as const;

/** The settings that a ladder may raise, by the names of their columns. */
export const ladderSettings = {
  retractionLength: {
    dimension: 'length',
    holds: 'fromLeast',
    range: [0, 50],
  },
  retractionSpeed: {
    dimension: 'speed',
    holds: 'middleOfWindow',
    range: [0.5, 500],
  },
  pressureCompensation: {
    dimension: 'time',
    holds: 'middleOfWindow',
    range: [0, 10],
  },
  stickingSpeed: printSpeed,
  bridgeSpeed: printSpeed,
  overhangSpeed: printSpeed,
  fan: {
    dimension: 'ratio',
    holds: 'window',
    range: [0, 1],
  },
} as const satisfies Readonly<Record<string, LadderSetting>>;

export type LadderSettingName = keyof typeof ladderSettings;

/** Names of the settings, in the order in which they are listed. */
export const ladderSettingNames = Object.keys(ladderSettings) as readonly LadderSettingName[];
