import { trialRun } from '../../src/bench/facts/fact.ts';
import { methodOf } from '../../src/bench/methods.ts';
import { reduceTrial } from '../../src/bench/reduce-trial.ts';
import type { Finding } from '../../src/registry/finding.ts';
import { validators } from '../../src/registry/generated/validators.js';
import { identityOfPath } from '../../src/registry/kind.ts';
import { type LoadedRegistry, linkFiles, parsingChanges } from '../../src/registry/load-files.ts';
import type { Registry } from '../../src/registry/registry.ts';
import { fileOfText, isProfilePath, refused } from '../../src/registry/registry-file.ts';
import { readYaml } from '../../src/registry/yaml/yaml-document.ts';
import { checkRegistry } from '../../src/rules/engine/check-registry.ts';
import { namesSlip } from './names-slip.ts';
import type { Adoption, Edits, Slip, Texts } from './slip.ts';
import { withAdoption } from './with-adoption.ts';

/** What became of a slip. */
export interface Outcome {
  readonly slip: Slip;
  /** Whether a tool that knows no more than JSON Schema and YAML refuses a file with it. */
  readonly byForm: boolean;
  /** Place of the first error or warning that names the slip among all that it brings, as they are printed, from 1; null if none does. */
  readonly rank: number | null;
  readonly severity: 'error' | 'warning' | null;
  /** Everything that it brings, notes apart. */
  readonly brought: readonly Finding[];
}

/** A good registry in memory, and a way to see what checking says once a slip is in it. */
export interface PlantedRegistry {
  readonly name: string;
  readonly texts: Texts;
  readonly registry: Registry;
  /** What is found without a slip, notes apart: it is not counted. */
  readonly findings: readonly Finding[];
  readonly load: (edits: Edits) => LoadedRegistry;
  readonly check: (edits: Edits) => readonly Finding[];
  readonly plant: (slip: Slip) => Outcome;
}

export const noEdits: Edits = new Map();

export function openRegistry(name: string, texts: Texts, today: string): PlantedRegistry {
  const reduce = rememberingReduce();
  const parse = parsingChanges();
  const load = (edits: Edits) => loadTexts(withEdits(texts, edits), parse);
  const check = (edits: Edits) =>
    checkRegistry(load(edits), { today, reduce }).filter(({ severity }) => severity !== 'note');
  const findings = check(noEdits);
  const comparisons = new Map<string, readonly Finding[]>();
  const adopting = (edits: Edits, { trial, stage }: Adoption) => withAdoption(edits, trial, stage, load);
  const comparedWith = (adoption: Adoption | undefined) => {
    if (adoption === undefined || adoption.isNew) return findings;
    const key = JSON.stringify(adoption);
    const known = comparisons.get(key) ?? check(adopting(noEdits, adoption));
    comparisons.set(key, known);
    return known;
  };
  return {
    ...{ name, texts, findings, load, check },
    registry: load(noEdits).registry,
    plant: (slip) => {
      const known = new Set(comparedWith(slip.adoption).map(identity));
      const edits = slip.adoption === undefined ? slip.edits : adopting(slip.edits, slip.adoption);
      const brought = check(edits).filter((finding) => !known.has(identity(finding)));
      const at = brought.findIndex((finding) => namesSlip(finding, slip));
      const { severity } = brought[at] ?? {};
      return {
        ...{ slip, brought, byForm: isRefusedByForm(slip) },
        rank: at < 0 ? null : at + 1,
        severity: severity === 'error' || severity === 'warning' ? severity : null,
      };
    },
  };
}

export function withEdits(texts: Texts, edits: Edits): Texts {
  const all = new Map(texts);
  for (const [path, text] of edits) {
    if (text === null) all.delete(path);
    else all.set(path, text);
  }
  return all;
}

/** The registry that texts make; `parse` remembers what it has parsed. */
export function loadTexts(texts: Texts, parse = parsingChanges()): LoadedRegistry {
  const root = { shown: '' };
  const read = (path: string) => {
    const text = texts.get(path);
    return text === undefined ? refused(root, path, 'missing') : fileOfText(root, path, text);
  };
  const paths = [...texts.keys()].filter(isProfilePath).sort();
  return linkFiles(
    paths.map((path) => ({ file: read(path), readSibling: read })),
    parse,
  );
}

function identity({ file, rule, pointer, message }: Finding): string {
  return JSON.stringify([file, rule, pointer, message]);
}

/** Only the file that has the slip counts: what is adopted from it is written by the program. */
function isRefusedByForm({ file, edits }: Slip): boolean {
  const text = edits.get(file);
  const kind = identityOfPath(file)?.kind;
  if (!isProfilePath(file) || text === undefined || text === null || kind === undefined) return false;
  const { document, problems } = readYaml(text);
  return document === null || problems.length > 0 || !validators[kind](document.value);
}

/** Reduces a trial once for every state of the data that its reduction rests on. */
function rememberingReduce(): typeof reduceTrial {
  const known = new Map<string, ReturnType<typeof reduceTrial>>();
  return (registry, id) => {
    const trial = registry.trial.get(id);
    if (trial === undefined) return reduceTrial(registry, id);
    const { method, filament, observations } = trial.data;
    const run = trialRun(registry, trial, methodOf(method).facts);
    const isKnown = registry.filament.has(filament);
    const sheet = trial.attachment?.ok ? trial.attachment.source.digest : '';
    const key = JSON.stringify([id, method, isKnown, run, trial.data, observations, sheet]);
    const reduced = known.get(key) ?? reduceTrial(registry, id);
    known.set(key, reduced);
    return reduced;
  };
}
