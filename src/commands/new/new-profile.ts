import { dirname, join, relative } from 'node:path';
import type { MethodName } from '../../bench/method-facts.ts';
import { methodNames } from '../../bench/method-facts.ts';
import { benchMethods } from '../../bench/methods.ts';
import { loadFolders } from '../../host/load-registry.ts';
import { registryFolders } from '../../host/registry-folders.ts';
import { readSchemaFiles, schemaPathFrom } from '../../host/schema-files.ts';
import { tidyFolders } from '../../host/writing/leftovers.ts';
import { expectedPath, type Kind, newKinds } from '../../registry/kind.ts';
import { exists, type Registry } from '../../registry/registry.ts';
import { type Problem, type Result, refusal, success } from '../../result.ts';
import { type Answers, presets } from '../../scaffold/answers.ts';
import { type Field, fieldsOf } from '../../scaffold/field.ts';
import { formatNewProfile, schemaFileOf } from '../../scaffold/scaffold.ts';
import { trialFields } from '../../scaffold/trial-fields.ts';
import { quote } from '../../text/quote.ts';
import type { CliContext } from '../cli-context.ts';
import { usage } from '../usage.ts';
import { askAnswers } from './ask-answers.ts';
import { answersFromFlags } from './new-flags.ts';
import { type BenchSheet, readSheetFor } from './new-sheet.ts';

export interface NewOptions {
  readonly set: readonly string[];
  readonly from?: string;
  readonly inline?: boolean;
  readonly decimal?: 'point' | 'comma';
  readonly sheet?: string;
  readonly method?: string;
  readonly ask: boolean;
  readonly dryRun?: boolean;
  readonly registry: readonly string[];
}

/** A new profile that is ready to be written. */
export interface NewProfile {
  readonly kind: Kind;
  readonly answers: Answers;
  readonly fields: readonly Field[];
  readonly registry: Registry;
  /** Absolute folder of its registry. */
  readonly folder: string;
  /** The folder as the user would type it, with a slash at its end. */
  readonly shown: string;
  /** Path of the profile in the registry. */
  readonly path: string;
  readonly text: string;
  /** The bench sheet to be copied beside it. */
  readonly sheet: { readonly path: string; readonly text: string } | null;
  /** Lines that say how the bench sheet was understood. */
  readonly understood: readonly string[];
}

/** Gathers the answers for a new profile, from flags and from the user at the terminal; nothing is written. */
export async function startProfile(
  kindName: string,
  id: string | undefined,
  options: NewOptions,
  cli: CliContext,
): Promise<Result<NewProfile, Problem>> {
  const kind = newKinds.find((each) => each === kindName);
  if (kind === undefined) {
    return usage(`"${quote(kindName)}" is nothing to start`, `Name one of: ${newKinds.join(', ')}.`);
  }
  const folders = registryFolders(options.registry, cli.cwd);
  if (!folders.ok) return folders;
  const folder = folders.value.at(-1) ?? cli.cwd;
  const { registry } = loadFolders(folders.value, cli.cwd);
  const every = fieldsOf(schemaFileOf(kind), readSchemaFiles());
  const set = options.method === undefined ? options.set : [`method=${options.method}`, ...options.set];
  const flags = answersFromFlags(kind, every, id, set);
  if (!flags.ok) return flags;
  const named = methodNames.find((name) => name === flags.value.method) ?? null;
  const sheet = await readSheetFor(kind, { ...options, method: named }, cli.cwd);
  if (!sheet.ok) return sheet;
  const run = await methodOfTrial(kind, named ?? sheet.value?.method ?? null, options, cli);
  if (!run.ok) return run;
  const { polymer } = flags.value;
  const fields =
    run.value === null ? withDesignation(every, polymer) : trialFields(every, benchMethods[run.value]);
  const known = {
    ...presets(fields),
    ...(run.value !== null && { method: run.value, date: cli.today() }),
    ...(sheet.value !== null && { origin: 'bench' }),
    ...flags.value,
  };
  const answers = await complete({ kind, fields, registry }, known, options, cli);
  if (!answers.ok) return answers;
  return profileOf({ kind, fields, registry, folder }, answers.value, sheet.value, options, cli.cwd);
}

