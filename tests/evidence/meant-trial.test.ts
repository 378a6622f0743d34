import { expect, it } from 'vitest';
import { meantTrial } from '../../src/evidence/meant-trial.ts';
import type { Edit } from '../rules/edited-sample.ts';
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

it('is the first by its id of trials with the same readings, in whatever order their files come', () => {
  const copyAs = (id: string): Edit[] => [
    {
      copy: 'trials/2026/wren-daisy-pla-230.yaml',
      to: `trials/2026/${id}.yaml`,
      edits: [['id: wren-daisy-pla-230', `id: ${id}`]],
    },
  ];
  const statement = { evidence: 'wren-clover-petg-245', readings: ofDaisy };
  const withLater = registryAfter(copyAs('wren-daisy-pla-231'));
  expect(meantTrial(statement, withLater)?.id).toBe('wren-daisy-pla-230');
  const withEarlier = registryAfter(copyAs('wren-daisy-pla-229'));
  expect(meantTrial(statement, withEarlier)?.id).toBe('wren-daisy-pla-229');
});
