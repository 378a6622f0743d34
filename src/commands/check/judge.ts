import { rememberReductions } from '../../bench/reduce-trial.ts';
import { type Finding, wholeFile } from '../../registry/finding.ts';
import type { ResultMemory } from '../../registry/result-memory.ts';
import { type Judgement, judgeRegistry } from '../../rules/engine/check-registry.ts';
import { ruleOf } from '../../rules/engine/rules.ts';
import type { CheckedFiles } from './checked-files.ts';

/** What the rules find in the wanted files, whatever earlier runs have found. */
export function judge(
  files: Pick<CheckedFiles, 'loaded'>,
  wantsFile: (file: string) => boolean,
  memory: ResultMemory,
  today: string,
): Judgement {
  const loaded = files.loaded();
  rememberReductions(loaded.registry, memory);
  return judgeRegistry(loaded, { today, wants: wantsFile });
}

/** What is said of a trial whose remembered reduction is not what its readings give now. */
export function misremembered(trial: string, file: string): Finding {
  return wronglyRemembered(
    `The reduction of ${trial} that an earlier run left behind is not what its readings give now`,
    file,
  );
}

/** What is said of a file of which an earlier run is said to have found something else. */
export function misrememberedFile(file: string): Finding {
  return wronglyRemembered(
    'What an earlier run left behind about this file is not what is found in it now',
    file,
  );
}

function wronglyRemembered(message: string, file: string): Finding {
  const { code, severity, source } = ruleOf('evidence/misremembered');
  return {
    ...wholeFile,
    rule: code,
    severity,
    message,
    file,
    pointer: '',
    found: null,
    allowed: null,
    source,
    help: 'It has been replaced; run `meltbounds check --no-remember` to have everything computed again, and find out who writes to the folder of remembered results.',
  };
}