/** The fields with an example of a designation that begins as it must, with the polymer. */
function withDesignation(fields: readonly Field[], polymer: unknown): readonly Field[] {
  if (typeof polymer !== 'string') return fields;
  return fields.map((field) => (field.key === 'designation' ? { ...field, example: polymer } : field));
}

/** The method of a new trial, on which its form depends: known, or asked for; null for another kind. */
async function methodOfTrial(
  kind: Kind,
  known: MethodName | null,
  options: NewOptions,
  { asker }: CliContext,
): Promise<Result<MethodName | null, Problem>> {
  if (kind !== 'trial' || known !== null) return success(known);
  const choices = methodNames.join(', ');
  const missing = usage('A new trial needs a method', `Name one with --method: ${choices}.`);
  if (asker === undefined || !options.ask) return missing;
  const question = { message: 'method: Bench method of the run', choices: methodNames, open: null };
  const answer = await (await asker()).choose(question);
  if (answer === 'stopped') return stopped();
  return success(methodNames.find((name) => name === answer.text) ?? null);
}

function stopped() {
  return refusal('stopped', 'Stopped; nothing was written', '');
}

/** Asks where somebody sits at a terminal; elsewhere an id is the least that a file needs. */
async function complete(
  asked: Parameters<typeof askAnswers>[1],
  known: Answers,
  options: NewOptions,
  { asker }: CliContext,
): Promise<Result<Answers, Problem>> {
  if (asker === undefined || !options.ask) return success(known);
  const answers = await askAnswers(await asker(), asked, known);
  return answers === null ? stopped() : success(answers);
}

function profileOf(
  place: Pick<NewProfile, 'kind' | 'fields' | 'registry' | 'folder'>,
  given: Answers,
  sheet: BenchSheet | null,
  options: NewOptions,
  cwd: string,
): Result<NewProfile, Problem> {
  const { kind, fields, registry, folder } = place;
  const { id } = given;
  if (typeof id !== 'string') return needsId(kind, fields);
  const date = typeof given.date === 'string' ? given.date : '';
  const path = expectedPath(kind, id, date.slice(0, 4));
  if (exists(registry, kind, id)) {
    const own = dirname(join(folder, path));
    // A trial is written under a lock of the folder that holds those of all years.
    tidyFolders([own, dirname(own)]);
    return refusal(
      'idTaken',
      `There is a ${kind} "${id}" already, and nothing is ever written over`,
      'Choose another id.',
    );
  }
  const sheetPath = path.replace(/\.yaml$/, '.csv');
  const answers = sheet === null ? given : { ...given, observations: sheet.observations(`${id}.csv`) };
  const absolute = join(folder, path);
  const text = formatNewProfile(
    { kind, fields, answers, schemaPath: schemaPathFrom(join(absolute, '..'), folder, schemaFileOf(kind)) },
    readSchemaFiles(),
  );
  const copied = sheet !== null && !options.inline && sheet.absolute !== join(folder, sheetPath);
  return success({
    ...place,
    answers,
    path,
    text,
    shown: shownFolder(folder, cwd),
    sheet: copied ? { path: sheetPath, text: sheet.text } : null,
    understood: sheet?.understood ?? [],
  });
}

function needsId(kind: Kind, fields: readonly Field[]) {
  const field = fields.find(({ key }) => key === 'id');
  return usage(
    `A new ${kind} needs an id: ${field?.allowed ?? ''}`.trimEnd(),
    `Name it behind the kind, or with --set id=…, for instance: meltbounds new ${kind} ${String(field?.example)}`,
  );
}

function shownFolder(folder: string, cwd: string): string {
  const inside = relative(cwd, folder).replaceAll('\\', '/');
  return inside === '' ? '' : `${inside}/`;
}
