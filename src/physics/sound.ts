import type { Decibels, Millimetres, Seconds, SquareMillimetres, Watts } from '../units/canonical.ts';

/** Where the source stands: free in space, or on a floor that reflects. */
export type SoundField = 'free' | 'overPlane';

const MILLIMETRES_PER_METRE = 1000;
const REFERENCE_POWER: Watts = 1e-12;
const WORKING_DAY: Seconds = 8 * 3600;

/**
 * Sound pressure level, in dB re 20 uPa, at a distance from a small source with a sound power level in dB re 1 pW:
 * L_p = L_W - 10 lg(S/1 m2), with S = 4 pi r^2 in a free field and 2 pi r^2 over a reflecting plane.
 * Source: ISO 3744, hemispherical measurement surface; ISO 11203.
 */
export function pressureLevelAtDistance(
  powerLevel: Decibels,
  distance: Millimetres,
  field: SoundField,
): Decibels {
  return powerLevel - surfaceLevel(distance, field);
}

/** Sound power level, in dB re 1 pW, of a source with a sound pressure level (dB re 20 uPa) at a distance. Source: as `pressureLevelAtDistance`. */
export function powerLevelFromPressure(
  pressureLevel: Decibels,
  distance: Millimetres,
  field: SoundField,
): Decibels {
  return pressureLevel + surfaceLevel(distance, field);
}

/** Sound pressure level at another distance from the same small source: L - 20 lg(to/from). Source: as `pressureLevelAtDistance`. */
export function levelAtOtherDistance(level: Decibels, from: Millimetres, to: Millimetres): Decibels {
  return level - 20 * Math.log10(to / from);
}

/** Level of several sounds together, in dB, when they are not correlated: 10 lg sum 10^(L/10). No sound at all is -Infinity dB. Source: ISO 1996-1, energetic sum. */
export function sumOfLevels(levels: readonly Decibels[]): Decibels {
  return 10 * Math.log10(levels.reduce((sum, level) => sum + 10 ** (level / 10), 0));
}

/** Level, in dB, of a set of readings averaged by energy, as over microphone positions. -Infinity for none. Source: ISO 3744, mean level over the positions. */
export function meanOfLevels(levels: readonly Decibels[]): Decibels {
  return levels.length === 0
    ? Number.NEGATIVE_INFINITY
    : sumOfLevels(levels) - 10 * Math.log10(levels.length);
}

/**
 * Background correction K1, in dB, to take off a level that exceeds the background by `difference` dB (> 0):
 * K1 = -10 lg(1 - 10^(-0.1 difference)). Source: ISO 3744 and ISO 3746, background noise correction.
 */
export function backgroundCorrection(difference: Decibels): Decibels {
  return -10 * Math.log10(1 - 10 ** (-difference / 10));
}

/**
 * Room correction K2, in dB, to take off a level that was measured over a surface (mm2) in a room with an equivalent
 * absorption area (mm2), both above 0: K2 = 10 lg(1 + 4 S/A). Source: ISO 3746:2010, environmental correction (from memory).
 */
export function roomCorrection(surface: SquareMillimetres, absorptionArea: SquareMillimetres): Decibels {
  return 10 * Math.log10(1 + (4 * surface) / absorptionArea);
}

/**
 * Room correction K2, in dB, at another distance from a source on a floor: what the walls send back is the same everywhere,
 * K2 = 10 lg(1 + 4 S/A) with S = 2 pi r^2 and the absorption area A of the room, while the direct sound falls.
 * Source: ISO 3746, environmental correction (from memory).
 */
export function roomCorrectionAtOtherDistance(
  correction: Decibels,
  from: Millimetres,
  to: Millimetres,
): Decibels {
  return 10 * Math.log10(1 + (10 ** (correction / 10) - 1) * (to / from) ** 2);
}

/**
 * Daily noise exposure level L_EX,8h, in dB(A), of a steady A-weighted level heard for a time: L + 10 lg(T/8 h).
 * Source: Directive 2003/10/EC, article 2, with ISO 1999.
 */
export function dailyExposureLevel(level: Decibels, exposure: Seconds): Decibels {
  return level + 10 * Math.log10(exposure / WORKING_DAY);
}

/** Level, in dB re 1 pW, of a sound power in W. Source: ISO 3744, sound power level. */
export function powerLevel(power: Watts): Decibels {
  return 10 * Math.log10(power / REFERENCE_POWER);
}

/** Sound power in W of a level in dB re 1 pW. Source: as `powerLevel`. */
export function powerOfLevel(level: Decibels): Watts {
  return REFERENCE_POWER * 10 ** (level / 10);
}

function surfaceLevel(distance: Millimetres, field: SoundField): Decibels {
  const solidAngle = (field === 'free' ? 4 : 2) * Math.PI;
  return 10 * Math.log10(solidAngle * (distance / MILLIMETRES_PER_METRE) ** 2);
}
