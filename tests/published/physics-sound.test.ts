import { describe, expect, it } from 'vitest';
import {
  backgroundCorrection,
  dailyExposureLevel,
  levelAtOtherDistance,
  pressureLevelAtDistance,
  roomCorrection,
  sumOfLevels,
} from '../../src/physics/sound.ts';
import { emissionStatementLevels, exposureActionLevels } from '../../src/physics/sound-limits.ts';

describe('sound pressure from sound power', () => {
  // ISO 3744, hemisphere S = 2 pi r²; ISO 11203: L_p = L_W - 10 lg(S/S0).
  it('of 60 dB at 1 m is 49.01 dB in free space and 52.02 dB over a plane', () => {
    expect(pressureLevelAtDistance(60, 1000, 'free')).toBeCloseTo(49.01, 2);
    expect(pressureLevelAtDistance(60, 1000, 'overPlane')).toBeCloseTo(52.02, 2);
  });

  it('equals the sound power level at 0.2821 m in free space and 0.3989 m over a plane', () => {
    expect(Math.abs(pressureLevelAtDistance(60, 282.1, 'free') - 60)).toBeLessThan(1e-3);
    expect(Math.abs(pressureLevelAtDistance(60, 398.9, 'overPlane') - 60)).toBeLessThan(1e-3);
  });

  it('falls by 6.02 dB at twice the distance', () => {
    // 20 lg 2.
    expect(levelAtOtherDistance(60, 1000, 2000)).toBeCloseTo(60 - 6.0206, 4);
  });
});

describe('sums of levels', () => {
  it('60 dB and 65 dB make 66.19 dB', () => {
    // Energetic sum as in ISO 1996-1, recomputed.
    expect(sumOfLevels([60, 65])).toBeCloseTo(66.19, 2);
  });

  it('twice the intensity is 3.01 dB more', () => {
    // OpenStax, University Physics vol. 1, example 17.3.
    expect(sumOfLevels([60, 60]) - 60).toBeCloseTo(3.01, 2);
  });
});

describe('background correction', () => {
  it.each([
    [3, 3.02],
    [6, 1.26],
    [10, 0.46],
    [15, 0.14],
  ])('at %d dB above the background is %d dB', (difference, correction) => {
    // ISO 3744 and ISO 3746, K1 = -10 lg(1 - 10^(-0.1 dL)), recomputed.
    expect(backgroundCorrection(difference)).toBeCloseTo(correction, 2);
  });
});

describe('room correction', () => {
  it.each([
    // ISO 3746: a room will do up to K2 = 7 dB, which is an absorption area as large as the surface (from memory).
    [1, 7],
    // ISO 3744:1994: a room will do up to K2 = 2 dB, which is an absorption area six times as large (from memory).
    [6, 2],
  ])('with an absorption area %d times the surface is %d dB, to whole decibels', (ratio, correction) => {
    expect(Math.round(roomCorrection(1e6, ratio * 1e6))).toBe(correction);
  });

  it('vanishes outdoors', () => {
    expect(roomCorrection(1e6, Number.POSITIVE_INFINITY)).toBe(0);
  });
});

describe('noise at work', () => {
  it('88 dB(A) for 4 h is a daily exposure of 84.99 dB(A)', () => {
    // Directive 2003/10/EC, article 2 (L_EX,8h by ISO 1999); the 3 dB exchange, recomputed.
    expect(dailyExposureLevel(88, 4 * 3600)).toBeCloseTo(84.99, 2);
  });

  it('asks for action at 80 and 85 dB(A) and is limited to 87 dB(A)', () => {
    // Directive 2003/10/EC, article 3(1).
    expect(exposureActionLevels).toEqual({ lowerAction: 80, upperAction: 85, limit: 87 });
  });

  it('has to be stated by a machine above 70 dB(A), with its sound power above 80 dB(A)', () => {
    // Directive 2006/42/EC, Annex I, 1.7.4.2(u).
    expect(emissionStatementLevels).toEqual({ pressureStatement: 70, powerStatement: 80 });
  });
});
