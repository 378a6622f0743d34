import { ErrorCodes, type MessageConnection, ResponseError } from 'vscode-jsonrpc/node.js';
import { diagnosticSource } from '../../editor/diagnostic.ts';
import type { CliContext } from '../cli-context.ts';
import { languageService } from './language-service.ts';
import { openFiles } from './open-files.ts';
import {
  readAskedActions,
  readChanges,
  readFolderChange,
  readNamedText,
  readPosition,
  readStart,
} from './read-params.ts';

export interface EditorOptions {
  readonly registry: readonly string[];
  readonly remember: boolean;
  readonly today?: string;
}

/** Whoever types is not interrupted: what comes within this time, in ms, is one change. */
const onePause = 120;

/** Error code of the Language Server Protocol for what is asked before `initialize`. */
const notInitialized = -32002;

const capabilities = {
  positionEncoding: 'utf-16',
  textDocumentSync: { openClose: true, change: 2, save: true },
  completionProvider: { triggerCharacters: [' ', '/', '-'] },
  hoverProvider: true,
  codeActionProvider: { codeActionKinds: ['quickfix', `source.fixAll.${diagnosticSource}`] },
  workspace: { workspaceFolders: { supported: true, changeNotifications: true } },
};

/** Answers what an editor asks, and tells it what is wrong with its open files. Gives what stops it. */
export function serveEditor(
  connection: MessageConnection,
  isShutDown: () => boolean,
  options: EditorOptions,
  version: string,
  cli: CliContext,
): () => void {
  let start: ReturnType<typeof readStart> | null = null;
  let workspace: readonly string[] = [];
  let isToldOfChanges = false;
  const files = openFiles(() => ({ workspace, registry: options.registry, cwd: cli.cwd }));
  const today = () => options.today ?? cli.today();
  const service = languageService(files, { remember: options.remember, today }, cli);
  const pause = pausing(async () => {
    if (!isToldOfChanges) service.forget();
    for (const said of await service.judge())
      await connection.sendNotification('textDocument/publishDiagnostics', said);
  }, cli);

  const isServing = () => start !== null && !isShutDown();
  const onRequest = (method: string, answer: (params: unknown) => unknown) =>
    connection.onRequest(method, (params: unknown) => {
      if (start === null) return new ResponseError(notInitialized, 'The server waits for `initialize`');
      if (isShutDown()) return new ResponseError(ErrorCodes.InvalidRequest, 'The server has been shut down');
      return answer(params);
    });
  const onNotification = (method: string, act: (params: unknown) => void) =>
    connection.onNotification(method, (params: unknown) => {
      if (isServing()) act(params);
    });

  connection.onRequest('initialize', (params: unknown) => {
    if (start !== null)
      return new ResponseError(ErrorCodes.InvalidRequest, 'The server is initialized already');
    start = readStart(params);
    workspace = start.folders;
    return { capabilities, serverInfo: { name: 'meltbounds', version } };
  });
  onNotification('initialized', () => {
    if (start?.canWatch !== true) return;
    connection.sendRequest('client/registerCapability', { registrations: [watching] }).then(
      () => {
        isToldOfChanges = true;
      },
      () => undefined,
    );
  });
  onNotification('textDocument/didOpen', (params) => {
    const named = readNamedText(params);
    if (named !== null) files.open(named.uri, named.version, named.text);
    service.forget();
    pause.begin();
  });
  onNotification('textDocument/didChange', (params) => {
    const named = readNamedText(params);
    if (named !== null) files.change(named.uri, named.version, readChanges(params));
    pause.begin();
  });
  onNotification('textDocument/didSave', () => {
    service.forget();
    pause.begin();
  });
  onNotification('textDocument/didClose', (params) => {
    const named = readNamedText(params);
    if (named !== null) files.close(named.uri);
    service.forget();
    pause.begin();
  });
  onNotification('workspace/didChangeWatchedFiles', () => {
    service.forget();
    files.place();
    pause.begin();
  });
  onNotification('workspace/didChangeWorkspaceFolders', (params) => {
    const { added, removed } = readFolderChange(params);
    workspace = [...workspace.filter((folder) => !removed.includes(folder)), ...added];
    files.place();
    pause.begin();
  });
  onRequest('textDocument/completion', (params) => {
    const place = placeOf(params);
    return place === null ? invalid : service.complete(place.uri, place.position);
  });
  onRequest('textDocument/hover', (params) => {
    const place = placeOf(params);
    return place === null ? invalid : service.hover(place.uri, place.position);
  });
  onRequest('textDocument/codeAction', (params) => {
    const [named, asked] = [readNamedText(params), readAskedActions(params)];
    if (named === null || asked === null) return invalid;
    return service.actions(named.uri, { ...asked, isVersioned: start?.isVersioned === true });
  });
  return pause.end;
}

/** Asks the editor to tell of files that change on the disk. */
const watching = {
  id: 'files',
  method: 'workspace/didChangeWatchedFiles',
  registerOptions: {
    watchers: [{ globPattern: '**/*.{yaml,yml,csv}' }, { globPattern: '**/package.json' }],
  },
};

const invalid = new ResponseError(ErrorCodes.InvalidParams, 'The parameters are not those of this request');

function placeOf(params: unknown) {
  const named = readNamedText(params);
  const position = readPosition(typeof params === 'object' ? Reflect.get(params ?? {}, 'position') : null);
  return named === null || position === null ? null : { uri: named.uri, position };
}

/** Does some work once nothing has begun it for a while; what comes while it is done has it done again. */
function pausing(work: () => Promise<void>, cli: CliContext) {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let working: Promise<void> = Promise.resolve();
  return {
    begin: () => {
      clearTimeout(timer);
      timer = setTimeout(() => {
        // A bug must not end the server: what is typed next may be judged again.
        working = working.then(work).catch((error: unknown) => cli.err(`${String(error)}\n`));
      }, onePause);
    },
    end: () => clearTimeout(timer),
  };
}
