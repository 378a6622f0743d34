import type { Coded, RuleText } from './rule.ts';

const supported = `meltFlow:
  - value: 24 mm3/s
    basis: measured
    evidence: wren-clover-petg-245
    at: {machine: plumstead/wren, nozzle: hs-0.6, nozzleTemperature: 245 Cel}
    date: 2026-02-12
`;

const acknowledged = (rule: string, at: string, until: string) =>
  `acknowledged:\n  - {rule: ${rule}, at: ${at}, reason: A second scale shows less deficit, until: ${until}}`;

const good = supported + acknowledged('evidence/unsupported', '/meltFlow/0', '2027-01-31');

/** What the documentation says about the findings that acknowledgements themselves raise. */
export const acknowledgementRules = {
  unknownRule: {
    code: 'acknowledgement/unknown-rule',
    severity: 'error',
    statement: 'An acknowledgement names a rule that there is.',
    rationale: 'A misspelled code accepts nothing, and the reader believes that it does.',
    source: 'Format of the registry: codes of rules never change their meaning.',
    example: {
      kind: 'filament',
      bad: acknowledged('evidence/unsuported', '/density', '2027-01-31'),
      good,
    },
  },
  unused: {
    code: 'acknowledgement/unused',
    severity: 'error',
    statement: 'An acknowledgement accepts a finding that there is.',
    rationale: 'What accepts nothing today may hide a fault tomorrow; the list of debts shall only shrink.',
    source: 'Common practice, no source.',
    example: {
      kind: 'filament',
      bad: acknowledged('evidence/unsupported', '/density', '2027-01-31'),
      good,
    },
  },
  expired: {
    code: 'acknowledgement/expired',
    severity: 'warning',
    statement: 'An acknowledgement holds up to and including its date.',
    rationale: 'A value that was accepted for a while is to be measured again; what it hid is found again.',
    source: 'Format of the registry: `until` is the last day of an acknowledgement.',
    example: {
      kind: 'filament',
      bad: acknowledged('evidence/unsupported', '/density', '2026-01-31'),
      good,
    },
  },
} as const satisfies Readonly<Record<string, Coded<RuleText>>>;
