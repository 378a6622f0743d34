import { type Finding, wholeFile } from '../../registry/finding.ts';
import { ruleOf } from '../../rules/engine/rules.ts';

/** What is said of a trial whose remembered reduction is not what its readings give now. */
export function misremembered(trial: string, file: string): Finding {
  const { code, severity, source } = ruleOf('evidence/misremembered');
  return {
    ...wholeFile,
    rule: code,
    severity,
    message: `The reduction of ${trial} that an earlier run left behind is not what its readings give now`,
    file,
    pointer: '',
    found: null,
    allowed: null,
    source,
    help: 'It has been replaced; run `meltbounds check --no-remember` to have all of them computed again, and find out who writes to the folder of remembered results.',
  };
}
