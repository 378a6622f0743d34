import { trialResults } from '../../bench/reduce-trial.ts';
import { reducingOnce } from '../../bench/reducing-once.ts';
import { additionsTo } from '../../registry/addition.ts';
import { type AcknowledgedFinding, compareFindings, type Finding } from '../../registry/finding.ts';
import type { Blame, Hit } from '../../registry/hit.ts';
import type { LoadedRegistry } from '../../registry/load-files.ts';
import type { AnyProfile, ReadDocument } from '../../registry/profile.ts';
import { placeHit } from '../../registry/read-profile.ts';
import { oncePerRegistry, type Registry } from '../../registry/registry.ts';
import { toPointer } from '../../registry/shape.ts';
import { acknowledge, type JudgedFinding } from './acknowledge.ts';
import { additionHits } from './addition-hits.ts';
import { capFindings } from './cap-findings.ts';
import type { FindingBasis } from './finding-basis.ts';
import { onePerCause } from './one-per-cause.ts';
import type { Rule, RuleContext } from './rule.ts';
import { documentRules, rulesOfKind } from './rules.ts';

/** What a check needs to know besides the registry. */
export interface CheckOptions {
  /** Today's date, YYYY-MM-DD: nothing may lie after it. */
  readonly today: string;
  /** Whether the profile in a file is judged; all are by default. The others are still what it is judged against. */
  readonly wants?: (file: string) => boolean;
  /** Reduces a trial; a caller that checks many versions of one registry passes a function that remembers results. */
  readonly reduce?: typeof trialResults;
}

/** What a check has found in a registry, each ordered by file and place. */
export interface Judgement {
  /** What is wrong: what reading has shown, and what the rules find that no profile acknowledges. */
  readonly findings: readonly Finding[];
  /** What the rules find besides, and reviewers have accepted. */
  readonly acknowledged: readonly AcknowledgedFinding[];
}

/** Judges a registry, or the wanted profiles of it. */
export function judgeRegistry(
  loaded: LoadedRegistry,
  { today, wants = () => true, reduce = trialResults }: CheckOptions,
): Judgement {
  const { registry } = loaded;
  const context: RuleContext = { registry, today, reduce: reducingOnce(registry, reduce) };
  const { documents, found } = judgedWithBlamed(context, wants);
  const misread = new Set(loaded.findings.map(({ file }) => file));
  const { findings, acknowledged } = acknowledge(documents, found, { today, misread });
  const basis = new Map(found.map(({ finding, ...rest }) => [finding, basisOfJudged(rest, registry)]));
  const based = [...loaded.findings, ...findings]
    .sort(compareFindings)
    .map((finding) => ({ owner: finding.file, blames: [], ...basis.get(finding), finding }));
  const told = onePerCause(based).filter(({ owners }) => owners.some(wants));
  return {
    findings: capFindings(told.map(({ finding }) => finding)),
    acknowledged: acknowledged.filter(({ file }) => wants(file)).toSorted(compareFindings),
  };
}

interface JudgedDocuments {
  readonly documents: readonly ReadDocument[];
  readonly found: readonly JudgedFinding[];
}

/** The wanted documents, and those that they blame, which may have findings of their own. */
function judgedWithBlamed(context: RuleContext, wants: (file: string) => boolean): JudgedDocuments {
  const { registry } = context;
  const judged = new Set<ReadDocument>();
  const found: JudgedFinding[] = [];
  let next = new Set(registry.documents.filter(({ source }) => wants(source.path)));
  while (next.size > 0) {
    const files = new Set([...next].map(({ source }) => source.path));
    const isNext = ({ source }: ReadDocument) => files.has(source.path);
    const now = [
      ...[...next].flatMap((document) => judgedDocument(document, context)),
      ...registry.profiles.flatMap((profile) => judgedProfile(profile, context, isNext)),
    ];
    for (const document of next) judged.add(document);
    for (const finding of now) found.push(finding);
    const blamed = now.flatMap(({ blames }) => blames.flatMap((blame) => blamedDocument(blame, registry)));
    next = new Set(blamed.filter((document) => !judged.has(document)));
  }
  return { documents: [...judged], found };
}

function blamedDocument({ of }: Blame, registry: Registry): ReadDocument[] {
  const profile = of && registry[of.kind].get(of.id);
  const document = profile && documentsByFile(registry).get(profile.source.path);
  return document === undefined ? [] : [document];
}

const documentsByFile = oncePerRegistry(
  ({ documents }) => new Map(documents.map((document) => [document.source.path, document])),
);

/** Everything that is wrong with a registry, or with the wanted profiles of it, ordered by file and place. */
export function checkRegistry(loaded: LoadedRegistry, options: CheckOptions): readonly Finding[] {
  return judgeRegistry(loaded, options).findings;
}

function basisOfJudged(
  { document, blames }: Omit<JudgedFinding, 'finding'>,
  registry: Registry,
): FindingBasis {
  return {
    owner: document.source.path,
    blames: blames.flatMap(({ of, path }) => {
      const blamed = of === undefined ? document : registry[of.kind].get(of.id);
      return blamed === undefined ? [] : [{ file: blamed.source.path, pointer: toPointer(path) }];
    }),
  };
}

function judgedDocument(document: ReadDocument, context: RuleContext): JudgedFinding[] {
  return documentRules.flatMap((rule) => placed(rule, document, rule.check(document, context)));
}

/** What the rules find in a profile, and in the additions to it: these are judged as the filament that they extend. */
function judgedProfile(
  profile: AnyProfile,
  context: RuleContext,
  isWanted: (document: ReadDocument) => boolean,
): JudgedFinding[] {
  if (profile.kind === 'addition') return [];
  const own = isWanted(profile)
    ? rulesOfKind(profile.kind).flatMap((rule) =>
        placed(rule, profile, inText(profile, rule.check(profile, context))),
      )
    : [];
  if (profile.kind !== 'filament') return own;
  if (!additionsTo(profile.id, context.registry.addition).some(isWanted)) return own;
  const added = rulesOfKind('filament').flatMap((rule) =>
    [...additionHits(rule, profile, context)]
      .filter(({ addition }) => isWanted(addition))
      .flatMap(({ addition, hit }) => placed(rule, addition, inText(addition, [hit]))),
  );
  return [...own, ...added];
}

function placed(rule: Rule, document: ReadDocument, hits: Iterable<Hit>): JudgedFinding[] {
  const { source, yaml } = document;
  const found: JudgedFinding[] = [];
  for (const hit of hits) {
    const finding = placeHit({ source: rule.source, ...hit }, source, yaml, rule.code, rule.severity);
    found.push({ document, finding, blames: hit.blames ?? [] });
  }
  return found;
}

/** Hits at places of the data, at the places of the text that those were read from. */
function* inText({ originalPath }: AnyProfile, hits: Iterable<Hit>): Generator<Hit> {
  for (const hit of hits) yield { ...hit, path: originalPath(hit.path) };
}
