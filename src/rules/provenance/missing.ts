import { basesByStrength, writtenStatements } from '../../registry/statement.ts';
import type { DocumentRule } from '../engine/rule.ts';

const needs = {
  measured: {
    key: 'evidence',
    example: 'evidence: lantern-stagecraft-pla-230',
    what: 'the trial whose readings show it',
  },
  published: { key: 'source', example: 'source: crawford-1998', what: 'the source that states it' },
  claimed: { key: 'source', example: 'source: brackwater-lantern-sheet', what: 'the source that states it' },
  derived: {
    key: 'reason',
    example: 'reason: Density over the mass of 1 m of filament',
    what: 'how it was calculated',
  },
  assumed: { key: 'reason', example: 'reason: Shop habit for this nozzle', what: 'why it is reasonable' },
} as const;

export const rule: DocumentRule = {
  judges: 'document',
  reach: 'profile',
  severity: 'error',
  statement:
    'A measured value names its trial, a published or claimed one its source, a derived or assumed one its reason.',
  rationale: 'A number of unknown origin cannot be checked, and is worth no more than a guess.',
  source: 'JCGM 200 (VIM) 2.9: a measurement result carries what is needed to use it; here, its provenance.',
  example: {
    kind: 'filament',
    bad: 'density:\n  - {value: 1.27 g/cm3, basis: claimed}',
    good: 'density:\n  - {value: 1.27 g/cm3, basis: claimed, source: oakhollow-clover-petg-sheet}',
  },
  *check(document) {
    for (const { path, statement } of writtenStatements(document)) {
      const basis = basesByStrength.find((known) => known === statement.basis);
      if (basis === undefined) continue;
      const need = needs[basis];
      if (statement[need.key] !== undefined) continue;
      yield {
        path,
        part: 'value',
        message: `The basis is "${basis}", but "${need.key}" is missing: ${need.what}`,
        found: basis,
        allowed: `${basis} with ${need.key}`,
        help: isClaim(statement)
          ? 'Write `basis: claimed` for what a sheet says, or name the trial under `evidence`.'
          : `Add, for instance: \`${need.example}\``,
      };
    }
  },
};

/** Whether a statement is called measured, but names a source, as a claim does. */
function isClaim({ basis, source }: Readonly<Record<string, unknown>>): boolean {
  return basis === 'measured' && source !== undefined;
}
