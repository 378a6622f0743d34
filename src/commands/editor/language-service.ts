import type { CodeAction, CompletionList, Hover, Position } from 'vscode-languageserver-types';
import { type AskedActions, codeActions } from '../../editor/code-actions.ts';
import { completionsAt } from '../../editor/completion.ts';
import { referenceHover, ruleHover } from '../../editor/hover.ts';
import { groupedBy } from '../../registry/grouped-by.ts';
import { identityOfPath, type Kind } from '../../registry/kind.ts';
import { parseFile } from '../../registry/load-files.ts';
import type { ReadDocument } from '../../registry/profile.ts';
import { recallingOnce, resultMemory } from '../../registry/result-memory.ts';
import type { CliContext } from '../cli-context.ts';
import { openMemory } from '../open-memory.ts';
import type { EditorTarget } from './editor-target.ts';
import { judgeOpen, openText, type Said } from './judge-open.ts';
import type { OpenFile, OpenFiles } from './open-files.ts';
import { type RegistrySession, registrySession, typedFile } from './registry-session.ts';

/** What an editor can ask about its open files. */
interface LanguageService {
  /** What is wrong with all open files now; what is said no longer comes with an empty list. */
  readonly judge: () => Promise<readonly Said[]>;
  /** Has files read again that may have changed on the disk. */
  readonly forget: () => void;
  readonly complete: (uri: string, position: Position) => Promise<CompletionList | null>;
  readonly hover: (uri: string, position: Position) => Promise<Hover | null>;
  readonly actions: (uri: string, asked: AskedActions) => readonly CodeAction[];
}

interface ServiceOptions {
  readonly remember: boolean;
  readonly today: () => string;
}

export function languageService(files: OpenFiles, options: ServiceOptions, cli: CliContext): LanguageService {
  const sessions = new Map<string, RegistrySession>();
  let shown = new Set<string>();

  /** The session of a registry, begun where there is none yet. Results that lie within it are not trusted. */
  async function sessionOf({ cwd, folders }: EditorTarget): Promise<RegistrySession> {
    const key = keyOf(cwd, folders);
    const known = sessions.get(key);
    if (known !== undefined) return known;
    const memory = await openMemory(cli, options.remember, folders);
    const kept = memory.ok ? memory.value : resultMemory(null, '');
    const session = sessions.get(key) ?? registrySession(folders, cwd, recallingOnce(kept));
    sessions.set(key, session);
    return session;
  }

  async function registryFor(file: OpenFile | undefined) {
    const target = file?.target ?? null;
    const session = target === null ? null : await sessionOf(target);
    return session === null || file === undefined
      ? null
      : (session.last() ?? session.load(openText(file))).registry;
  }

  return {
    judge: async () => {
      const targets = files.all().flatMap(({ target }) => target ?? []);
      await Promise.all(targets.map(sessionOf));
      // From here on nothing is waited for, so that what is said is about the texts of now.
      const groups = groupedBy(files.all(), ({ target }) =>
        target === null ? none : keyOf(target.cwd, target.folders),
      );
      const said = [...groups].flatMap(([key, open]) => {
        const session = sessions.get(key);
        if (session !== undefined) return judgeOpen(session, open, options.today());
        // One that was opened meanwhile has its turn in a moment.
        return key === none ? open.map(nothing) : [];
      });
      const now = new Set(said.map(({ uri }) => uri));
      const gone = [...shown].filter((uri) => !now.has(uri)).map((uri) => ({ uri, diagnostics: [] }));
      shown = new Set(said.filter(({ diagnostics }) => diagnostics.length > 0).map(({ uri }) => uri));
      for (const { uri, diagnostics } of said) files.say(uri, diagnostics);
      return [...said, ...gone];
    },
    forget: () => {
      for (const session of sessions.values()) session.forget();
    },
    complete: async (uri, position) => {
      const registry = await registryFor(files.get(uri));
      const file = files.get(uri);
      return registry === null || file === undefined
        ? null
        : completionsAt(file.document, position, kindByPath(file), registry);
    },
    hover: async (uri, position) => {
      const registry = await registryFor(files.get(uri));
      const file = files.get(uri);
      if (registry === null || file === undefined) return null;
      return (
        ruleHover(file.said, position) ?? referenceHover(file.document, position, kindByPath(file), registry)
      );
    },
    actions: (uri, asked) => {
      const file = files.get(uri);
      const document = file === undefined ? null : documentOf(file);
      return file === undefined || document === null ? [] : codeActions(document, file.document, asked);
    },
  };
}

/** Key of the files that belong to no registry. */
const none = '';

function keyOf(cwd: string, folders: readonly string[]): string {
  return JSON.stringify([cwd, folders]);
}

function nothing({ document }: OpenFile): Said {
  return { uri: document.uri, version: document.version, diagnostics: [] };
}

function kindByPath({ target }: OpenFile): Kind | null {
  return target === null ? null : (identityOfPath(target.relativePath)?.kind ?? null);
}

/** The document that an open text holds; null where its syntax is broken, since nobody knows then what a change would do. */
function documentOf(file: OpenFile): ReadDocument | null {
  const [typed] = openText(file);
  if (typed === undefined) return null;
  const { document, findings } = parseFile(typedFile(typed));
  return findings.some(({ rule }) => rule.startsWith('syntax/')) ? null : document;
}
