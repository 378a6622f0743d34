import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';

/** A place in a text, counted from 0, as the Language Server Protocol counts. */
export interface Position {
  readonly line: number;
  readonly character: number;
}

export interface CompletionItem {
  readonly label: string;
  readonly insertText?: string;
  readonly documentation?: string | { readonly value: string };
}

export interface Diagnostic {
  readonly message: string;
  readonly range: { readonly start: Position; readonly end: Position };
}

interface Message {
  readonly id?: number | string;
  readonly method?: string;
  readonly params?: unknown;
  readonly result?: unknown;
  readonly error?: { readonly message: string };
}

const program = createRequire(import.meta.url).resolve('yaml-language-server/bin/yaml-language-server');

/**
 * A language server for YAML in a process of its own, spoken to over its protocol (LSP 3.17, "Base Protocol": a header
 * with the length of the JSON-RPC message in bytes). It keeps its own defaults, but may ask no catalogue on the network.
 */
export class LanguageServer {
  readonly #server: ChildProcessWithoutNullStreams;
  readonly #answers = new Map<number | string, (message: Message) => void>();
  readonly #diagnostics = new Map<string, readonly Diagnostic[]>();
  readonly #waiting: (() => void)[] = [];
  #buffer = Buffer.alloc(0);
  #lastId = 0;

  private constructor() {
    this.#server = spawn(process.execPath, [program, '--stdio']);
    this.#server.stdout.on('data', (chunk: Buffer) => {
      this.#buffer = Buffer.concat([this.#buffer, chunk]);
      for (let message = this.#next(); message !== null; message = this.#next()) this.#receive(message);
    });
  }

  static async start(folder: string): Promise<LanguageServer> {
    const server = new LanguageServer();
    await server.request('initialize', {
      processId: process.pid,
      rootUri: pathToFileURL(folder).href,
      capabilities: {
        workspace: { configuration: true },
        textDocument: {
          completion: { completionItem: { snippetSupport: true, documentationFormat: ['markdown'] } },
          hover: { contentFormat: ['markdown'] },
        },
      },
    });
    server.#notify('initialized', {});
    return server;
  }

  open(path: string, text: string): void {
    const textDocument = { uri: pathToFileURL(path).href, languageId: 'yaml', version: 1, text };
    this.#notify('textDocument/didOpen', { textDocument });
  }

  async completion(path: string, position: Position): Promise<readonly CompletionItem[]> {
    const result = await this.#at('textDocument/completion', path, position);
    return (result as { items: CompletionItem[] }).items;
  }

  async hover(path: string, position: Position): Promise<string> {
    const result = (await this.#at('textDocument/hover', path, position)) as {
      contents: { value: string };
    } | null;
    return result?.contents.value ?? '';
  }

  /** What the server says of a file once it has looked at it. */
  async diagnostics(path: string): Promise<readonly Diagnostic[]> {
    const { href } = pathToFileURL(path);
    for (;;) {
      const found = this.#diagnostics.get(href);
      if (found !== undefined) return found;
      await new Promise<void>((resolve) => this.#waiting.push(resolve));
    }
  }

  async stop(): Promise<void> {
    await this.request('shutdown', null);
    const ended = new Promise((resolve) => this.#server.once('exit', resolve));
    this.#notify('exit', null);
    await ended;
  }

  request(method: string, params: unknown): Promise<unknown> {
    this.#lastId += 1;
    const id = this.#lastId;
    this.#send({ id, method, params });
    return new Promise((resolve, reject) => {
      this.#answers.set(id, ({ result, error }) =>
        error === undefined ? resolve(result) : reject(new Error(error.message)),
      );
    });
  }

  #at(method: string, path: string, position: Position): Promise<unknown> {
    return this.request(method, { textDocument: { uri: pathToFileURL(path).href }, position });
  }

  #notify(method: string, params: unknown): void {
    this.#send({ method, params });
  }

  #send(message: Message): void {
    const body = JSON.stringify({ jsonrpc: '2.0', ...message });
    this.#server.stdin.write(`Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`);
  }

  #next(): Message | null {
    const head = this.#buffer.indexOf('\r\n\r\n');
    const length = Number(
      /Content-Length: (\d+)/i.exec(this.#buffer.subarray(0, Math.max(head, 0)).toString())?.[1],
    );
    const end = head + 4 + length;
    if (head === -1 || this.#buffer.length < end) return null;
    const body = this.#buffer.subarray(head + 4, end).toString();
    this.#buffer = this.#buffer.subarray(end);
    return JSON.parse(body) as Message;
  }

  #receive(message: Message): void {
    const { id, method, params } = message;
    if (method === 'textDocument/publishDiagnostics') {
      const { uri, diagnostics } = params as { uri: string; diagnostics: Diagnostic[] };
      this.#diagnostics.set(uri, diagnostics);
      for (const wake of this.#waiting.splice(0)) wake();
    } else if (method === 'workspace/configuration' && id !== undefined) {
      const { items } = params as { items: { section: string }[] };
      this.#send({ id, result: items.map(({ section }) => settings[section] ?? null) });
    } else if (method === undefined && id !== undefined) {
      this.#answers.get(id)?.(message);
    } else if (id !== undefined) {
      this.#send({ id, result: null });
    }
  }
}

const settings: Readonly<Record<string, unknown>> = {
  yaml: { schemaStore: { enable: false }, validate: true, hover: true, completion: true },
};
