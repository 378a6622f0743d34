import { readdirSync, readFileSync } from 'node:fs';
import writeFileAtomic from 'write-file-atomic';
import { diffSide } from '../src/commands/diff/diff-side.ts';
import { diffRegistries } from '../src/decisions/diff/diff-registries.ts';
import { commitOf, gitText } from '../src/host/git.ts';
import { success } from '../src/result.ts';
import { problemText } from '../src/text/problem-text.ts';
import { proposedChangeset } from './release/proposed-changeset.ts';
import { type Schemas, schemaDiff } from './release/schema-diff.ts';

const schemaSuffix = '.schema.json';
const root = `${process.cwd()}/`;
const target = '.changeset/proposed.md';

// `npm run propose-changeset -- BASE` writes what has changed since BASE as a changeset, to be edited.
const [base = 'main'] = process.argv.slice(2);

const repository = { top: root };
const commit = await commitOf(base, repository, {
  name: 'propose-changeset',
  example: 'npm run propose-changeset -- main',
});
const proposal = commit.ok ? await propose(commit.value) : commit;
if (!proposal.ok) {
  process.stderr.write(`${problemText(proposal.error)}\n`);
  process.exitCode = 2;
} else if (proposal.value === null) {
  process.stdout.write(`No profile, schema or rule has changed since ${base}: write a changeset by hand.\n`);
} else {
  await writeFileAtomic(`${root}${target}`, proposal.value);
  process.stdout.write(`${proposal.value}\nWritten to ${target}: rename it after its topic, and edit it.\n`);
}

async function propose(id: string) {
  const folders = success([`${root}profiles`]);
  const [before, after] = [await diffSide(id, folders, root), await diffSide(undefined, folders, root)];
  if (!before.ok) return before;
  if (!after.ok) return after;
  const { version } = JSON.parse(readFileSync(`${root}package.json`, 'utf8')) as { version: string };
  const change = {
    profiles: diffRegistries(before.value.loaded, after.value.loaded).profiles,
    schema: schemaDiff(await schemasAt(id), schemasNow()),
    rules: difference(await rulesAt(id), ruleCodes(readdirSync(`${root}docs/rules`))),
  };
  return success(proposedChangeset(change, version));
}

function difference(before: readonly string[], after: readonly string[]) {
  return {
    added: after.filter((code) => !before.includes(code)),
    removed: before.filter((code) => !after.includes(code)),
  };
}

async function namesAt(id: string, folder: string): Promise<string[]> {
  const names = await gitText(repository, ['ls-tree', '--name-only', '-z', `${id}:${folder}`]);
  return names.ok ? names.value.split('\0') : [];
}

async function rulesAt(id: string): Promise<string[]> {
  return ruleCodes(await namesAt(id, 'docs/rules'));
}

/** `units-bare-number.md` → `units/bare-number`. */
function ruleCodes(pages: readonly string[]): string[] {
  const names = pages.filter((page) => page.endsWith('.md') && page !== 'README.md').sort();
  return names.map((page) => page.replace(/\.md$/, '').replace('-', '/'));
}

async function schemasAt(id: string): Promise<Schemas> {
  const schemas = new Map<string, unknown>();
  for (const name of (await namesAt(id, 'schema')).filter((file) => file.endsWith(schemaSuffix))) {
    const text = await gitText(repository, ['show', `${id}:schema/${name}`]);
    if (text.ok) schemas.set(name.replace(schemaSuffix, ''), JSON.parse(text.value));
  }
  return schemas;
}

function schemasNow(): Schemas {
  const names = readdirSync(`${root}schema`).filter((file) => file.endsWith(schemaSuffix));
  const read = (name: string): unknown => JSON.parse(readFileSync(`${root}schema/${name}`, 'utf8'));
  return new Map(names.map((name) => [name.replace(schemaSuffix, ''), read(name)]));
}
