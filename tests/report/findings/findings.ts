import type { Finding } from '../../../src/registry/finding.ts';

/** A finding with whatever a test is about. */
export function finding(parts: Partial<Finding> = {}): Finding {
  return {
    rule: 'units/bare-number',
    severity: 'error',
    message: 'The value of "meltFlow": 22 has no unit',
    file: 'profiles/a.yaml',
    line: 2,
    column: 8,
    endLine: 2,
    endColumn: 10,
    pointer: '/meltFlow/0/value',
    found: '22',
    allowed: 'volume flow in mm3/s, cm3/s',
    source: 'UCUM',
    help: 'if it is in mm3/s, write `22 mm3/s`',
    ...parts,
  };
}
