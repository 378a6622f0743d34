import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { exitStatus, wantsColour } from './commands/cli-context.ts';
import { faultStatus, faultText } from './commands/exit.ts';
import { run } from './commands/run.ts';
import { terminalProgress } from './host/progress.ts';

const manifest = JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8')) as {
  version: string;
};

process.stdout.on('error', ({ code }: NodeJS.ErrnoException) => {
  // A reader that has seen enough, `head` for instance, closes the pipe; but who asks for the status must not take it for "no problems".
  process.stderr.write(
    code === 'EPIPE'
      ? 'Standard output was closed before everything was written (EPIPE).\n'
      : `Standard output cannot be written (${code}).\nCheck the space on the disk.\n`,
  );
  process.exit(exitStatus.cannotRun);
});
process.stderr.on('error', () => undefined);

process.on('uncaughtException', (error) => {
  process.stderr.write(faultText(error, manifest.version));
  process.exit(faultStatus);
});

const progress = terminalProgress(
  (text) => process.stderr.write(text),
  process.stderr.isTTY === true,
  process.env,
);

async function stdin(): Promise<Uint8Array> {
  const chunks: Buffer[] = [];
  for await (const chunk of process.stdin) chunks.push(chunk);
  return Buffer.concat(chunks);
}

void run(process.argv.slice(2), manifest.version, {
  cwd: process.cwd(),
  out: (text) => process.stdout.write(text),
  outBytes: (bytes) => process.stdout.write(bytes),
  err: (text) => process.stderr.write(text),
  colour: wantsColour(process.env, process.stdout.isTTY === true),
  stdin,
  streams: () => ({ input: process.stdin, output: process.stdout }),
  results: async () => {
    const { resultFolder, usualResultFolder } = await import('./host/result-folder.ts');
    const { programDigest } = await import('./host/program-digest.ts');
    const folder = resolve(usualResultFolder(process.env, process.platform));
    return { folder, store: resultFolder(folder), program: `${manifest.version} ${programDigest()}` };
  },
  // From source there is no worker to start.
  ...(!import.meta.url.endsWith('.ts') && {
    threads: async () => (await import('./host/threads.ts')).threadsOfMachine(),
  }),
  changes: async (folders) => (await import('./host/folder-changes.ts')).folderChanges(folders),
  serve: async (folder, port) => (await import('./host/serve-folder.ts')).serveFolder(folder, port),
  ...(progress !== null && { progress }),
  today: () => new Date().toISOString().slice(0, 10),
  ...(process.stdout.isTTY === true && { terminalColumns: process.stdout.columns }),
  ...(process.stdin.isTTY === true &&
    process.stderr.isTTY === true && {
      asker: async () =>
        (await import('./host/terminal-asker.ts')).terminalAsker(process.stdin, process.stderr),
    }),
}).then((status) => {
  process.exitCode = status;
});
