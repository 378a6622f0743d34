import type { Finding } from '../../../src/registry/finding.ts';

/** A finding of invented content, for tests of the forms of a report. */
export function aFinding(changes: Partial<Finding> = {}): Finding {
  return {
    rule: 'units/bare-number',
    severity: 'error',
    message: 'The value of "topSpeed": 500 has no unit',
    file: 'profiles/machines/plumstead/wren.yaml',
    line: 12,
    column: 13,
    endLine: 12,
    endColumn: 16,
    pointer: '/topSpeed/0/value',
    found: '500',
    allowed: 'speed in mm/s',
    source: 'UCUM, case-sensitive codes',
    help: 'if it is in mm/s, write `500 mm/s`',
    ...changes,
  };
}

export const aWarning = aFinding({
  rule: 'acknowledgement/expired',
  severity: 'warning',
  message: 'It was accepted until 2026-01-31',
  file: 'profiles/filaments/a b, 100%: "new".yaml',
  line: 3,
  column: 1,
  endLine: 5,
  endColumn: 4,
  pointer: '/acknowledged/0',
  found: null,
  allowed: null,
  source: null,
  help: null,
});

export const aNote = aFinding({
  rule: 'style/key-order',
  severity: 'note',
  message: '"name" stands below "maker"',
  pointer: '/name',
  help: 'Move it.',
});

/** Without a place in the file. */
export const aWholeFile = aFinding({
  rule: 'file/encoding',
  message: 'The file is not UTF-8 text',
  file: 'profiles/jobs/hook.yaml',
  line: 1,
  column: 1,
  endLine: 1,
  endColumn: 1,
  pointer: '',
  found: null,
  allowed: null,
  source: null,
  help: 'Save it as UTF-8',
});
