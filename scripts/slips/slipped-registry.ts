import { dirname } from 'node:path';
import { trialRun } from '../../src/bench/facts/fact.ts';
import { methodOf } from '../../src/bench/methods.ts';
import { reduceTrial } from '../../src/bench/reduce-trial.ts';
import { type RegistryRoot, readRegistryFile, readRegistryFiles } from '../../src/host/registry-files.ts';
import type { Finding } from '../../src/registry/finding.ts';
import { validators } from '../../src/registry/generated/validators.js';
import type { LoadedRegistry } from '../../src/registry/load-files.ts';
import type { AnyProfile } from '../../src/registry/profile.ts';
import { type ReadProfile, readProfile } from '../../src/registry/read-profile.ts';
import { linkRegistry, type Registry } from '../../src/registry/registry.ts';
import type { ReadFile } from '../../src/registry/registry-file.ts';
import { sourceText } from '../../src/registry/source-text.ts';
import { readYaml } from '../../src/registry/yaml/yaml-document.ts';
import { checkRegistry } from '../../src/rules/engine/check-registry.ts';
import type { Slip } from './slip.ts';

/** What became of a slip. */
export interface Outcome {
  readonly slip: Slip;
  readonly bySchema: boolean;
  /** New findings in the files of the profile that has the slip. */
  readonly byCheck: boolean;
  /** New findings in any file. */
  readonly anywhere: boolean;
  /** Place of the first finding that points at the slip among the new ones in its file, from 1; null if none does. */
  readonly rank: number | null;
}

/** A good registry in memory, and a way to see what checking says once a slip is in it. */
export interface SlippedRegistry {
  readonly registry: Registry;
  readonly findings: readonly Finding[];
  readonly plant: (slip: Slip) => Outcome;
}

export function openRegistry(root: RegistryRoot, today: string): SlippedRegistry {
  const reduce = rememberingReduce();
  const attachmentOf = (file: ReadFile) => (name: string) =>
    readRegistryFile(root, `${dirname(file.ok ? file.source.relativePath : file.relativePath)}/${name}`);
  const read = readRegistryFiles(root).map((file) => readProfile(file, attachmentOf(file)));
  const check = (all: readonly ReadProfile[]) => checkRegistry(linked(all), { today, reduce });
  const findings = check(read);
  const known = new Set(findings.map(identity));
  return {
    registry: linked(read).registry,
    findings,
    plant: (slip) => {
      const slipped = readSlipped(slip, attachmentOf);
      const all = read.map((one) => (one.profile === slip.profile ? slipped : one));
      return outcomeOf(
        slip,
        check(all).filter((finding) => !known.has(identity(finding)) && counts(slip, finding)),
      );
    },
  };
}

function linked(read: readonly ReadProfile[]): LoadedRegistry {
  const documents = read.flatMap(({ document }) => (document === null ? [] : [document]));
  const profiles = read.flatMap(({ profile }) => (profile === null ? [] : [profile]));
  const broken = read.flatMap(({ profile, identity: of }) =>
    profile === null && of !== null ? [`${of.kind} ${of.id}`] : [],
  );
  return {
    registry: linkRegistry(documents, profiles, new Set(broken)),
    findings: read.flatMap((one) => one.findings),
    texts: new Map(),
    files: [],
  };
}

function readSlipped(
  { profile, inAttachment, text }: Slip,
  attachmentOf: (file: ReadFile) => (name: string) => ReadFile,
): ReadProfile {
  const original: ReadFile = { ok: true, source: profile.source };
  if (!inAttachment) return readProfile(withText(original, text), attachmentOf(original));
  return readProfile(original, (name) => withText(attachmentOf(original)(name), text));
}

function withText(file: ReadFile, text: string): ReadFile {
  return file.ok ? { ok: true, source: sourceText(file.source.path, file.source.relativePath, text) } : file;
}

/** A reading that is wrong from the first has no digest to betray it. */
function counts({ kind }: Slip, { rule }: Finding): boolean {
  return kind !== 'reading off by 20 %' || rule !== 'evidence/readings-changed';
}

function identity({ file, rule, pointer, message }: Finding): string {
  return JSON.stringify([file, rule, pointer, message]);
}

function outcomeOf(slip: Slip, fresh: readonly Finding[]): Outcome {
  const { profile, pointer } = slip;
  const files = [profile.source.path, ...(profile.attachment?.ok ? [profile.attachment.source.path] : [])];
  const own = fresh.filter(({ file }) => files.includes(file));
  const at = own.findIndex((finding) => isOnOneLine(finding.pointer, pointer));
  return {
    slip,
    bySchema: !slip.inAttachment && !fitsSchema(profile, slip.text),
    byCheck: own.length > 0,
    anywhere: fresh.length > 0,
    rank: at < 0 ? null : at + 1,
  };
}

function isOnOneLine(one: string, other: string): boolean {
  return one === other || one.startsWith(`${other}/`) || other.startsWith(`${one}/`);
}

/** Whether a tool that knows no more than JSON Schema lets the text pass. */
function fitsSchema({ kind }: AnyProfile, text: string): boolean {
  const { document } = readYaml(text);
  return document !== null && validators[kind](document.value);
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
    const key = JSON.stringify([id, method, isKnown, run, observations, digestOf(trial.attachment)]);
    const reduced = known.get(key) ?? reduceTrial(registry, id);
    known.set(key, reduced);
    return reduced;
  };
}

function digestOf(file: ReadFile | null | undefined): string {
  return file?.ok ? file.source.digest : '';
}
