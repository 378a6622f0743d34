import { expect, it } from 'vitest';
import { meantTrial } from '../../src/evidence/meant-trial.ts';
import { registryAfter } from './edited-registry.ts';

const ofDaisy = '6cc971210344c1a6';
const registry = registryAfter([]);

it('is the trial whose readings have the digest, where a statement names another', () => {
  const statement = { evidence: 'wren-clover-petg-245', readings: ofDaisy };
  expect(meantTrial(statement, registry)?.id).toBe('wren-daisy-pla-230');
});

it('is none where a statement names the trial of its readings', () => {
  expect(meantTrial({ evidence: 'wren-daisy-pla-230', readings: ofDaisy }, registry)).toBeNull();
});

it('is none where no trial has these readings: they were changed', () => {
  const statement = { evidence: 'wren-daisy-pla-230', readings: '0123456789abcdef' };
  expect(meantTrial(statement, registry)).toBeNull();
});

it('is none where a statement names no trial of the registry, or no readings', () => {
  expect(meantTrial({ evidence: 'lost', readings: ofDaisy }, registry)).toBeNull();
  expect(meantTrial({ evidence: 'wren-daisy-pla-230' }, registry)).toBeNull();
});
