#!/usr/bin/env node
import { readFileSync } from 'node:fs';
import { run } from './commands/run.ts';
import { wantsColour } from './commands/surroundings.ts';

const manifest = JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8')) as {
  version: string;
};

process.exitCode = await run(process.argv.slice(2), manifest.version, {
  cwd: process.cwd(),
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
  colour: wantsColour(process.env, process.stdout.isTTY === true),
  today: () => new Date().toISOString().slice(0, 10),
});
