// Loaded before the program (`--import`): it counts the calls that change the file system, and at one of them ends the
// process as `kill -9` does, or fails as a system does. Of a write it first lets a half through.
import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';

const { FAULT_AT, FAULT, FAULT_UNDER = '', FAULT_LOG } = process.env;

const changing = [
  'appendFileSync',
  'chmodSync',
  'chownSync',
  'copyFileSync',
  'cpSync',
  'fchmodSync',
  'fchownSync',
  'fsyncSync',
  'ftruncateSync',
  'linkSync',
  'mkdirSync',
  'mkdtempSync',
  'renameSync',
  'rmSync',
  'rmdirSync',
  'symlinkSync',
  'truncateSync',
  'unlinkSync',
  'utimesSync',
  'writeFileSync',
  'writeSync',
  'writevSync',
];

const { openSync, writeSync } = fs;
const log = FAULT_LOG ? openSync(FAULT_LOG, 'a') : null;
/** Descriptors of files that are open for writing, with their paths. */
const opened = new Map();
let calls = 0;

function count(name, subject, half) {
  const path = typeof subject === 'number' ? opened.get(subject) : String(subject);
  if (path === undefined || !path.includes(FAULT_UNDER)) return;
  calls += 1;
  if (log !== null) writeSync(log, `${name} ${path}\n`);
  if (String(calls) !== FAULT_AT) return;
  half?.();
  if (FAULT === 'SIGKILL') process.kill(process.pid, 'SIGKILL');
  throw Object.assign(new Error(`${FAULT}: ${name}`), { code: FAULT });
}

for (const name of changing) {
  const original = fs[name];
  fs[name] = (...args) => {
    const [target, data] = args;
    const half = () => {
      if (typeof target === 'number' && data !== undefined) {
        const bytes = Buffer.from(data);
        writeSync(target, bytes, 0, bytes.length >> 1);
      }
    };
    count(
      name,
      name === 'linkSync' || name === 'renameSync' ? args[1] : target,
      name.startsWith('write') ? half : undefined,
    );
    return original(...args);
  };
}

fs.openSync = (path, flags = 'r', ...rest) => {
  const writes = typeof flags === 'string' ? !/^rs?$/.test(flags) : (flags & 3) !== 0;
  if (writes) count('openSync', path);
  const file = openSync(path, flags, ...rest);
  if (writes) opened.set(file, String(path));
  else opened.delete(file);
  return file;
};

// Whoever writes by promises or callbacks is not counted, so nobody may.
for (const name of [
  'writeFile',
  'rename',
  'mkdir',
  'rm',
  'unlink',
  'appendFile',
  'copyFile',
  'createWriteStream',
]) {
  const forbidden = () => {
    throw new Error(`fs.${name} is not watched`);
  };
  fs[name] = forbidden;
  if (name in fs.promises) fs.promises[name] = forbidden;
}

syncBuiltinESMExports();
