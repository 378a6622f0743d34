import type { Decibels } from '../units/canonical.ts';

/**
 * Daily noise exposure levels L_EX,8h, in dB(A), at which European law asks employers for action.
 * The limit counts the wearer's hearing protection, the action values do not.
 * Source: Directive 2003/10/EC, article 3(1) and 3(2).
 */
export const exposureActionLevels: Readonly<Record<'lowerAction' | 'upperAction' | 'limit', Decibels>> = {
  lowerAction: 80,
  upperAction: 85,
  limit: 87,
};

/**
 * A-weighted emission sound pressure levels at the workstation, in dB(A), above which a machine's instructions must state
 * the level itself (`pressureStatement`; at or below it, that fact), and the sound power level too (`powerStatement`).
 * Source: Directive 2006/42/EC, Annex I, 1.7.4.2(u).
 */
export const emissionStatementLevels: Readonly<Record<'pressureStatement' | 'powerStatement', Decibels>> = {
  pressureStatement: 70,
  powerStatement: 80,
};
