import {
  createMessageConnection,
  ErrorCodes,
  type MessageConnection,
  ResponseError,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-jsonrpc/node.js';
import { oneLine } from '../../text/one-line.ts';
import { type CliContext, type ExitStatus, exitStatus } from '../cli-context.ts';
import type { Exit } from '../exit.ts';
import { type EditorOptions, serveEditor } from './serve-editor.ts';

/** Serves an editor until it ends or goes away. */
export async function runEditor(
  options: EditorOptions,
  version: string,
  cli: CliContext,
  exit: Exit,
): Promise<void> {
  if (cli.streams === undefined) return exit.cannotRun(noStreams);
  const { input, output } = cli.streams();
  const connection = createMessageConnection(
    new StreamMessageReader(input),
    new StreamMessageWriter(output),
    loggerTo(cli),
  );
  const { end, isShutDown } = lifecycle(connection);
  const stop = serveEditor(connection, isShutDown, options, version, cli);
  connection.listen();
  exit.with(await end);
  stop();
  connection.dispose();
  input.destroy();
}

/** How the protocol wants a server to end: asked to shut down, it answers nothing more, and leaves when told to. */
function lifecycle(connection: MessageConnection): {
  readonly end: Promise<ExitStatus>;
  readonly isShutDown: () => boolean;
} {
  let isShutDown = false;
  connection.onRequest('shutdown', () => {
    if (isShutDown)
      return new ResponseError(ErrorCodes.InvalidRequest, 'The server has been shut down already');
    isShutDown = true;
    return null;
  });
  const end = new Promise<ExitStatus>((resolve) => {
    const leave = () => resolve(isShutDown ? exitStatus.clean : exitStatus.findings);
    connection.onNotification('exit', leave);
    connection.onClose(leave);
  });
  return { end, isShutDown: () => isShutDown };
}

/** Standard output belongs to the protocol. */
function loggerTo(cli: CliContext) {
  const log = (message: string) => cli.err(`${oneLine(message)}\n`);
  return { error: log, warn: log, info: () => undefined, log: () => undefined };
}

const noStreams = {
  message: '`editor` speaks with an editor over standard input and output, which are not there',
  help: 'Let an editor start it.',
};
