#!/usr/bin/env node
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { setFlagsFromString } from 'node:v8';
import { isMainThread } from 'node:worker_threads';
import { KeptCode } from './kept-code.ts';

/** Tells the built program from every other; the bundler puts it in. */
declare const build: string;

// Of the processor time of a short run this V8 spends a third on making faster code for what is soon over, most of it on
// putting functions into one another and taking loops apart; a loop that goes on is still found, and runs no slower. Later
// ones have other flags, and do better by themselves.
if (process.versions.v8.startsWith('11.')) {
  setFlagsFromString('--interrupt-budget=800000');
  setFlagsFromString('--max-inlined-bytecode-size-cumulative=200');
  setFlagsFromString('--no-turbo-loop-peeling');
  // A young heap this small is collected sooner by one thread than shared out among several.
  setFlagsFromString('--no-parallel-scavenge');
}

/** Beside the program: who may write there may change the program too. */
const folder = fileURLToPath(new URL('./cli/kept/', import.meta.url));
const keeps = process.env.NODE_DISABLE_COMPILE_CACHE === undefined;
const code = new KeptCode(keeps ? join(folder, `${build}-${process.version}-${process.arch}`) : null);
if (isMainThread) {
  process.once('exit', () => {
    const { user, system } = process.cpuUsage();
    code.keep(user + system);
  });
}
code.load(fileURLToPath(new URL(isMainThread ? './main.cjs' : './cli/worker.cjs', import.meta.url)));
