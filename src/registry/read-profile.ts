import { compareFindings, type Finding, type Span, wholeFile } from './finding.ts';
import { checkShape } from './form/check-shape.ts';
import { fileRules } from './form/file-rule.ts';
import { capital } from './form/shape-message.ts';
import type { Hit } from './hit.ts';
import { identityOfPath, isKind, type Kind, kindFolders, kinds } from './kind.ts';
import type { AnyProfile, ReadDocument } from './profile.ts';
import type { ReadFile } from './registry-file.ts';
import { isObject, toPointer } from './shape.ts';
import type { SourceText } from './source-text.ts';
import { documentOfValue, locate, readYaml, type YamlDocument } from './yaml/yaml-document.ts';

/** What became of one file: its profile if it can be used, and everything that is wrong with it so far. */
export interface ReadProfile {
  readonly document: ReadDocument | null;
  readonly profile: AnyProfile | null;
  readonly findings: readonly Finding[];
  /** What the file stands for, by its content or else by its path; null when neither tells. */
  readonly identity: { readonly kind: Kind; readonly id: string } | null;
}

/** Reads the trial data file that a document names. */
export type ReadAttachment = (name: string) => ReadFile;

/** Parses one file, checks it against its schema and turns its quantities into canonical units. */
export function readProfile(file: ReadFile, readAttachment: ReadAttachment): ReadProfile {
  const fromPath = identityOfPath(file.ok ? file.source.relativePath : file.relativePath);
  if (!file.ok) {
    const { rule, message, help } = fileRules[file.problem];
    const source = 'Format of the registry: one document a file';
    const finding = errorOfForm(file.path, rule, wholeFile, message, source, help);
    return { ...nothing, findings: [finding], identity: fromPath };
  }
  const { document, problems } = readYaml(file.source.text);
  const findings = problems.map(({ rule, span, message, help }) =>
    errorOfForm(file.source.path, rule, span, message, ofYaml, help),
  );
  if (document === null) return { ...nothing, findings, identity: fromPath };
  const judged = judge(file.source, document, fromPath, readAttachment);
  return { ...judged, findings: [...findings, ...judged.findings].sort(compareFindings) };
}

/** A profile in whose form nothing is wrong, with no more than can be handed from one thread to another. */
export interface SoundProfile {
  readonly kind: Kind;
  readonly id: string;
  /** As written. */
  readonly value: unknown;
  /** In canonical units. */
  readonly data: unknown;
}

/** What a text holds if its form is sound; null where it has to be looked at again to say what is wrong. */
export function readSoundProfile(text: string, relativePath: string): SoundProfile | null {
  const { document, problems } = readYaml(text);
  if (document === null || problems.length > 0) return null;
  const { value } = document;
  const identity = identityOf(value, identityOfPath(relativePath));
  if (identity === null) return null;
  const { hits, data } = checkShape(identity.kind, value);
  return hits.length > 0 || data === null ? null : { ...identity, value, data };
}

/** The profile that a sound text makes, with its readings. */
export function profileOfSound(
  source: SourceText,
  { kind, id, value, data }: SoundProfile,
  readAttachment: ReadAttachment,
): ReadProfile {
  const document: ReadDocument = {
    kind,
    id,
    written: value,
    source,
    yaml: documentOfValue(value, source.text),
  };
  // The schema has accepted the data and normalising has followed its shape: this is where the type begins.
  const profile = { ...document, data, originalPath: (path) => path, attachment: null } as AnyProfile;
  return {
    document,
    profile: withAttachment(profile, readAttachment),
    findings: [],
    identity: { kind, id },
  };
}

/** Kind and id by the content of a document, or else by its path; null where neither tells the kind. */
function identityOf(value: unknown, fromPath: ReturnType<typeof identityOfPath>) {
  const written = isObject(value) ? value : {};
  const kind = isKind(written.kind) ? written.kind : (fromPath?.kind ?? null);
  const id = typeof written.id === 'string' ? written.id : (fromPath?.id ?? '');
  return kind === null ? null : { kind, id };
}

const nothing = { document: null, profile: null } as const;
const ofYaml = 'YAML 1.2.2 (yaml.org/spec/1.2.2), the part of it that the registry reads';

/** Written out key by key: a hostile file holds hundreds of thousands, and spreading takes ten times as long. */
function errorOfForm(
  file: string,
  rule: string,
  { line, column, endLine, endColumn }: Span,
  message: string,
  source: string,
  help: string,
): Finding {
  return {
    rule,
    severity: 'error',
    message,
    file,
    line,
    column,
    endLine,
    endColumn,
    pointer: '',
    found: null,
    allowed: null,
    source,
    help,
  };
}

function judge(
  source: SourceText,
  yaml: YamlDocument,
  fromPath: { kind: Kind; id: string } | null,
  readAttachment: ReadAttachment,
): ReadProfile {
  const value = yaml.value;
  const identity = identityOf(value, fromPath);
  if (identity === null) {
    const finding = placeHit(unknownKind, source, yaml, 'shape/not-a-choice', 'error');
    return { ...nothing, findings: [finding], identity: null };
  }
  const { kind, id } = identity;
  const { hits, data, originalPath } = checkShape(kind, value);
  const findings = hits.map((hit) =>
    placeHit({ source: `schema/${kind}.schema.json`, ...hit }, source, yaml, hit.rule, 'error'),
  );
  const document: ReadDocument = { kind, id, written: value, source, yaml };
  if (data === null) return { document, profile: null, findings, identity };
  // The schema has accepted the data and normalising has followed its shape: this is where the type begins.
  const profile = { ...document, data, originalPath, attachment: null } as AnyProfile;
  return { document, profile: withAttachment(profile, readAttachment), findings, identity };
}

const unknownKind: Hit = {
  path: ['kind'],
  part: 'value',
  message: 'Neither the key "kind" nor the folder says what kind of document this is',
  allowed: kinds.join(', '),
  help: `Write \`kind:\` first, and put the file under ${Object.values(kindFolders).join(', ')}.`,
};

function withAttachment(profile: AnyProfile, readAttachment: ReadAttachment): AnyProfile {
  if (profile.kind !== 'trial' || profile.data.observations.file === undefined) return profile;
  return { ...profile, attachment: readAttachment(profile.data.observations.file) };
}

/** Gives a hit the file and the place in its text. */
export function placeHit(
  hit: Hit,
  source: SourceText,
  yaml: YamlDocument,
  rule: string,
  severity: Finding['severity'],
): Finding {
  return {
    rule,
    severity,
    message: hit.message,
    ...(hit.elsewhere === undefined
      ? { file: source.path, ...locate(yaml, hit.path, hit.part) }
      : { file: hit.elsewhere.source.path, ...startOfLine(hit.elsewhere.line) }),
    pointer: toPointer(hit.path),
    found: hit.found ?? null,
    allowed: hit.allowed ?? null,
    source: hit.source ?? null,
    help: hit.help === undefined ? null : capital(hit.help),
  };
}

function startOfLine(line: number): Span {
  return { line, column: 1, endLine: line, endColumn: 2 };
}
