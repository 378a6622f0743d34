import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import { pathToFileURL } from 'node:url';
import { inject } from 'vitest';
import { bundledProgram, testDay } from '../../run-command.ts';

/** A place in a text, counted from 0, as the Language Server Protocol counts. */
export interface Position {
  readonly line: number;
  readonly character: number;
}

export interface Range {
  readonly start: Position;
  readonly end: Position;
}

export interface Diagnostic {
  readonly message: string;
  readonly code: string;
  readonly severity: number;
  readonly codeDescription: { readonly href: string };
  readonly range: Range;
}

export interface Action {
  readonly title: string;
  readonly kind: string;
  readonly diagnostics?: readonly Diagnostic[];
  readonly edit: {
    readonly documentChanges?: readonly {
      readonly textDocument: { readonly version: number };
      readonly edits: readonly Edit[];
    }[];
    readonly changes?: Readonly<Record<string, readonly Edit[]>>;
  };
}

export interface Edit {
  readonly range: Range;
  readonly newText: string;
}

export interface Item {
  readonly label: string;
  readonly detail: string;
  readonly sortText: string;
  readonly textEdit: Edit;
}

interface Published {
  readonly uri: string;
  readonly version?: number;
  readonly diagnostics: readonly Diagnostic[];
}

interface Message {
  readonly id?: number | string | null;
  readonly method?: string;
  readonly params?: unknown;
  readonly result?: unknown;
  readonly error?: { readonly code: number; readonly message: string };
}

/**
 * An editor that speaks with `meltbounds editor`, a process of its own, by the Language Server Protocol (3.17, "Base
 * Protocol": a header with the length of the JSON-RPC message in bytes). Written apart from the library that the program uses.
 */
export class EditorClient {
  readonly #server: ChildProcessWithoutNullStreams;
  readonly #answers = new Map<number, (message: Message) => void>();
  #published: readonly Published[] = [];
  readonly #waiting: (() => void)[] = [];
  #buffer = Buffer.alloc(0);
  #lastId = 0;
  /** Every request that the program has made of the editor. */
  readonly asked: string[] = [];
  /** Exit status once the process has ended. */
  readonly ended: Promise<number | null>;
  err = '';

  constructor(cwd: string, ...options: readonly string[]) {
    const args = [bundledProgram, 'editor', '--stdio', '--today', testDay, ...options];
    const env = { ...process.env, MELTBOUNDS_CACHE: `${inject('reductions')}/remembered` };
    this.#server = spawn(process.execPath, args, { cwd, env });
    this.ended = new Promise((resolve) => this.#server.once('exit', (status) => resolve(status)));
    this.#server.stderr.on('data', (chunk: Buffer) => {
      this.err += chunk.toString();
    });
    this.#server.stdout.on('data', (chunk: Buffer) => {
      this.#buffer = Buffer.concat([this.#buffer, chunk]);
      for (let message = this.#next(); message !== null; message = this.#next()) this.#receive(message);
    });
  }

  async initialize(folder: string | null, capabilities: object = {}): Promise<unknown> {
    const rootUri = folder === null ? null : pathToFileURL(folder).href;
    const started = await this.request('initialize', { processId: process.pid, rootUri, capabilities });
    this.notify('initialized', {});
    return started;
  }

  open(path: string, text: string, version = 1): string {
    const uri = pathToFileURL(path).href;
    this.#published = this.#published.filter((each) => each.uri !== uri);
    this.notify('textDocument/didOpen', { textDocument: { uri, languageId: 'yaml', version, text } });
    return uri;
  }

  replace(uri: string, text: string, version: number): void {
    this.notify('textDocument/didChange', { textDocument: { uri, version }, contentChanges: [{ text }] });
  }

  close(uri: string): void {
    this.notify('textDocument/didClose', { textDocument: { uri } });
  }

  /** What is said of a version of a text. */
  async diagnostics(uri: string, version?: number): Promise<readonly Diagnostic[]> {
    for (;;) {
      const found = this.#published.findLast(
        (each) => each.uri === uri && (version === undefined || each.version === version),
      );
      if (found !== undefined) return found.diagnostics;
      await new Promise<void>((resolve) => this.#waiting.push(resolve));
    }
  }

  /** What is said next of a text, whatever has been said before. */
  async nextDiagnostics(uri: string, act: () => void): Promise<readonly Diagnostic[]> {
    const known = this.#published;
    act();
    for (;;) {
      const found = this.#published.findLast((each) => each.uri === uri && !known.includes(each));
      if (found !== undefined) return found.diagnostics;
      await new Promise<void>((resolve) => this.#waiting.push(resolve));
    }
  }

  async complete(uri: string, position: Position): Promise<readonly Item[] | null> {
    const list = (await this.#at('textDocument/completion', uri, position)) as { items: Item[] } | null;
    return list?.items ?? null;
  }

  async hover(uri: string, position: Position): Promise<string | null> {
    const hover = (await this.#at('textDocument/hover', uri, position)) as {
      contents: { value: string };
    } | null;
    return hover?.contents.value ?? null;
  }

  async actions(
    uri: string,
    range: Range,
    context: object = { diagnostics: [] },
  ): Promise<readonly Action[]> {
    const params = { textDocument: { uri }, range, context };
    return (await this.request('textDocument/codeAction', params)) as readonly Action[];
  }

  /** Ends as an editor should, and gives the exit status. */
  async stop(): Promise<number | null> {
    await this.request('shutdown', null);
    this.notify('exit', null);
    return this.ended;
  }

  /** Goes away without a word. */
  vanish(): Promise<number | null> {
    this.#server.stdin.end();
    return this.ended;
  }

  request(method: string, params: unknown): Promise<unknown> {
    return this.begin(method, params).answer;
  }

  begin(method: string, params: unknown): { readonly id: number; readonly answer: Promise<unknown> } {
    this.#lastId += 1;
    const id = this.#lastId;
    this.#send({ id, method, params });
    const answer = new Promise((resolve, reject) => {
      this.#answers.set(id, ({ result, error }) =>
        error === undefined ? resolve(result) : reject(new Error(`${error.code} ${error.message}`)),
      );
    });
    return { id, answer };
  }

  notify(method: string, params: unknown): void {
    this.#send({ method, params });
  }

  raw(text: string): void {
    this.#server.stdin.write(text);
  }

  #at(method: string, uri: string, position: Position): Promise<unknown> {
    return this.request(method, { textDocument: { uri }, position });
  }

  #send(message: Message): void {
    const body = JSON.stringify({ jsonrpc: '2.0', ...message });
    this.raw(`Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`);
  }

  #next(): Message | null {
    const head = this.#buffer.indexOf('\r\n\r\n');
    if (head === -1) return null;
    const length = Number(/Content-Length: (\d+)/i.exec(this.#buffer.subarray(0, head).toString())?.[1]);
    const end = head + 4 + length;
    if (this.#buffer.length < end) return null;
    const body = this.#buffer.subarray(head + 4, end).toString();
    this.#buffer = this.#buffer.subarray(end);
    return JSON.parse(body) as Message;
  }

  #receive(message: Message): void {
    const { id, method, params } = message;
    if (method === 'textDocument/publishDiagnostics') {
      this.#published = [...this.#published, params as Published];
      for (const wake of this.#waiting.splice(0)) wake();
    } else if (method === undefined && typeof id === 'number') {
      this.#answers.get(id)?.(message);
    } else if (method !== undefined && id !== undefined) {
      this.asked.push(method);
      this.#send({ id, result: null });
    }
  }
}
