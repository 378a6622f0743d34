import { existsSync } from 'node:fs';
import { type Browser, chromium } from 'playwright-core';

const usualPaths = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/lib/chromium/chromium',
  '/snap/bin/chromium',
  '/opt/homebrew/bin/chromium',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
];

/** Starts the Chromium of the system without a window. Where there is none, the error says what to install. */
export async function startChromium(): Promise<Browser> {
  return chromium.launch({ executablePath: pathOfChromium(), args: ['--disable-dev-shm-usage'] });
}

/** Path of the Chromium of the system. Where there is none, the error says what to install. */
export function pathOfChromium(): string {
  const named = process.env.CHROMIUM;
  if (named !== undefined && !existsSync(named)) {
    throw new Error(`CHROMIUM names ${named}, and there is no such file.`);
  }
  const path = named ?? usualPaths.find((each) => existsSync(each));
  if (path !== undefined) return path;
  throw new Error(
    `No Chromium found in ${usualPaths.join(', ')}. Install it (Debian: apt-get install chromium), or set CHROMIUM to its path.`,
  );
}
